export { type CapacityOverTauInput, capacityOverTau } from './capacityOverTau.ts';
export {
  coHeatingRegression,
  type HeatDay,
  heatBalance,
  heatOverDifference,
  type Leaving,
} from './dailyBalance/index.ts';
export type { HeatLossEstimate, HeatLossNote } from './estimate.ts';
export { headlineOf } from './headline.ts';
export { type HeatedNights, heatThenCool, type Phase, type TwoSlopes, twoSlopes } from './heatThenCool.ts';
export { type NetworkResult, type NetworkStageResult, networkEstimates } from './network/estimates.ts';
export { type ForetoldNight, foretoldNights, type ToForetell } from './network/foretold.ts';
export { metersHeating } from './network/hours.ts';
export type { FurtherTest, Outlook } from './network/outlook.ts';
export type { DoubtShares } from './network/uncertainty.ts';
export { stateSpace, windowsOf } from './stateSpace/index.ts';
export { type SurfaceHint, type SurfaceNote, surfaceHints } from './surfaces/index.ts';
export { underConditions } from './underConditions.ts';
