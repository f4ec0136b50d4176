import { INK } from './headColours.ts';
import { textWidth, type Face } from './letterWidths.ts';

export type Caption = Readonly<{ svg: string; height: number }>;
type Row = Readonly<{ text: string; size: number }>;

/** Lines of text under a picture that is 800 pixels wide: the first big and bold; what is too long is wrapped, then cut with an ellipsis. */
export function captionDrawing(lines: readonly string[], top: number): Caption {
  const rows = fewEnough(lines.flatMap((line, place) => wrapped(line, place === 0 ? BIG : PLAIN)));
  const baselines = rows.map((_, place) => rows.slice(0, place + 1).reduce((sum, { size }) => sum + size * LEADING, 0));
  const texts = rows.map(({ text, size }, place) => textAt(text, size, top + (baselines[place] ?? 0)));
  return { svg: texts.join(''), height: Math.ceil((baselines.at(-1) ?? 0) + PADDING) };
}

/** Text that is safe between the tags of XML 1.0: no mark-up, no character that it forbids. */
export const escaped = (text: string): string =>
  [...text].map((letter) => (/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/u.test(letter) ? ' ' : (ENTITIES[letter] ?? letter))).join('');

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const BIG = 46;
const PLAIN = 34;
const LEADING = 1.32;
const PADDING = 30;
const MARGIN = 34;
const WIDTH = 800 - 2 * MARGIN;
/** Rows that one line may take, and rows in all. */
const ROWS_EACH = 2;
const ROWS = 10;

function textAt(text: string, size: number, y: number): string {
  const weight = faceOf(size) === 'bold' ? ' font-weight="bold"' : '';
  return `<text x="${MARGIN}" y="${Math.round(y)}" font-family="DejaVu Sans" font-size="${size}"${weight} fill="${INK}">${escaped(text)}</text>`;
}

const fewEnough = (rows: readonly Row[]): readonly Row[] =>
  rows.length <= ROWS ? rows : rows.slice(0, ROWS).map((row, place) => (place === ROWS - 1 ? cut(row) : row));

/** A line as rows that fit; a word longer than a row is broken. */
function wrapped(line: string, size: number): Row[] {
  const words = line
    .split(/\s+/u)
    .filter(Boolean)
    .flatMap((word) => broken(word, size));
  const rows = words.reduce<string[]>((done, word) => {
    const joined = `${done.at(-1) ?? ''} ${word}`.trim();
    return done.length > 0 && fits(joined, size) ? [...done.slice(0, -1), joined] : [...done, word];
  }, []);
  const kept = rows.slice(0, ROWS_EACH).map((text) => ({ text, size }));
  return rows.length <= ROWS_EACH ? kept : kept.map((row, place) => (place === ROWS_EACH - 1 ? cut(row) : row));
}

const broken = (word: string, size: number): string[] =>
  [...word].reduce<string[]>((parts, letter) => {
    const longer = `${parts.at(-1) ?? ''}${letter}`;
    return parts.length > 0 && fits(longer, size) ? [...parts.slice(0, -1), longer] : [...parts, letter];
  }, []);

function cut({ text, size }: Row): Row {
  const letters = [...text];
  while (letters.length > 0 && !fits(`${letters.join('')}…`, size)) letters.pop();
  return { text: `${letters.join('').trimEnd()}…`, size };
}

const fits = (text: string, size: number): boolean => textWidth(text, faceOf(size)) * size <= WIDTH;

const faceOf = (size: number): Face => (size === BIG ? 'bold' : 'plain');
