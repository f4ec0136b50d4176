import { density, type Composition } from './metals.ts';

/** A body of metal: its mass in grams without the hook, and what it is made of. */
export type Casting = Readonly<{ grams: number; composition: Composition }>;

/** Volume in cm³. */
export const volumeOf = ({ grams, composition }: Casting): number => grams / density(composition);

/** Radius in cm of the sphere of the same mass. @example sphereRadius({ grams: 14.175, composition: { Pb: 1 } }) //=> 0.668… */
export const sphereRadius = (casting: Casting): number => Math.cbrt((3 * volumeOf(casting)) / (4 * Math.PI));

/** Surface in cm² of the sphere of the same mass: the least any head of that mass can have. */
export const sphereArea = (casting: Casting): number => 4 * Math.PI * sphereRadius(casting) ** 2;

/** Volume over surface of that sphere in metres, r/3: the longest that any head of that mass can have, so its slowest case. */
export const sphereLength = (casting: Casting): number => sphereRadius(casting) / 100 / 3;
