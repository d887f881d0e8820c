/** The nights whose own exponential was fitted, and how sure their mean is. */
import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { StageNights } from '../../cooling/index.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';

/** A night of the record whose own exponential was fitted. */
export interface FittedNight {
  /** Cells of the grid, both ends included. */
  readonly first: number;
  readonly last: number;
  readonly stage: number;
  /** [s] */
  readonly timeConstant: number;
}

export function fittedNights(stages: readonly StageNights[]): FittedNight[] {
  return stages.flatMap(({ nights }, stage) =>
    nights.flatMap(({ used, window, fit }) =>
      used && window !== null && fit?.kind === 'fitted'
        ? [{ ...window, stage, timeConstant: fit.timeConstant.value }]
        : [],
    ),
  );
}

/** Mean logarithm of a stage's time constants in seconds; null without a night. */
export function meanLogTimeConstant(nights: readonly FittedNight[], stage: number): number | null {
  const own = logsOf(nights, stage);
  return own.length === 0 ? null : mean(own);
}

/**
 * Standard error of that mean, made wider for so few nights as Student's t has it, so that 1.96 of it reach to either
 * end of the 95 % interval [–]; null with one night, which has no spread to judge by.
 */
export function meanLogTimeConstantSd(nights: readonly FittedNight[], stage: number): number | null {
  const own = logsOf(nights, stage);
  if (own.length < 2) return null;
  const standardError = sampleStandardDeviation(own) / Math.sqrt(own.length);
  return (standardError * studentTQuantile(0.975, own.length - 1)) / NORMAL_95;
}

const logsOf = (nights: readonly FittedNight[], stage: number): number[] =>
  nights.filter((night) => night.stage === stage).map(({ timeConstant }) => Math.log(timeConstant));
