/** Which stages a sheet tells at length: all of a few; of many the last alone, the others with a row each. */
const FEW = 3;

export const areMany = (stages: readonly unknown[]): boolean => stages.length > FEW;

export const atLength = <Stage>(stages: readonly Stage[]): readonly Stage[] =>
  areMany(stages) ? stages.slice(-1) : stages;

export const inBrief = <Stage>(stages: readonly Stage[]): readonly Stage[] =>
  areMany(stages) ? stages.slice(0, -1) : [];
