/** Complex numbers, as far as a periodic heat flow needs them. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });

export const add = (a: Complex, b: Complex): Complex => complex(a.re + b.re, a.im + b.im);

export const subtract = (a: Complex, b: Complex): Complex => complex(a.re - b.re, a.im - b.im);

export const scale = (factor: number, a: Complex): Complex => complex(factor * a.re, factor * a.im);

export const multiply = (a: Complex, b: Complex): Complex =>
  complex(a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re);

/** a/b by Smith's method, which does not overflow where the quotient does not. */
export function divide(a: Complex, b: Complex): Complex {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const ratio = b.im / b.re;
    const whole = b.re + b.im * ratio;
    return complex((a.re + a.im * ratio) / whole, (a.im - a.re * ratio) / whole);
  }
  const ratio = b.re / b.im;
  const whole = b.re * ratio + b.im;
  return complex((a.re * ratio + a.im) / whole, (a.im * ratio - a.re) / whole);
}

export const modulus = (a: Complex): number => Math.hypot(a.re, a.im);

/** [rad], above -π and at most π */
export const argument = (a: Complex): number => Math.atan2(a.im, a.re);

export const cosh = (a: Complex): Complex =>
  complex(Math.cosh(a.re) * Math.cos(a.im), Math.sinh(a.re) * Math.sin(a.im));

export const sinh = (a: Complex): Complex =>
  complex(Math.sinh(a.re) * Math.cos(a.im), Math.cosh(a.re) * Math.sin(a.im));
