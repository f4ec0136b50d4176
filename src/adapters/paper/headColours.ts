/** A colour between two others, `#rrggbb`. @example blend('#000000', '#ffffff', 0.5) //=> '#808080' */
export const blend = (from: string, to: string, share: number): string =>
  `#${[1, 3, 5].map((at) => blendByte(from.slice(at, at + 2), to.slice(at, at + 2), share)).join('')}`;

export const lighter = (colour: string, share: number): string => blend(colour, '#ffffff', share);
export const darker = (colour: string, share: number): string => blend(colour, '#000000', share);

/** The line around everything, so that white on white is still seen. */
export const INK = '#23272b';
/** What the head is drawn on; it also parts the hook from the strands behind it. */
export const BACKGROUND = '#e9eff2';
export const STEEL = '#a3abb2';
/** Lead as it comes out of the mold. */
export const CAST_METAL = '#8f959b';

const blendByte = (from: string, to: string, share: number): string =>
  Math.round(parseInt(from, 16) * (1 - share) + parseInt(to, 16) * share)
    .toString(16)
    .padStart(2, '0');
