/** The rooms together, night by night: what their air held over that outdoors. */
import type { NightCurve } from '../curves.ts';
import type { MoistNight } from '../words/aboutHumidity.ts';

/** Nights with humidity inside and outdoors, in the order of time. */
export const moistNights = (curves: readonly NightCurve[]): MoistNight[] =>
  curves.flatMap(({ moist = [] }) => {
    const at = (where: 'inside' | 'outside') => moist.filter(({ place }) => place === where);
    const [inside, outside, outsideC] = [
      meanOf(at('inside').map((it) => it.absoluteHumidity)),
      meanOf(at('outside').map((it) => it.absoluteHumidity)),
      meanOf(at('outside').map((it) => it.temperature)),
    ];
    return inside === null || outside === null || outsideC === null
      ? []
      : [{ excessGM3: 1000 * (inside - outside), outsideC }];
  });

/** The plain mean; null of none. */
export const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, it) => sum + it, 0) / values.length;
