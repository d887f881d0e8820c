/** How sure the design itself is, before anything is measured. */
import { sum } from 'simple-statistics';
import type { Estimate } from '../assessment.ts';
import type { BridgesDesign } from './bridges.ts';
import type { ElementDesign } from './element.ts';
import type { VentilationDesign } from './ventilation.ts';

/** Each with its 95 % interval [W/K]; null where the figure is unknown. */
export interface DesignRanges {
  readonly heatLoss: Estimate | null;
  readonly heatLossAsTested: Estimate | null;
  readonly fabric: Estimate | null;
  readonly bridges: Estimate;
  readonly ventilation: Estimate;
  /** One of each element, in their order. */
  readonly elements: readonly (Estimate | null)[];
}

/** Standard deviations on either side of 95 % of a normal distribution. */
const coverage = 1.96;

/**
 * Conductivities and timber are off together in the whole house, so their deviations add up over elements;
 * everything else is each element's own and adds in squares, as do the kinds of doubt among each other.
 */
export function rangesOf(
  elements: readonly ElementDesign[],
  bridges: BridgesDesign,
  { asDrawn, asTested }: VentilationDesign,
): DesignRanges {
  const doubts = elements.map(doubtOf);
  const known = doubts.filter((it) => it !== null);
  const fabric =
    known.length < doubts.length ? null : evenly(sum(known.map((it) => it.value)), together(known));
  const bridging = evenly(bridges.heatLoss, bridges.sd);
  const whole = (air: Estimate | null) => fabric && air && inSquares([fabric, bridging, air]);
  return {
    heatLoss: whole(asDrawn),
    heatLossAsTested: whole(asTested),
    fabric,
    bridges: bridging,
    ventilation: asDrawn,
    elements: doubts.map((it) => it && evenly(it.value, together([it]))),
  };
}

/** Heat loss and its standard deviations, by kind [W/K]. */
interface Doubt {
  readonly value: number;
  readonly conductivity: number;
  readonly timber: number;
  readonly other: number;
}

function doubtOf(element: ElementDesign): Doubt | null {
  const { to, transmittance, spread, area, temperatureFactor, temperatureFactorSd } = element;
  if (to === 'adjacent') return { value: 0, conductivity: 0, timber: 0, other: 0 };
  if (transmittance === null || spread === null) return null;
  const per = area * temperatureFactor;
  return {
    value: transmittance * per,
    conductivity: spread.conductivity * per,
    timber: spread.timber * per,
    other: Math.hypot(spread.other * per, transmittance * area * temperatureFactorSd),
  };
}

const together = (doubts: readonly Doubt[]): number =>
  Math.hypot(
    sum(doubts.map((it) => it.conductivity)),
    sum(doubts.map((it) => it.timber)),
    ...doubts.map((it) => it.other),
  );

const evenly = (value: number, sd: number): Estimate => ({
  value,
  low: value - coverage * sd,
  high: value + coverage * sd,
});

/** The sum of independent figures; each side of the interval from the same sides of theirs. */
function inSquares(parts: readonly Estimate[]): Estimate {
  const value = sum(parts.map((it) => it.value));
  return {
    value,
    low: value - Math.hypot(...parts.map((it) => it.value - it.low)),
    high: value + Math.hypot(...parts.map((it) => it.high - it.value)),
  };
}
