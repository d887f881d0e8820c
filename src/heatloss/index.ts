export { type CapacityOverTauInput, capacityOverTau } from './capacityOverTau.ts';
export type { HeatLossEstimate, HeatLossNote } from './estimate.ts';
export { headlineOf } from './headline.ts';
export { coHeatingRegression, type HeatDay, heatBalance } from './heatBalance.ts';
export { heatThenCool, type Phase, type TwoSlopes, twoSlopes } from './heatThenCool.ts';
export { type NetworkResult, type NetworkStageResult, networkEstimates } from './network/estimates.ts';
export { metersHeating } from './network/hours.ts';
export type { DoubtShares } from './network/uncertainty.ts';
