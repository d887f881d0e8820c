/** Measured against the design as drawn, like with like, and what that would mean for each element. */
import type { Estimate, Verdict } from '../assessment.ts';
import type { Design } from '../fabric/index.ts';
import { ventilationOf } from '../fabric/ventilation.ts';
import type { House } from '../house.ts';
import type { GapNote } from './gapNotes.ts';
import { type ElementGap, gapInElements } from './inElements.ts';
import { type MeanTransmittance, meanTransmittanceOf } from './meanTransmittance.ts';
import { gapRatio, verdictOf } from './verdict.ts';

export interface Gap {
  /** Measured over designed. */
  readonly ratio: Estimate;
  readonly verdict: Verdict | null;
  /** What it was set beside [W/K]. */
  readonly drawn: number;
  /** Null for a stage that is not finished. */
  readonly detail: GapDetail | null;
}

export interface GapDetail {
  /** Measured less designed heat loss [W/K]; below zero where it loses less than drawn. */
  readonly excess: Estimate;
  /** Empty where it loses no more than drawn. */
  readonly elements: readonly ElementGap[];
  /** Null where the design states no ventilation. */
  readonly mean: MeanTransmittance | null;
  readonly notes: readonly GapNote[];
}

export interface ToCompare {
  readonly house: House;
  readonly design: Design;
  /** As measured [W/K]. */
  readonly heatLoss: Estimate;
  /** What it is set beside [W/K]: as tested, or as drawn. */
  readonly drawn: number;
  readonly finished: boolean;
  /** No two ways to the heat loss contradict each other: else there is no verdict. */
  readonly agree: boolean;
}

/** The gap of a stage; one that is not finished has no verdict and nothing to say of its elements. */
export function gapOf(given: ToCompare): Gap {
  const { house, heatLoss, drawn, finished, agree } = given;
  const ratio = gapRatio(heatLoss, drawn);
  if (!finished) return { ratio, drawn, verdict: null, detail: null };
  const verdict = agree ? verdictOf(ratio, house.allowance) : 'undecided';
  // Air is in what was measured: without it in the design, more than drawn is no fault found.
  const told = verdict === 'exceeds' && house.ventilation === undefined ? 'undecided' : verdict;
  return { ratio, drawn, verdict: told, detail: detailOf(given, told) };
}

/**
 * Compared are fabric, bridges and air to outside, ground and unheated spaces; walls to heated neighbours are on
 * neither side. The design's own uncertainty stands beside it and is not mixed in.
 *
 * @see ISO 13789:2017 for what counts, ISO 13370:2017 for floors on the ground
 */
function detailOf({ house, design, heatLoss, drawn }: ToCompare, verdict: Verdict): GapDetail {
  const excess = {
    value: heatLoss.value - drawn,
    low: heatLoss.low - drawn,
    high: heatLoss.high - drawn,
  };
  const asTested = drawn !== design.heatLoss;
  const air = ventilationOf(house, design.exposedArea);
  const ventilation = asTested ? air.asTested : air.asDrawn;
  const mean =
    house.ventilation === undefined || ventilation === null
      ? null
      : meanTransmittanceOf(heatLoss, ventilation, design);
  const withAir = house.ventilation !== undefined;
  const elements = excess.value > 0 && withAir ? gapInElements(house, design, excess) : [];
  const range = asTested ? design.ranges.heatLossAsTested : design.ranges.heatLoss;
  const notes: (GapNote | null)[] = [
    {
      code: 'gap-compared',
      asTested,
      drawn,
      withAir,
      range,
      onGround: design.elements.some(({ to }) => to === 'ground'),
      neighbours: design.elements.flatMap(({ to, name }) => (to === 'adjacent' ? [name] : [])),
    },
    withAir ? null : { code: 'gap-without-air' },
    withAir && design.heatLossAsTested === null && house.conditions?.ventsClosed !== false
      ? { code: 'gap-vents-in-use' }
      : null,
    excess.value > 0
      ? null
      : { code: 'gap-none', sure: verdict === 'meets', less: -excess.value, most: excess.high },
    excess.value > 0 && excess.low <= 0 ? { code: 'gap-may-be-none', most: excess.high } : null,
    excess.value > 0 && range !== null && heatLoss.value <= range.high
      ? { code: 'gap-within-design', high: range.high }
      : null,
    mean === null ? null : { code: 'mean-transmittance', asTested, ...mean },
    elements.length > 0 ? { code: 'gap-in-elements' } : null,
  ];
  return { excess, elements, mean, notes: notes.filter((note) => note !== null) };
}
