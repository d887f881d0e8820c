/** `sampleTruth.json`: what is true of the demonstration house, for judging what is found from its logs. */
import { between } from './loggers.ts';
import { asDrawn } from './plan.ts';
import {
  at,
  built,
  drawnAirChanges,
  heatedNight,
  plan,
  record,
  type Sample,
  seed,
  stages,
} from './sample.ts';
import { heatLoss, nightLeakage } from './truth.ts';
import type { Span } from './use.ts';

const seriesStep = 600;

export function sampleTruth({ weather, use, run }: Sample) {
  const series = (values: Float64Array) => {
    const all: number[] = [];
    for (let time = record.from; time <= record.to; time += seriesStep)
      all.push(Number(between(values, (time - run.start) / run.step).toFixed(3)));
    return all;
  };
  const [living, kitchen, bedroom, roofVoid] = run.airTemperature;
  const inRecord = ({ from, to }: Span) => to > record.from && from < record.to;
  return {
    about: 'Invented, written by makeSample.ts. Local time is UTC. Rooms: air, free of noise, bias and lag.',
    seed,
    stages: stages.map(({ name, from, to }) => {
      const airChangesPerHour = nightLeakage(run, { from: at(from), to: at(to) });
      return { name, from, to, airChangesPerHour, heatLossWK: heatLoss(plan, built, airChangesPerHour) };
    }),
    drawn: {
      airChangesPerHour: drawnAirChanges.ventsShut,
      heatLossWK: heatLoss(plan, asDrawn, drawnAirChanges.ventsShut),
    },
    heatedNight: { ...times(heatedNight), powerW: heatedNight.power },
    heating: use.heating.filter(inRecord).map(times),
    series: {
      firstS: record.from,
      stepS: seriesStep,
      outdoorC: series(weather.airTemperature),
      livingC: series(living),
      kitchenC: series(kitchen),
      bedroomC: series(bedroom),
      roofVoidC: series(roofVoid),
    },
  };
}
export type SampleTruth = ReturnType<typeof sampleTruth>;

const times = ({ from, to }: Span) => ({ from: local(from), to: local(to) });
const local = (time: number) => new Date(time * 1000).toISOString().slice(0, 16);
