/** A stream of numbers in [0, 1), the same for the same seed. */
export type Random = () => number;

/** Mulberry32: one 32-bit word of state, good enough to shake a plan and to imagine weeks. Any integer is a seed.
 *  @example randomOf(1)() === randomOf(1)() //=> true */
export function randomOf(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A whole number from 0 up to but not including `below`. */
export const pick = (random: Random, below: number): number => Math.floor(random() * below);

/** A draw from the normal law with mean 0 and deviation 1 (Box and Muller 1958). */
export const gauss = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
