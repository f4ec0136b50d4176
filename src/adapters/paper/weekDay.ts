import type { WeekPicture } from '../../app/letter.ts';
import { INK } from './headColours.ts';
import { along, at, rounded } from './strokes.ts';
import type { Stretch, WeekAxis } from './weekAxis.ts';
import { fillOf, tintOf } from './weekPatterns.ts';
import { sizeFor, written } from './weekText.ts';

type Day = WeekPicture['days'][number];
type Work = Day['work'][number];
/** Where a day's column stands. */
export type Column = Readonly<{ left: number; width: number }>;

export const CURE = '#4b2e83';

/** How many cures run side by side at most on any day of the week. */
export const lanesOf = (days: readonly Day[]): number => Math.max(0, ...days.map(({ cures }) => inLanes(cures).length));

/** What is worked on and what cures on one day. */
export function dayDrawing(day: Day, column: Column, axis: WeekAxis, lanes: number): string {
  const room = { left: column.left + 3, width: column.width - 6 - lanes * LANE };
  return [
    ...day.work.map((one) => blockDrawing(one, placeOf(one, day.work, room), axis)),
    ...inLanes(day.cures).flatMap((lane, place) =>
      lane.map((cure) => cureDrawing(cure, column.left + column.width - (place + 0.5) * LANE - 1, axis)),
    ),
  ].join('');
}

const LANE = 10;
const MOST_LANES = 3;
/** The share of a column that a rack in the oven takes while hands do something else. */
const OVEN_SHARE = 0.29;

/** What lies behind a day: white where the bench has hours, closed elsewhere, with a word where it has none. */
export function hoursDrawing({ hours, off }: Day, { left, width }: Column, { top, bottom, yOf }: WeekAxis): string {
  const box = (y: number, height: number, fill: string): string =>
    `<rect x="${rounded(left)}" y="${rounded(y)}" width="${rounded(width)}" height="${rounded(height)}" fill="${fill}"/>`;
  const middle = (top + bottom) / 2;
  const word =
    off === null
      ? ''
      : written(off, {
          x: left + width / 2,
          y: middle,
          size: sizeFor(off, width - 12, 20, 32),
          most: width - 8,
          colour: '#5d6870',
          rim: '#e6eaed',
        });
  return [
    box(top, bottom - top, 'url(#closed)'),
    ...hours.map(({ from, to }) => box(yOf(from), yOf(to) - yOf(from), '#ffffff')),
    `<rect x="${rounded(left)}" y="${rounded(top)}" width="${rounded(width)}" height="${rounded(bottom - top)}" fill="none" stroke="#b9c2c8" stroke-width="2"/>`,
    word,
  ].join('');
}

/** A block has its column to itself, or shares it: hands to the left, the oven to the right. */
function placeOf(one: Work, all: readonly Work[], room: Column): Column {
  const beside = all.some((other) => isOven(other) !== isOven(one) && overlap(one, other));
  if (!beside) return room;
  const oven = room.width * OVEN_SHARE;
  return isOven(one)
    ? { left: room.left + room.width - oven, width: oven }
    : { left: room.left, width: room.width - oven - 2 };
}

const isOven = ({ step }: Work): boolean => step === 'bake';
const overlap = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

function blockDrawing({ step, from, to, label }: Work, { left, width }: Column, { yOf }: WeekAxis): string {
  const y = yOf(from);
  const height = Math.max(5, yOf(to) - y);
  const block = `<rect x="${rounded(left)}" y="${rounded(y + 0.75)}" width="${rounded(width)}" height="${rounded(height - 1.5)}" rx="${Math.min(6, height / 3)}" fill="${fillOf(step)}" stroke="${INK}" stroke-width="1.8"/>`;
  const turned = width < 60 && height > width;
  const [wide, high] = turned ? [height, width] : [width, height];
  const words = labelDrawing(label, wide, high, tintOf(step));
  const [x, middle] = [left + width / 2, y + height / 2];
  return `${block}<g transform="translate(${at([x, middle])})${turned ? ' rotate(-90)' : ''}">${words}</g>`;
}

/** As many labels as have room under each other, around the middle; none where not even one does. */
function labelDrawing(label: readonly string[], width: number, height: number, rim: string): string {
  const biggest = Math.min(BIGGEST, height - 3);
  if (biggest < LEAST) return '';
  const rows = Math.max(1, Math.min(label.length, Math.floor((height - 4) / (LEAST + 6))));
  const sizes = label
    .slice(0, rows)
    .map((text) => sizeFor(text, width - 8, LEAST, Math.min(BIGGEST, height / rows - 3)));
  const high = sizes.reduce((sum, size) => sum + size + 4, -4);
  return sizes
    .map((size, row) => {
      const above = sizes.slice(0, row).reduce((sum, one) => sum + one + 4, 0);
      return written(label[row] ?? '', { x: 0, y: above + size * 0.86 - high / 2, size, most: width - 4, rim });
    })
    .join('');
}

const BIGGEST = 31;
const LEAST = 18;

/** A line down the day: a dot where it begins, a bar where it is over; it leaves the day open where it goes on. */
function cureDrawing({ from, to, begins, ends }: Day['cures'][number], x: number, { yOf }: WeekAxis): string {
  const [top, bottom] = [yOf(from), yOf(to)];
  return [
    along(`M${at([x, top])}V${rounded(bottom)}`, CURE, 4),
    begins ? `<circle cx="${rounded(x)}" cy="${rounded(top)}" r="5.5" fill="${CURE}"/>` : '',
    ends ? along(`M${at([x - 5, bottom])}h10`, CURE, 5) : '',
  ].join('');
}

/** Cures side by side where they run at one time; what is more than there is room for shares the last lane. */
function inLanes<One extends Stretch>(cures: readonly One[]): readonly (readonly One[])[] {
  return cures.reduce<One[][]>((lanes, cure) => {
    const free = lanes.findIndex((lane) => lane.every((other) => !overlap(cure, other)));
    if (free < 0 && lanes.length < MOST_LANES) return [...lanes, [cure]];
    const into = free < 0 ? lanes.length - 1 : free;
    return lanes.map((lane, place) => (place === into ? [...lane, cure] : lane));
  }, []);
}
