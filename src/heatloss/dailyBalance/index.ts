export type { BalanceInput } from './around.ts';
export { heatBalance, type MeteredDays } from './heatBalance.ts';
export type { HeatDay, Leaving } from './heatDay.ts';
export { coHeatingRegression, heatOverDifference } from './regression.ts';
