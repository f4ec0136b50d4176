import type { Shape } from '../../domain/shop/words.ts';

export type Point = readonly [x: number, y: number];

/** A head seen from its side, nose to the left, y downwards; a hundred units are as long as the ball of the same weight is wide. */
export type HeadOutline = Readonly<{
  /** How far it reaches forward, and up and down. */
  nose: number;
  half: number;
  /** The edge, as SVG path data. */
  edge: string;
  /** What is seen on its face, as SVG path data: ridges, a socket, the seam. */
  lines: string;
  /** Where the light falls. */
  shine: string;
  /** How high the shank goes through the head. */
  axis: number;
  /** How far forward the wire turns up to the eye. */
  turn: number;
  /** How long the leg is from there to the eye. */
  leg: number;
  /** Where the shank leaves the head. */
  tail: number;
  /** The middle of the guard's hole. */
  hole: Point;
}>;

/** Our own drawings of what each shape is known by. */
export const HEAD_OUTLINES: Readonly<Record<Shape, HeadOutline>> = {
  round: {
    nose: -50,
    half: 50,
    edge: 'M-50 0A50 50 0 1 1 50 0A50 50 0 1 1-50 0Z',
    lines: 'M-50 0C-30 12 30 12 50 0',
    shine: 'M-35-14C-30-30-16-39 0-40C-8-32-20-24-35-14Z',
    axis: -4,
    turn: -4,
    leg: 66,
    tail: 46,
    hole: [26, -40],
  },
  football: {
    nose: -68,
    half: 67,
    edge: 'M52-60C58-26 40 8 16 34C-8 58-34 68-62 66C-70 34-56-2-30-28C-4-54 24-64 52-60Z',
    lines: 'M20-58C38-50 48-38 52-20M-66 36C-54 44-40 56-32 66',
    shine: 'M-54 14C-46-6-30-24-12-38C-8-30-34-4-54 14Z',
    axis: -6,
    turn: -10,
    leg: 70,
    tail: 36,
    hole: [30, -50],
  },
  minnow: {
    nose: -96,
    half: 46,
    edge: 'M-96 6C-78-22-40-46 4-44C30-43 50-32 58-18L58 18C46 34 22 44-8 42C-48 40-78 28-96 6Z',
    lines: 'M-4-36C10-16 10 16-6 36M-60-4A11 11 0 1 1-38-4A11 11 0 1 1-60-4ZM-53-4A4 4 0 1 1-45-4A4 4 0 1 1-53-4Z',
    shine: 'M-60-22C-40-34-18-38 2-38C-14-28-38-22-60-22Z',
    axis: -4,
    turn: -50,
    leg: 74,
    tail: 54,
    hole: [26, -40],
  },
  mushroom: {
    nose: -56,
    half: 62,
    edge: 'M38-62C46-62 46-54 44-46L44-15L64-13L64 13L44 15L44 46C46 54 46 62 38 62C-22 62-56 34-56 0C-56-34-22-62 38-62Z',
    lines: 'M30-61C22-24 22 24 30 61M44-15L44 15',
    shine: 'M-40-16C-32-36-12-48 14-52C-4-42-24-30-40-16Z',
    axis: 0,
    turn: -14,
    leg: 82,
    tail: 58,
    hole: [24, -54],
  },
  wedge: {
    nose: -84,
    half: 58,
    edge: 'M-82 16C-84 2-74-8-58-16L16-52C36-60 56-54 57-32L57 28C57 44 44 52 28 50L-50 38C-68 35-80 28-82 16Z',
    lines: 'M-70 8C-30-8 20-20 57-22M-66 24C-20 22 20 24 57 30',
    shine: 'M-52-10L14-44C24-48 30-44 28-40C6-28-22-14-52-10Z',
    axis: -6,
    turn: -26,
    leg: 80,
    tail: 52,
    hole: [34, -46],
  },
};
