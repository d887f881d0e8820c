/**
 * Steady conduction through a bridged build-up in two dimensions: an independent second way to its resistance.
 * Finite volumes over half a spacing (mirror lines at the middle of the member and midway between two), air on
 * both sides, no heat through the mirrors. A grid of cells in rows; Cholesky's method on the band.
 */

export interface Slice {
  /** [m] */
  readonly thickness: number;
  /** Between the members [W/(mK)]. */
  readonly conductivity: number;
  /** Of the member [W/(mK)]; the same as between them where no member runs. */
  readonly member: number;
}

export interface Bridged {
  /** From inside to outside. */
  readonly slices: readonly Slice[];
  /** Of the member [m]. */
  readonly width: number;
  /** Centre to centre [m]. */
  readonly spacing: number;
  /** Surface resistances [m²K/W]. */
  readonly inside: number;
  readonly outside: number;
}

/** From air to air [m²K/W]. @param fineness cells across the member, and across each slice */
export function conductionResistance(
  { slices, width, spacing, inside, outside }: Bridged,
  fineness: number,
): number {
  const xs = [...even(width / 2, fineness), ...graded((spacing - width) / 2, width / 2 / fineness)];
  const members = fineness;
  const rows = slices.flatMap((slice) =>
    even(slice.thickness, fineness).map((height) => ({ ...slice, height })),
  );
  const [across, down] = [xs.length, rows.length];
  const conductivity = (column: number, row: number) =>
    column < members ? rows[row].member : rows[row].conductivity;

  /** The lower band of the matrix: of each cell its own entry, the one to its left, and the one before it. */
  const band = Array.from({ length: across * down }, () => new Float64Array(across + 1));
  const known = new Float64Array(across * down);
  const join = (a: number, b: number, conductance: number) => {
    band[a][0] += conductance;
    band[b][0] += conductance;
    band[b][b - a] -= conductance;
  };
  for (let row = 0; row < down; row++)
    for (let column = 0; column < across; column++) {
      const cell = row * across + column;
      const { height } = rows[row];
      const half = height / 2 / conductivity(column, row);
      if (column + 1 < across) {
        const left = xs[column] / 2 / conductivity(column, row);
        const right = xs[column + 1] / 2 / conductivity(column + 1, row);
        join(cell, cell + 1, height / (left + right));
      }
      if (row + 1 < down) {
        const next = rows[row + 1].height / 2 / conductivity(column, row + 1);
        join(cell, cell + across, xs[column] / (half + next));
      }
      if (row === 0) {
        band[cell][0] += xs[column] / (inside + half);
        known[cell] += xs[column] / (inside + half); // 1 °C inside, 0 °C outside
      }
      if (row === down - 1) band[cell][0] += xs[column] / (half + outside);
    }
  const temperature = solveBand(band, known);
  const flow = xs
    .map(
      (x, column) =>
        (x * (1 - temperature[column])) / (inside + rows[0].height / 2 / conductivity(column, 0)),
    )
    .reduce((a, b) => a + b);
  return spacing / 2 / flow;
}

const even = (length: number, count: number) => Array.from({ length: count }, () => length / count);

/** Cells that grow by a tenth each, away from the member. */
function graded(length: number, first: number): number[] {
  const growth = 1.1;
  const count = Math.ceil(Math.log1p((length / first) * (growth - 1)) / Math.log(growth));
  const sizes = Array.from({ length: count }, (_, i) => first * growth ** i);
  const whole = sizes.reduce((a, b) => a + b);
  return sizes.map((size) => (size * length) / whole);
}

/** Cholesky's method; `band[i][k]` is the entry of row i, column i - k. */
function solveBand(band: readonly Float64Array[], known: Float64Array): Float64Array {
  const width = band[0].length;
  for (let i = 0; i < band.length; i++) {
    for (let k = Math.min(i, width - 1); k >= 0; k--) {
      const j = i - k;
      let rest = band[i][k];
      for (let m = Math.max(0, i - width + 1, j - width + 1); m < j; m++)
        rest -= band[i][i - m] * band[j][j - m];
      band[i][k] = k === 0 ? Math.sqrt(rest) : rest / band[j][0];
    }
  }
  const result = known.slice();
  for (let i = 0; i < result.length; i++) {
    for (let k = 1; k < width && k <= i; k++) result[i] -= band[i][k] * result[i - k];
    result[i] /= band[i][0];
  }
  for (let i = result.length - 1; i >= 0; i--) {
    result[i] /= band[i][0];
    for (let k = 1; k < width && k <= i; k++) result[i - k] -= band[i][k] * result[i];
  }
  return result;
}
