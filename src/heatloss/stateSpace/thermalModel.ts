/** A house as one, two or three temperatures that exchange heat. */
import type { ContinuousSystem } from '../../maths/discretise.ts';
import type { Prior } from '../../maths/fisherScoring.ts';
import { matrixOf } from '../../maths/matrix.ts';

/** How many: inside; with the shell's mass; with a mass that only the inside touches. */
export type States = 1 | 2 | 3;

/** What the priors are scaled by. */
export interface Scale {
  /** About what the house loses, by its mean heat and mean difference [W/K]. */
  readonly heatLoss: number;
  /** As the design has it [J/K]; null where nobody knows. */
  readonly heatCapacity: number | null;
  /** Heat given off unmetered [W]: expected, and one standard deviation of what it and the loggers may be off. */
  readonly gains: Prior;
  /** Standard deviation of one reading beforehand [K]. */
  readonly readingSd: number;
  /** Of the logarithm of the aperture [m²]. */
  readonly aperture: Prior;
}

/** All but the gains [W] are logarithms, shares on the logit: free of bounds. */
const names = [
  'heatLoss',
  'gains',
  'aperture',
  'insideCapacity',
  'insideNoise',
  'reading',
  'direct',
  'position',
  'shellCapacity',
  'shellNoise',
  'sunOnShell',
  'massConductance',
  'massCapacity',
] as const;
type Name = (typeof names)[number];
const countOf: Readonly<Record<States, number>> = { 1: 6, 2: 11, 3: 13 };

const HOUR = 3600; // [s]
const logit = (share: number) => Math.log(share / (1 - share));

/** Weak: what houses of any kind may be, by the loss they have. Noise beforehand: what the house loses for 1 K. PRACTICE. */
export function priorsOf(states: States, scale: Scale): Prior[] {
  const { heatLoss, heatCapacity, gains, readingSd, aperture } = scale;
  const shell = heatCapacity ?? heatLoss * 40 * HOUR;
  const all: Record<Name, Prior> = {
    heatLoss: { mean: Math.log(heatLoss), sd: 0.5 },
    gains,
    aperture,
    insideCapacity: { mean: Math.log(heatLoss * (states === 1 ? 20 : 4) * HOUR), sd: 0.7 },
    insideNoise: { mean: Math.log(heatLoss), sd: 1 },
    reading: { mean: Math.log(readingSd), sd: 0.7 },
    direct: { mean: logit(0.3), sd: 1 },
    position: { mean: logit(states === 3 ? 0.5 : 0.2), sd: 1.2 },
    shellCapacity: { mean: Math.log(shell), sd: 1 },
    shellNoise: { mean: Math.log(heatLoss), sd: 1 },
    sunOnShell: { mean: 0, sd: 1 },
    massConductance: { mean: Math.log(heatLoss * 5), sd: 1 },
    massCapacity: { mean: Math.log(shell / 2), sd: 1 },
  };
  return names.slice(0, countOf[states]).map((name) => all[name]);
}

export interface ThermalModel extends ContinuousSystem {
  /** [W] */
  readonly gains: number;
  /** [K²] */
  readonly readingVariance: number;
  /** Of the shell between inside and outside: 0 inside, 1 outside [–]. */
  readonly shellPosition: number;
}

/**
 * Inputs are the temperature that drives [°C], heat [W] and irradiance [W/m²]. A noise parameter is the standard
 * deviation of heat that nobody accounts for, as the mean of an hour [W].
 */
export function modelAt(states: States, parameters: Float64Array): ThermalModel {
  const raw = (name: Name) => parameters[names.indexOf(name)];
  const value = (name: Name) => Math.exp(raw(name));
  const share = (name: Name) => 1 / (1 + Math.exp(-raw(name)));
  const heatLoss = value('heatLoss');
  const aperture = value('aperture');
  const variance = (name: Name, capacity: number) => (value(name) / capacity) ** 2 * HOUR;
  const inside = value('insideCapacity');
  const common = { gains: raw('gains'), readingVariance: value('reading') ** 2 };
  if (states === 1)
    return {
      ...common,
      drift: [[-heatLoss / inside]],
      inputs: [[heatLoss / inside], [1 / inside], [aperture / inside]],
      noise: [variance('insideNoise', inside)],
      shellPosition: 0,
    };
  const direct = share('direct') * heatLoss;
  const position = share('position');
  const toShell = (heatLoss - direct) / position;
  const fromShell = (heatLoss - direct) / (1 - position);
  const shell = value('shellCapacity');
  const onShell = share('sunOnShell') * aperture;
  const toMass = states === 3 ? value('massConductance') : 0;
  const mass = states === 3 ? value('massCapacity') : 1;
  const drift = [
    [-(direct + toShell + toMass) / inside, toShell / inside, toMass / inside],
    [toShell / shell, -(toShell + fromShell) / shell, 0],
    [toMass / mass, 0, -toMass / mass],
  ];
  const inputs = [
    [direct / inside, fromShell / shell, 0],
    [1 / inside, 0, 0],
    [(aperture - onShell) / inside, onShell / shell, 0],
  ];
  return {
    ...common,
    drift: matrixOf(states, (i, j) => drift[i][j]),
    inputs: inputs.map((column) => column.slice(0, states)),
    noise: [
      variance('insideNoise', inside),
      variance('shellNoise', shell),
      variance('shellNoise', mass),
    ].slice(0, states),
    shellPosition: position,
  };
}
