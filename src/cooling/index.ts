export { type DecayFit, fitDecay, freeCooling } from './decay.ts';
export { type HandDecision, heatBetween, type JudgedNight, judgeNights } from './judge.ts';
export { type PooledTimeConstant, poolTimeConstants } from './pool.ts';
export type { NightReason } from './reasons.ts';
export { nightsOfStage, type StageNights } from './stages.ts';
export { type CoolingWindow, coolingWindow } from './window.ts';
