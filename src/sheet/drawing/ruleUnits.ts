/** The quantities that a ruler can carry, and how their figures are written. */
import type { Estimate } from '../../assessment.ts';
import { figures } from '../../words/index.ts';

interface Writing {
  /** At the end of the ruler; empty for a plain ratio. */
  readonly sign: string;
  readonly point: (value: number) => string;
  readonly between: (it: Estimate) => string;
}

export const ruleUnits = {
  'W/K': { sign: 'W/K', point: figures.heatLoss, between: figures.heatLossBetween },
  h: { sign: 'hours', point: figures.hours, between: figures.hoursBetween },
  'W/(m²K)': {
    sign: 'W/(m²K)',
    point: figures.transmittance,
    between: ({ value, low, high }) =>
      `${figures.decimal(low, 2)} to ${figures.transmittance(high)} (${figures.decimal(value, 2)})`,
  },
  /** A ruler that has its unit written on it: the figures do without, so that names have room. */
  'U-value': { sign: 'W/(m²K)', point: figures.ratio, between: figures.ratioBetween },
  ratio: { sign: '', point: figures.ratio, between: figures.ratioBetween },
} as const satisfies Record<string, Writing>;
export type RuleUnit = keyof typeof ruleUnits;
