/** The part of jstat that is used here; the package carries no types. */
declare module 'jstat' {
  const jStat: {
    readonly normal: {
      inv(probability: number, mean: number, standardDeviation: number): number;
      cdf(value: number, mean: number, standardDeviation: number): number;
    };
    readonly studentt: { inv(probability: number, degreesOfFreedom: number): number };
    readonly chisquare: { cdf(value: number, degreesOfFreedom: number): number };
  };
  export default jStat;
}
