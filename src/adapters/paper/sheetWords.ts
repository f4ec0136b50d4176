import { textWidth } from './letterWidths.ts';
import type { Look, Mark } from './sheetMark.ts';

/** From the top of a line to its baseline, and from line to line, in ems of DejaVu Sans (its ascent, and its height with a little air). */
const ASCENT = 0.928;
const LEADING = 1.32;

export type Column = Readonly<{ x: number; width: number; align: 'left' | 'right' }>;

export const lineHeight = ({ size }: Look): number => size * LEADING;

/** Words broken into a column, and how high they stand. Lines that were parted stay so; a word longer than the column is broken. */
export function wordsIn(
  text: string,
  look: Look,
  { x, width, align }: Column,
  top: number,
): Readonly<{ marks: readonly Mark[]; height: number }> {
  const lines = text.split('\n').flatMap((line) => wrapped(line, look, width));
  return {
    height: lines.length * lineHeight(look),
    marks: lines.map((line, at) => ({
      kind: 'words',
      x: align === 'right' ? x + width : x,
      y: top + at * lineHeight(look) + look.size * ASCENT,
      text: line,
      look,
      align,
    })),
  };
}

/** One line that ends in an ellipsis where it is longer than its room. */
export function clippedTo(text: string, look: Look, width: number): string {
  if (fits(text, look, width)) return text;
  const letters = [...text];
  while (letters.length > 0 && !fits(`${letters.join('')}…`, look, width)) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

const fits = (text: string, { face, size }: Look, width: number): boolean => textWidth(text, face) * size <= width;

/** A line as lines that fit, broken between words; a space that does not break holds words together. */
export function wrapped(line: string, look: Look, width: number): readonly string[] {
  const words = line.split(' ').flatMap((word) => pieces(word, look, width));
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    if (last !== undefined && fits(`${last} ${word}`, look, width)) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.length === 0 ? [''] : lines;
}

/** A word that is too long as pieces that fit: after a hyphen or at a space that does not break, else anywhere. */
function pieces(word: string, look: Look, width: number): readonly string[] {
  if (fits(word, look, width)) return [word];
  const parts = word.match(/[^-\u00A0]*[-\u00A0]?/g) ?? [];
  const small = parts.flatMap((part) => (fits(part, look, width) ? [part] : [...part]));
  const packed: string[] = [''];
  for (const part of small) {
    const last = packed.at(-1) ?? '';
    if (fits(last + part, look, width)) packed[packed.length - 1] = last + part;
    else packed.push(part);
  }
  return packed.map((piece) => piece.replace(/\u00A0$/, '')).filter((piece) => piece !== '');
}
