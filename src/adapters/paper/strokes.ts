import type { Point } from './headOutlines.ts';

/** A path drawn as a round-ended line. */
export const along = (path: string, colour: string, width: number): string =>
  `<path d="${path}" fill="none" stroke="${colour}" stroke-width="${rounded(width)}" stroke-linecap="round" stroke-linejoin="round"/>`;

/** A point as path data. */
export const at = ([x, y]: Point): string => `${rounded(x)} ${rounded(y)}`;

/** Short enough to keep the picture small, exact enough for the eye. */
export const rounded = (value: number): number => Math.round(value * 100) / 100;
