/**
 * Steady conduction through a bridged build-up in two or three dimensions: an independent second way to its
 * resistance. Finite volumes over half a spacing each way (mirror lines at the middle of a member and midway between
 * two), air on both faces, no heat through the mirrors; solved by conjugate gradients.
 */

export interface Slice {
  /** [m] */
  readonly thickness: number;
  /** Between the members [W/(mK)]. */
  readonly conductivity: number;
  /** Null where none run. */
  readonly member: Member | null;
}

export interface Member {
  /** [W/(mK)] */
  readonly conductivity: number;
  /** Upright like studs and rafters, or across them like battens: the two cross at right angles. */
  readonly runs: 'up' | 'across';
}

/** Of members that run one way [m]. */
export interface Centres {
  readonly width: number;
  /** Centre to centre. */
  readonly spacing: number;
}

export interface Bridged {
  /** From inside to outside. */
  readonly slices: readonly Slice[];
  readonly up: Centres;
  /** Left out where nothing runs across: two dimensions are enough. */
  readonly across?: Centres;
  /** Surface resistances [m²K/W]. */
  readonly inside: number;
  readonly outside: number;
}

/**
 * From air to air [m²K/W].
 *
 * @param fineness cells across half a member, and through each slice
 */
export function conductionResistance(
  { slices, up, across, inside, outside }: Bridged,
  fineness: number,
): number {
  const xs = cellsBeside(up, fineness);
  const ys = across === undefined ? [1] : cellsBeside(across, fineness);
  const rows = slices.flatMap((slice) =>
    Array.from({ length: fineness }, () => ({ ...slice, height: slice.thickness / fineness })),
  );
  const [nx, ny, nz] = [xs.length, ys.length, rows.length];
  const cell = (x: number, y: number, z: number) => (z * ny + y) * nx + x;
  const conductivity = (x: number, y: number, z: number) => {
    const { member, conductivity: between } = rows[z];
    if (member === null) return between;
    return (member.runs === 'up' ? x : y) < fineness ? member.conductivity : between;
  };

  const joints: Joint[] = [];
  const toInside = new Float64Array(nx * ny * nz);
  const toOutside = new Float64Array(nx * ny * nz);
  for (let z = 0; z < nz; z++)
    for (let y = 0; y < ny; y++)
      for (let x = 0; x < nx; x++) {
        const here = cell(x, y, z);
        const own = conductivity(x, y, z);
        const { height } = rows[z];
        if (x + 1 < nx) {
          const resistance = xs[x] / own + xs[x + 1] / conductivity(x + 1, y, z);
          joints.push({ from: here, to: cell(x + 1, y, z), conductance: (2 * ys[y] * height) / resistance });
        }
        if (y + 1 < ny) {
          const resistance = ys[y] / own + ys[y + 1] / conductivity(x, y + 1, z);
          joints.push({ from: here, to: cell(x, y + 1, z), conductance: (2 * xs[x] * height) / resistance });
        }
        const face = xs[x] * ys[y];
        if (z + 1 < nz) {
          const resistance = height / own + rows[z + 1].height / conductivity(x, y, z + 1);
          joints.push({ from: here, to: cell(x, y, z + 1), conductance: (2 * face) / resistance });
        }
        if (z === 0) toInside[here] = face / (inside + height / 2 / own);
        if (z === nz - 1) toOutside[here] = face / (outside + height / 2 / own);
      }
  // 1 °C inside, 0 °C outside
  const temperature = temperatures(joints, toInside, toOutside);
  const flow = toInside.reduce((sum, conductance, i) => sum + conductance * (1 - temperature[i]), 0);
  const area = (up.spacing / 2) * (across === undefined ? 1 : across.spacing / 2);
  return area / flow;
}

/** Even over half a member, then growing by a tenth each to midway between two [m]. */
function cellsBeside({ width, spacing }: Centres, fineness: number): number[] {
  const first = width / 2 / fineness;
  const length = (spacing - width) / 2;
  const growth = 1.1;
  const count = Math.ceil(Math.log1p((length / first) * (growth - 1)) / Math.log(growth));
  const sizes = Array.from({ length: count }, (_, i) => growth ** i);
  const whole = sizes.reduce((a, b) => a + b);
  return [...Array.from({ length: fineness }, () => first), ...sizes.map((size) => (size * length) / whole)];
}

/** Two cells that exchange heat [W/K]. */
interface Joint {
  readonly from: number;
  readonly to: number;
  readonly conductance: number;
}

/** What is left of the imbalance at the end, relative. */
const tolerance = 1e-10;

/** The temperatures at which every cell passes on what it gets; conjugate gradients scaled by each cell's own. */
function temperatures(
  joints: readonly Joint[],
  toInside: Float64Array,
  toOutside: Float64Array,
): Float64Array {
  const n = toInside.length;
  const own = Float64Array.from(toInside, (it, i) => it + toOutside[i]);
  for (const { from, to, conductance } of joints) {
    own[from] += conductance;
    own[to] += conductance;
  }
  const result = new Float64Array(n);
  const left = toInside.slice();
  const direction = Float64Array.from(left, (it, i) => it / own[i]);
  let size = dot(left, direction);
  const enough = size * tolerance ** 2;
  while (size > enough) {
    const passed = Float64Array.from(direction, (it, i) => it * own[i]);
    for (const { from, to, conductance } of joints) {
      passed[from] -= conductance * direction[to];
      passed[to] -= conductance * direction[from];
    }
    const step = size / dot(direction, passed);
    for (let i = 0; i < n; i++) {
      result[i] += step * direction[i];
      left[i] -= step * passed[i];
    }
    const scaled = Float64Array.from(left, (it, i) => it / own[i]);
    const next = dot(left, scaled);
    for (let i = 0; i < n; i++) direction[i] = scaled[i] + (next / size) * direction[i];
    size = next;
  }
  return result;
}

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, it, i) => sum + it * b[i], 0);
