import { captionDrawing } from './caption.ts';
import { BACKGROUND } from './headColours.ts';
import { collarDrawing, keeperDrawing, skirtDrawing } from './headDress.ts';
import type { HeadLook } from './headLook.ts';
import { bodyDrawing, bodyFills, guardDrawing, hookDrawing } from './headParts.ts';
import { headBox, headSize, type HeadBox } from './headSize.ts';
import { pngOf } from './png.ts';
import { rounded } from './strokes.ts';

/** One head from its side over its caption, as an SVG 800 pixels wide. */
export function headSvg(look: HeadLook): string {
  const caption = captionDrawing(look.caption, PICTURE_HEIGHT);
  const height = PICTURE_HEIGHT + caption.height;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}">`,
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    `<rect width="${WIDTH}" height="${PICTURE_HEIGHT}" fill="${BACKGROUND}"/>`,
    headDrawing(look),
    caption.svg,
    '</svg>',
  ].join('');
}

/** The same picture as a PNG. */
export const headPng = (look: HeadLook): Uint8Array => pngOf(headSvg(look));

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
