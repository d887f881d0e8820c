/** How likely chance alone is to show as much, for one look and for several together. */
import { studentTQuantile } from '../../maths/studentT.ts';

/** From so many degrees of freedom Student's t is the normal one to four digits; its quantile loses its digits later. */
const AS_NORMAL = 1e5;
/** Nothing is told to be rarer than this. */
const RAREST = 1e-6;

/**
 * Probability of a Student's t at or above this [–], not below a millionth: where the quantile meets it, by halving.
 *
 * @param degreesOfFreedom above 0; Infinity for a normal quantity
 */
export function chanceAbove(t: number, degreesOfFreedom: number): number {
  if (t < 0) return 1 - chanceAbove(-t, degreesOfFreedom);
  let [low, high] = [Math.log(RAREST), Math.log(0.5)];
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (-studentTQuantile(Math.exp(middle), degreesOfFreedom) > t) low = middle;
    else high = middle;
  }
  return Math.exp((low + high) / 2);
}

/**
 * The same for what scatters by itself and is off by more that is known beforehand, both in one unit: Student's t with
 * the degrees of freedom of the sum of the variances.
 *
 * @param by    how far it lies on the bad side
 * @param se    by its own scatter, with so many degrees of freedom
 * @param known standard deviation of all else
 * @see Welch, Biometrika 34 (1947) 28, doi:10.1093/biomet/34.1-2.28; Satterthwaite, Biometrics Bulletin 2 (1946) 110,
 *      doi:10.2307/3002019
 */
export function chanceOf(by: number, se: number, degreesOfFreedom: number, known: number): number {
  const sd = Math.hypot(se, known);
  const freedom = degreesOfFreedom * (sd / se) ** 4;
  return chanceAbove(by / sd, freedom < AS_NORMAL ? freedom : Number.POSITIVE_INFINITY);
}

/**
 * The chances of several looks taken together: each that of any of them by chance, were nothing the matter.
 *
 * @param chances each by itself; they may hang together
 * @see Holm, Scandinavian Journal of Statistics 6 (1979) 65
 */
export function together(chances: readonly number[]): number[] {
  const rising = [...chances.keys()].sort((a, b) => chances[a] - chances[b]);
  const adjusted = [...chances];
  let least = 0;
  rising.forEach((i, before) => {
    least = Math.max(least, Math.min(1, (chances.length - before) * chances[i]));
    adjusted[i] = least;
  });
  return adjusted;
}
