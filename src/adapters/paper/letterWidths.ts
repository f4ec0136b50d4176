export type Face = 'plain' | 'bold';

/** How wide a text is in DejaVu Sans, in ems; never less than it is drawn, for letters that are not listed count as very wide. */
export const textWidth = (text: string, face: Face): number =>
  [...text].reduce((sum, letter) => sum + letterWidth(letter, face), 0) / 100;

const letterWidth = (letter: string, face: Face): number =>
  MARKS[letter] ?? WIDTHS[face][(letter.normalize('NFD').codePointAt(0) ?? 0) - FIRST] ?? UNLISTED;

/** Advance widths of the letters from space to ~, in hundredths of an em rounded up, read from the two font files. */
const WIDTHS: Readonly<Record<Face, readonly number[]>> = {
  plain: numbers(`
    32 41 46 84 64 96 78 28 40 40 50 84 32 37 32 34 64 64 64 64 64 64 64 64 64 64 34 34 84 84 84 54
    100 69 69 70 78 64 58 78 76 30 30 66 56 87 75 79 61 79 70 64 62 74 69 99 69 62 69 40 34 40 84 50
    50 62 64 55 64 62 36 64 64 28 28 58 28 98 64 62 64 64 42 53 40 64 60 82 60 60 53 64 34 64 84`),
  bold: numbers(`
    35 46 53 84 70 101 88 31 46 46 53 84 38 42 38 37 70 70 70 70 70 70 70 70 70 70 40 40 84 84 84 59
    100 78 77 74 84 69 69 83 84 38 38 78 64 100 84 86 74 86 78 73 69 82 78 111 78 73 73 46 37 46 84 50
    50 68 72 60 72 68 44 72 72 35 35 67 35 105 72 69 72 72 50 60 48 72 66 93 65 66 59 72 37 72 84`),
};
const FIRST = ' '.charCodeAt(0);
/** Marks that captions and papers often hold; the wider of the two faces. */
const MARKS: Readonly<Record<string, number>> = Object.fromEntries(
  marks(
    '\u00A0 35 · 38 ° 50 × 84 – 50 — 100 − 84 … 100 • 64 ☐ 90 “ 66 ” 66 ‘ 38 ’ 38 « 65 » 65 ¿ 59 ¡ 46 € 70 £ 70 ¥ 70 ª 57 º 57',
  ),
);
/** Wider than any letter of the font. */
const UNLISTED = 140;

function numbers(row: string): number[] {
  return row.trim().split(/\s+/).map(Number);
}

/** Each mark with its width, as `mark width mark width`. */
function marks(row: string): readonly (readonly [string, number])[] {
  return [...row.matchAll(/(\S|\u00A0) (\d+)/gu)].map(([, mark = '', width]) => [mark, Number(width)] as const);
}
