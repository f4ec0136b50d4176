import { captionDrawing } from './caption.ts';
import { BACKGROUND } from './headColours.ts';
import { collarDrawing, keeperDrawing, skirtDrawing } from './headDress.ts';
import type { HeadLook } from './headLook.ts';
import { bodyDrawing, bodyFills, guardDrawing, hookDrawing } from './headParts.ts';
import { headBox, headSize, type HeadBox } from './headSize.ts';
import { pngOf } from './png.ts';
import { rounded } from './strokes.ts';

/** One head from its side over its caption, as an SVG 800 pixels wide. */
export const headSvg = (look: HeadLook): string => framed(panel(look, 1));

/** Several heads in one picture, one below the other, each over its own caption. */
export function headsSvg(looks: readonly HeadLook[]): string {
  const panels = looks.map((look) => panel(look, SMALLER));
  const tops = panels.map((_, at) => panels.slice(0, at).reduce((sum, { height }) => sum + height, 0));
  const rows = panels.map(({ svg }, at) => `<g transform="translate(0 ${tops[at] ?? 0})">${svg}</g>`);
  return framed({ svg: rows.join(''), height: panels.reduce((sum, { height }) => sum + height, 0) });
}

/** The same pictures as a PNG. */
export const headPng = (look: HeadLook): Uint8Array => pngOf(headSvg(look));
export const headsPng = (looks: readonly HeadLook[]): Uint8Array => pngOf(headsSvg(looks));

type Drawing = Readonly<{ svg: string; height: number }>;

function framed({ svg, height }: Drawing): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}">`,
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    svg,
    '</svg>',
  ].join('');
}

/** A head on its ground, drawn at a share of its full size, over its caption. */
function panel(look: HeadLook, share: number): Drawing {
  const ground = Math.round(PICTURE_HEIGHT * share);
  const caption = captionDrawing(look.caption, ground);
  const head = share === 1 ? headDrawing(look) : scaled(headDrawing(look), share);
  return {
    svg: `<rect width="${WIDTH}" height="${ground}" fill="${BACKGROUND}"/>${head}${caption.svg}`,
    height: ground + caption.height,
  };
}

const scaled = (svg: string, share: number): string =>
  `<g transform="translate(${rounded((WIDTH * (1 - share)) / 2)} 0) scale(${share})">${svg}</g>`;

/** Of several heads each is drawn so much smaller, so that a phone shows two at once. */
const SMALLER = 0.65;

const WIDTH = 800;
const PICTURE_HEIGHT = 440;

/** The parts from the back to the front. */
function headDrawing(look: HeadLook): string {
  const size = headSize(look);
  const { guard, dressing } = look;
  const parts = [
    dressing === null ? '' : skirtDrawing(size, dressing),
    guard === null ? '' : guardDrawing(size, guard.colour),
    hookDrawing(size),
    keeperDrawing(size, look),
    dressing === null ? '' : collarDrawing(size, dressing),
    bodyDrawing(size, look),
  ];
  return `<defs>${bodyFills(size, look)}</defs><g transform="translate(${middle(headBox(size, look))})">${parts.join('')}</g>`;
}

/** Where the middle of the head goes so that head and hook stand in the middle. */
function middle({ left, right, top, bottom }: HeadBox): string {
  return `${rounded((WIDTH - left - right) / 2)} ${rounded((PICTURE_HEIGHT - top - bottom) / 2)}`;
}
