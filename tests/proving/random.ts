/** Seeded random numbers: the same seed and name give the same stream on every machine. */
export interface Random {
  /** Evenly between 0 and 1. */
  uniform(): number;
  /** Normal with mean 0 and deviation 1. */
  normal(): number;
}

/**
 * A stream of its own for every name, so that a further draw in one place moves nothing elsewhere.
 *
 * @see Generator: sfc32 of the PractRand suite (C. Doty-Humphrey, public domain). Normals: G. Marsaglia,
 *      T. A. Bray, A convenient method for generating normal variables, SIAM Review 6 (1964) 260-264.
 */
export function random(seed: number, name: string): Random {
  const uniform = sfc32(hash(`${seed}/${name}`));
  let spare = Number.NaN;
  const normal = () => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * scale;
      return x * scale;
    }
  };
  return { uniform, normal };
}

/** FNV-1a, 32 bits. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193);
  return value >>> 0;
}

function sfc32(seed: number): () => number {
  let a = 0;
  let b = seed | 0;
  let c = 0x9e3779b9 | 0;
  let counter = 1;
  const next = () => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}
