const MOST_TERMS = 300;
const ENOUGH = 1e-15;
const TINY = 1e-300;

/** Coefficients of Lanczos's series with g = 7 and nine terms. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/**
 * Natural logarithm of the gamma function.
 *
 * Formula: Lanczos's series, g = 7, nine terms
 * Range: x above 0; correct to some 14 digits.
 * Errors: none.
 * Source: C. Lanczos, SIAM J. Numer. Anal. B 1 (1964); coefficients of P. Godfrey; from memory.
 * @param x argument [1]
 * @returns ln gamma(x) [1]
 * @example logGamma(5) // => 3.1780538
 */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const below = x - 1;
  const base = below + 7.5;
  const sum = LANCZOS.slice(1).reduce((total, term, i) => total + term / (below + i + 1), LANCZOS[0]);
  return 0.5 * Math.log(2 * Math.PI) + (below + 0.5) * Math.log(base) - base + Math.log(sum);
}

/**
 * Regularised incomplete beta function.
 *
 * Formula: I_x(a, b), by its continued fraction, on the side of the mean where that converges fast
 * Range: a and b above 0, x from 0 to 1.
 * Errors: none.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.5.8; evaluated by Lentz's method; from memory.
 * @param x upper end [1]
 * @param a first shape [1]
 * @param b second shape [1]
 * @returns part of the distribution below x [1]
 * @example incompleteBeta(0.5, 2, 2) // => 0.5
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const scale = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  const clear = (value: number) => (Math.abs(value) < TINY ? TINY : value);
  let c = 1;
  let d = 1 / clear(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= MOST_TERMS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / clear(1 + even * d);
    c = clear(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / clear(1 + odd * d);
    c = clear(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < ENOUGH) break;
  }
  return (scale * fraction) / a;
}
