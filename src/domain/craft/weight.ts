/** A weight as the trade marks it on a mold: an exact fraction of an avoirdupois ounce in lowest terms, such as `3/8` or `1`. */
export type Weight = string;

/** One avoirdupois ounce in grams, exact: 1 lb is 453.59237 g (NIST Handbook 44, Appendix C). */
export const GRAMS_PER_OUNCE = 28.349523125;

/** The fraction in lowest terms; undefined for anything that is not a positive fraction, whole or mixed number of ounces.
 *  @example parseWeight('6/16') //=> '3/8'
 *  @example parseWeight('1 1/2') //=> '3/2' */
export function parseWeight(text: string): Weight | undefined {
  const match = /^\s*(?:(\d{1,2})(?:\s+|$))?(?:(\d{1,3})\s*\/\s*(\d{1,3}))?\s*$/.exec(text);
  if (!match) return undefined;
  const [whole = 0, over = 0, under = 1] = match
    .slice(1)
    .map((part) => (part === undefined ? undefined : Number(part)));
  return under === 0 ? undefined : fraction(whole * under + over, under);
}

/** The fraction `over/under` as a weight; undefined unless it is above nothing. */
export function fraction(over: number, under: number): Weight | undefined {
  if (over <= 0 || under <= 0) return undefined;
  const common = divisor(over, under);
  return under === common ? String(over / common) : `${over / common}/${under / common}`;
}

/** Ounces as a number, for arithmetic that ends in a rounded mass; never stored. */
export function ounces(weight: Weight): number {
  const [over = 0, under = 1] = weight.split('/').map(Number);
  return over / under;
}

/** Grams of that many ounces. @example grams('1/2') //=> 14.1747615625 */
export const grams = (weight: Weight): number => ounces(weight) * GRAMS_PER_OUNCE;

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
