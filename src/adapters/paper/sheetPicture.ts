import type { Paper } from '../../app/letter.ts';
import { escaped } from './caption.ts';
import { pngOf } from './png.ts';
import { longSheet } from './sheetLayout.ts';
import type { Mark } from './sheetMark.ts';
import { rounded } from './strokes.ts';

/** A paper as one long picture, 1224 pixels wide for letter paper: the very marks that its PDF has. */
export function sheetSvg(paper: Paper): string {
  const { width, height, marks } = longSheet(paper);
  const [wide, high] = [Math.ceil(width * SCALE), Math.ceil(height * SCALE)];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}" viewBox="0 0 ${wide / SCALE} ${high / SCALE}">`,
    `<rect width="${Math.ceil(width)}" height="${Math.ceil(height)}" fill="#ffffff"/>`,
    ...marks.map(drawn),
    '</svg>',
  ].join('');
}

/** The same as a PNG. */
export const sheetPng = (paper: Paper): Uint8Array => pngOf(sheetSvg(paper));

/** Pixels to a point: small print stays readable when it is looked at closely. */
const SCALE = 2;

function drawn(mark: Mark): string {
  if (mark.kind === 'box')
    return `<rect x="${rounded(mark.x)}" y="${rounded(mark.y)}" width="${rounded(mark.width)}" height="${rounded(mark.height)}" fill="${mark.colour}"/>`;
  const { x, y, text, look, align } = mark;
  const weight = look.face === 'bold' ? ' font-weight="bold"' : '';
  const anchor = align === 'right' ? 'end' : 'start';
  return `<text x="${rounded(x)}" y="${rounded(y)}" font-family="DejaVu Sans" font-size="${look.size}"${weight} fill="${look.colour}" text-anchor="${anchor}" xml:space="preserve">${escaped(text)}</text>`;
}
