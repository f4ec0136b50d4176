import { hookRank } from '../../domain/craft/hook.ts';
import type { HeadLook } from './headLook.ts';
import { HEAD_OUTLINES, type HeadOutline, type Point } from './headOutlines.ts';

/** The measures a head is drawn by, in pixels from the middle of the head. */
export type HeadSize = Readonly<{
  outline: HeadOutline;
  /** Pixels to a unit of the outline. */
  unit: number;
  /** Where the wire turns up to the eye, and the middle of the eye. */
  turn: Point;
  eye: Point;
  /** Where the shank leaves the head, where the bend begins, and how wide the gap is. */
  tail: number;
  bend: number;
  gap: number;
  /** The shank's height and the thickness of its wire. */
  axis: number;
  wire: number;
}>;

/** Bigger weights and hooks look bigger, yet the smallest still fills half of the picture and the biggest all of it. */
export function headSize(look: HeadLook): HeadSize {
  const scale = SCALE * (headMm(look) + hookMm(look)) ** -SOFTNESS;
  const { left, right, top, bottom } = headBox(sizeAt(look, scale), look);
  return sizeAt(look, scale * Math.min(1, MOST_WIDE / (right - left), MOST_HIGH / (bottom - top)));
}

/** What the drawing takes up, in pixels from the middle of the head. */
export type HeadBox = Readonly<{ left: number; right: number; top: number; bottom: number }>;

export function headBox(
  { outline, unit, eye, bend, gap, axis, wire }: HeadSize,
  { guard, dressing }: HeadLook,
): HeadBox {
  const eyeHalf = wire * 3;
  const isSkirted = dressing?.kind === 'skirt';
  return {
    left: Math.min(eye[0] - eyeHalf, outline.nose * unit),
    right: bend + gap * (isSkirted ? 0.65 : 0.5) + wire,
    top: Math.min(eye[1] - eyeHalf, axis - gap * (guard === null ? 1.12 : 1.45) - wire, -outline.half * unit),
    bottom: Math.max(outline.half * unit, axis + gap * (isSkirted ? 1 : 0)),
  };
}

/** A ball of one ounce of lead is 16.8 mm wide; drawn fuller, as the head is what one looks at. */
const BALL_MM = 16.8 * 1.6;
/** From a 1 to a 1/0, and from each size to the next, jig hooks grow by about an eighth (common practice, from memory). */
const HOOK_MM = 32;
const HOOK_GROWTH = 1.115;
const SHANK = 0.86;
const GAP = 0.38;
/** Between 0, true to scale, and 1, all alike. */
const SOFTNESS = 0.6;
const SCALE = 104;
const MOST_WIDE = 750;
const MOST_HIGH = 400;

const headMm = ({ ounces }: HeadLook): number => BALL_MM * Math.cbrt(ounces);
const hookMm = ({ hookSize }: HeadLook): number => HOOK_MM * HOOK_GROWTH ** hookRank(hookSize);

/** The measures at so many pixels to a millimetre. */
function sizeAt(look: HeadLook, scale: number): HeadSize {
  const outline = HEAD_OUTLINES[look.shape];
  const unit = (headMm(look) * scale) / 100;
  const hook = hookMm(look) * scale;
  const wire = Math.max(5, 0.028 * hook);
  const turn: Point = [outline.turn * unit, outline.axis * unit];
  const leg = outline.leg * unit + wire * 2;
  const angle = (look.eyeDegrees * Math.PI) / 180;
  return {
    outline,
    unit,
    turn,
    eye: [turn[0] - leg * Math.cos(angle), turn[1] - leg * Math.sin(angle)],
    tail: outline.tail * unit,
    bend: Math.max(turn[0] + hook * SHANK, (outline.tail + ROOM_BEHIND) * unit),
    gap: hook * GAP,
    axis: turn[1],
    wire,
  };
}

/** Units of bare shank that are always left behind a head, however small its hook. */
const ROOM_BEHIND = 80;
