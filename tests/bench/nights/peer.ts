/**
 * The same model given to the npm package ml-levenberg-marquardt, begun at the same guess. It gives no errors, and
 * with readings that scatter it never finds that it has arrived: it does as many iterations as it is told. So it
 * runs twice, with its usual number and with the three that suffice here, which nobody knows beforehand.
 */
import { readFileSync } from 'node:fs';
import { freeCooling } from '../../../src/cooling/index.ts';
import type { Contestant } from '../bench.ts';
import { load } from '../peers.ts';
import type { InventedNight } from './inventedNights.ts';

const PACKAGE = 'ml-levenberg-marquardt@5.1.0';

/** As much of the package as is used here. */
interface Package {
  levenbergMarquardt(
    data: { readonly x: readonly number[]; readonly y: readonly number[] },
    model: (parameters: readonly number[]) => (x: number) => number,
    options: {
      readonly initialValues: readonly number[];
      readonly damping: number;
      readonly gradientDifference: number;
      readonly maxIterations: number;
      readonly errorTolerance: number;
    },
  ): { readonly parameterValues: readonly number[] };
}

export const peers = [100, 3].map(
  (iterations): Contestant => ({
    name: `ml-levenberg-marquardt, ${iterations} iterations`,
    installs: PACKAGE,
    ready: async () => {
      const { levenbergMarquardt } = load<Package>(PACKAGE);
      return async (input) => {
        const nights: InventedNight[] = JSON.parse(readFileSync(input, 'utf8'));
        return nights.map((night) => fitBy(levenbergMarquardt, night, iterations));
      };
    },
  }),
);

function fitBy(
  levenbergMarquardt: Package['levenbergMarquardt'],
  { time, indoor, outdoor }: InventedNight,
  maxIterations: number,
): number {
  const t = Float64Array.from(time);
  const driver = Float64Array.from(outdoor);
  const last = indoor.length - 1;
  const difference = indoor.reduce((sum, it, i) => sum + it - outdoor[i], 0) / indoor.length;
  const guess = (difference * (time[last] - time[0])) / (indoor[0] - indoor[last]);
  const { parameterValues } = levenbergMarquardt(
    { x: indoor.map((_, i) => i), y: indoor },
    // the whole curve once for each set of parameters, then read off
    ([logTau, start]) => {
      const curve = freeCooling(t, driver, Math.exp(logTau), start);
      return (i) => curve[i];
    },
    {
      initialValues: [Math.log(guess), indoor[0]],
      damping: 1e-3,
      gradientDifference: 1e-4,
      maxIterations,
      errorTolerance: 1e-12,
    },
  );
  return Math.exp(parameterValues[0]);
}
