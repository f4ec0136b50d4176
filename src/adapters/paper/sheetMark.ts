import type { Face } from './letterWidths.ts';

/** What is put on a page, in points from its upper left corner; words stand on their baseline, and end at `x` where they are on the right. */
export type Mark =
  | Readonly<{ kind: 'box'; x: number; y: number; width: number; height: number; colour: string }>
  | Readonly<{ kind: 'words'; x: number; y: number; text: string; look: Look; align: 'left' | 'right' }>;

/** How words look: their face, their size in points, their colour. */
export type Look = Readonly<{ face: Face; size: number; colour: string }>;

/** A row that is never cut in two, its marks in points from its own top. */
export type Strip = Readonly<{
  height: number;
  marks: readonly Mark[];
  /** Put first again where the row begins a new page, as a table's head is. */
  head?: Strip;
  /** So much must fit below it too, or it goes to the next page with what follows. */
  follows?: number;
}>;

/** The colours of print: dark enough for any printer. */
export const INK = { deep: '#17404f', text: '#1f2428', soft: '#5b6770', line: '#c9d1d6', tint: '#eef3f5' } as const;

export const PLAIN: Look = { face: 'plain', size: 9.5, colour: INK.text };

/** Between two parts, in points. */
export const GAP = 14;

/** The same marks further down. */
export const lowered = (marks: readonly Mark[], by: number): readonly Mark[] =>
  marks.map((mark) => ({ ...mark, y: mark.y + by }));

/** Nothing, so high. */
export const space = (height: number): Strip => ({ height, marks: [] });
