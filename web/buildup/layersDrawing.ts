/** The layers of an element drawn from inside (left) to outside (right), as figures: what stands where. */
import type { Layer } from '../../src/house.ts';

/** Room for the air on both sides [px]. */
const AIR = 44;
/** A layer without a thickness is drawn this wide [px]. */
const THIN = 6;
/** So many centres of the widest-set timbers are shown. */
const CENTRES_SHOWN = 1.6;
/** Where no timbers say how much of the face is shown [mm]. */
const USUAL_FACE = 600;

export interface DrawnTimber {
  readonly y: number;
  readonly height: number;
}

export interface DrawnLayer {
  readonly from: number;
  readonly to: number;
  readonly timbers: readonly DrawnTimber[];
}

export interface Graduation {
  readonly x: number;
  /** From the inside face [mm]. */
  readonly at: number;
  /** Whether its figure is written. */
  readonly long: boolean;
}

export interface LayersDrawing {
  readonly layers: readonly DrawnLayer[];
  /** The faces: one more than there are layers. */
  readonly faces: readonly number[];
  /** [px per mm] through the layers. */
  readonly scale: number;
  /** Of the rule beneath: strips without a thickness are passed over. */
  readonly graduations: readonly Graduation[];
}

/**
 * @param width  of the whole drawing [px]
 * @param height of the face that is shown [px]
 */
export function layersDrawing(layers: readonly Layer[], width: number, height: number): LayersDrawing {
  const thin = layers.filter(({ thicknessMm }) => thicknessMm === undefined).length;
  const thickness = layers.reduce((sum, { thicknessMm = 0 }) => sum + thicknessMm, 0);
  const scale = thickness === 0 ? 0 : (width - 2 * AIR - thin * THIN) / thickness;
  const faces = [AIR];
  for (const { thicknessMm } of layers)
    faces.push(faces[faces.length - 1] + (thicknessMm === undefined ? THIN : thicknessMm * scale));
  const along = height / faceShown(layers);
  return {
    layers: layers.map((layer, i) => ({
      from: faces[i],
      to: faces[i + 1],
      timbers: timbersOf(layer, height, along),
    })),
    faces,
    scale,
    graduations: thickness === 0 ? [] : graduationsOf(layers, faces, scale),
  };
}

const LEAST_STEP = 5; // [px] between two graduations
const LEAST_FIGURE = 34; // [px] between two figures

function graduationsOf(layers: readonly Layer[], faces: readonly number[], scale: number): Graduation[] {
  const stepOf = (least: number) => [1, 5, 10, 50, 100, 500].find((mm) => mm * scale >= least) ?? 1000;
  const [step, figure] = [stepOf(LEAST_STEP), stepOf(LEAST_FIGURE)];
  const graduations: Graduation[] = [];
  let passed = 0;
  layers.forEach(({ thicknessMm = 0 }, i) => {
    for (let at = Math.ceil(passed / step) * step; at < passed + thicknessMm; at += step)
      graduations.push({ x: faces[i] + (at - passed) * scale, at, long: at % figure === 0 });
    passed += thicknessMm;
  });
  return graduations;
}

const LEAST_CENTRES = 3; // [px]

const faceShown = (layers: readonly Layer[]) =>
  CENTRES_SHOWN * Math.max(0, ...layers.map(({ bridge }) => bridge?.spacingMm ?? 0)) || USUAL_FACE;

/** By width and centres where they are known; else one in the middle, of its share of the face. */
function timbersOf({ bridge }: Layer, height: number, along: number): DrawnTimber[] {
  if (bridge === undefined) return [];
  const { widthMm, spacingMm } = bridge;
  const timbers: DrawnTimber[] = [];
  // Too close to be told apart beside others far wider apart, they are drawn as one, too.
  if (widthMm === undefined || spacingMm === undefined || spacingMm * along < LEAST_CENTRES) {
    const share = bridge.fraction ?? (widthMm ?? 0) / (spacingMm ?? 1);
    return [{ y: (height * (1 - share)) / 2, height: height * share }];
  }
  const [each, step] = [widthMm * along, spacingMm * along];
  // Beginning an eighth of a spacing down, so that no timber is cut by the upper edge.
  for (let y = step / 8; y < height; y += step) timbers.push({ y, height: Math.min(each, height - y) });
  return timbers;
}
