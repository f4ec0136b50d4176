import { escaped } from './caption.ts';
import { INK } from './headColours.ts';
import { textWidth, type Face } from './letterWidths.ts';
import { rounded } from './strokes.ts';

export type Writing = Readonly<{
  x: number;
  /** The baseline. */
  y: number;
  size: number;
  face?: Face;
  colour?: string;
  anchor?: 'start' | 'middle' | 'end';
  /** A rim in this colour keeps letters readable over a pattern. */
  rim?: string;
  /** Pixels it may be wide; longer words end in an ellipsis. */
  most: number;
}>;

/** One line of text that never grows past its room. */
export function written(text: string, at: Writing): string {
  const { x, y, size, face = 'bold', colour = INK, anchor = 'middle', rim, most } = at;
  const weight = face === 'bold' ? ' font-weight="bold"' : '';
  const halo =
    rim === undefined ? '' : ` stroke="${rim}" stroke-width="7" stroke-linejoin="round" paint-order="stroke"`;
  return `<text x="${rounded(x)}" y="${rounded(y)}" font-family="DejaVu Sans" font-size="${rounded(size)}"${weight} fill="${colour}" text-anchor="${anchor}"${halo}>${escaped(fitted(text, size, face, most))}</text>`;
}

/** The biggest size, between two, at which a text is no wider than its room; the least where it never is. */
export const sizeFor = (text: string, most: number, least: number, biggest: number, face: Face = 'bold'): number =>
  Math.max(least, Math.min(biggest, Math.floor(most / Math.max(0.01, textWidth(text, face)))));

function fitted(text: string, size: number, face: Face, most: number): string {
  const fits = (shown: string): boolean => textWidth(shown, face) * size <= most;
  const letters = [...text];
  if (fits(text)) return text;
  while (letters.length > 0 && !fits(`${letters.join('')}…`)) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}
