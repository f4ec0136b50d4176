import type { BarsPicture } from '../../app/letter.ts';
import { INK } from './headColours.ts';
import { pngOf } from './png.ts';
import { rounded } from './strokes.ts';
import { sizeFor, written } from './weekText.ts';

/** Numbers as bars, an SVG 1080 pixels wide: the figures in a row at the top, then each group of bars with its words beside them. */
export function barsSvg({ title, figures, groups }: BarsPicture): string {
  let top = TOP + (figures.length === 0 ? 0 : FIGURES);
  const shown = groups.filter(({ bars }) => bars.length > 0);
  const drawn = shown.map((group) => {
    const svg = groupDrawing(group, top);
    top += HEADING + group.bars.length * ROW + GAP;
    return svg;
  });
  const height = Math.ceil(top);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}">`,
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    written(title, {
      x: MARGIN,
      y: 70,
      size: sizeFor(title, INSIDE, 28, 52),
      most: INSIDE,
      anchor: 'start',
    }),
    ...figures.map((figure, place) => figureDrawing(figure, place, figures.length)),
    ...drawn,
    '</svg>',
  ].join('');
}

/** The same picture as a PNG. */
export const barsPng = (bars: BarsPicture): Uint8Array => pngOf(barsSvg(bars));

const WIDTH = 1080;
const MARGIN = 40;
const INSIDE = WIDTH - 2 * MARGIN;
const TOP = 104;
const FIGURES = 150;
const HEADING = 62;
const ROW = 62;
const GAP = 26;
/** Room for the names before the bars, and for the words after the longest. */
const NAMES = 230;
const VALUES = 360;
const BAR = '#2f7d95';
const SOFT = '#5b6770';

/** A number, big, over its name. */
function figureDrawing({ name, value }: BarsPicture['figures'][number], place: number, count: number): string {
  const width = INSIDE / count;
  const x = MARGIN + width * (place + 0.5);
  const most = width - 14;
  return [
    `<rect x="${rounded(MARGIN + width * place + 4)}" y="${TOP}" width="${rounded(width - 8)}" height="112" rx="12" fill="#eef3f5"/>`,
    written(value, { x, y: TOP + 58, size: sizeFor(value, most - 10, 20, 44), most }),
    written(name, {
      x,
      y: TOP + 95,
      size: sizeFor(name, most - 10, 16, 26, 'plain'),
      most,
      face: 'plain',
      colour: SOFT,
    }),
  ].join('');
}

function groupDrawing({ title, bars }: BarsPicture['groups'][number], top: number): string {
  const heading = written(title, {
    x: MARGIN,
    y: top + 40,
    size: 28,
    most: INSIDE,
    anchor: 'start',
    colour: SOFT,
  });
  return heading + bars.map((bar, row) => barDrawing(bar, top + HEADING + row * ROW)).join('');
}

/** A name, a bar, and what it stands for beside its end. */
function barDrawing({ label, value, share }: BarsPicture['groups'][number]['bars'][number], top: number): string {
  const left = MARGIN + NAMES;
  const wide = Math.max(4, share * (INSIDE - NAMES - VALUES));
  return [
    written(label, {
      x: left - 14,
      y: top + 35,
      size: sizeFor(label, NAMES - 14, 18, 28, 'plain'),
      most: NAMES - 14,
      anchor: 'end',
      face: 'plain',
    }),
    `<rect x="${left}" y="${rounded(top + 4)}" width="${rounded(wide)}" height="42" rx="6" fill="${BAR}" stroke="${INK}" stroke-width="1.5"/>`,
    written(value, {
      x: left + wide + 14,
      y: top + 35,
      size: sizeFor(value, VALUES - 14, 18, 28),
      most: VALUES - 14,
      anchor: 'start',
    }),
  ].join('');
}
