import type { WeekPicture } from '../../app/letter.ts';
import { INK } from './headColours.ts';
import { pngOf } from './png.ts';
import { rounded } from './strokes.ts';
import { weekAxis, type WeekAxis } from './weekAxis.ts';
import { dayDrawing, hoursDrawing, lanesOf, type Column } from './weekDay.ts';
import { legendDrawing, orderRows } from './weekFoot.ts';
import { patternDefinitions } from './weekPatterns.ts';
import { sizeFor, written } from './weekText.ts';

/** A week of work as an SVG 1080 pixels wide: the days side by side, the hours downwards, what ships and is promised below. */
export function weekSvg(week: WeekPicture): string {
  const columns = columnsOf(week.days);
  const axis = weekAxis(week.days, GRID_TOP);
  const rows = orderRows(week, columns, axis.bottom + 14);
  const legend = legendDrawing(week, axis.bottom + 14 + rows.height, WIDTH);
  const height = Math.ceil(axis.bottom + 14 + rows.height + legend.height + 16);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}">`,
    `<defs>${patternDefinitions()}</defs><rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    written(week.title, {
      x: 20,
      y: 52,
      size: sizeFor(week.title, WIDTH - 40, 24, 40),
      most: WIDTH - 30,
      anchor: 'start',
    }),
    ...week.days.map((day, place) => headDrawing(day, columnAt(columns, place), place === 0)),
    gridDrawing(week, columns, axis),
    rows.svg,
    legend.svg,
    '</svg>',
  ].join('');
}

/** The same picture as a PNG. */
export const weekPng = (week: WeekPicture): Uint8Array => pngOf(weekSvg(week));

const WIDTH = 1080;
const LEFT = 84;
const GRID_TOP = 172;
const GAP = 4;
/** A day without hours or work is so much narrower than another. */
const NARROW = 0.55;

function columnsOf(days: WeekPicture['days']): readonly Column[] {
  const shares = days.map(({ off, work, cures, ships, promised }) =>
    off !== null && work.length + ships.length + promised.length === 0 && cures.length < 2 ? NARROW : 1,
  );
  const unit =
    (WIDTH - LEFT - 10) /
    Math.max(
      1,
      shares.reduce((sum, share) => sum + share, 0),
    );
  return shares.map((share, place) => ({
    left: LEFT + unit * shares.slice(0, place).reduce((sum, one) => sum + one, 0),
    width: unit * share - GAP,
  }));
}

const columnAt = (columns: readonly Column[], place: number): Column => columns[place] ?? { left: LEFT, width: 0 };

/** The weekday over its date; today white on dark. */
function headDrawing(day: WeekPicture['days'][number], { left, width }: Column, isToday: boolean): string {
  const x = left + width / 2;
  const colour = isToday ? '#ffffff' : INK;
  const most = width - 4;
  const plate = isToday
    ? `<rect x="${rounded(left)}" y="76" width="${rounded(width)}" height="90" rx="10" fill="${INK}"/>`
    : '';
  return [
    plate,
    written(day.weekday, { x, y: 114, size: sizeFor(day.weekday, most - 6, 20, 36), most, colour }),
    written(day.date, { x, y: 155, size: 38, most, colour }),
  ].join('');
}

/** Hours across all days, the days themselves, and the line that says when it is. */
function gridDrawing({ days, hours, now }: WeekPicture, columns: readonly Column[], axis: WeekAxis): string {
  const lanes = lanesOf(days);
  const first = columnAt(columns, 0);
  return [
    ...days.map((day, place) => hoursDrawing(day, columnAt(columns, place), axis)),
    hourLines(hours, axis.yOf(now.at), axis),
    ...days.map((day, place) => dayDrawing(day, columnAt(columns, place), axis, lanes)),
    nowDrawing(now.label, axis.yOf(now.at), first.left + first.width),
  ].join('');
}

const NOW = '#b3141d';

function nowDrawing(label: string, y: number, right: number): string {
  const wide = LEFT - 6;
  return [
    `<path d="M${wide} ${rounded(y)}H${rounded(right)}" stroke="${NOW}" stroke-width="6"/>`,
    `<rect x="2" y="${rounded(y - 18)}" width="${wide}" height="36" rx="8" fill="${NOW}"/>`,
    written(label, {
      x: 2 + wide / 2,
      y: y + 9,
      size: sizeFor(label, wide - 8, 18, 27),
      most: wide,
      colour: '#ffffff',
    }),
  ].join('');
}

/** Each hour that is not pressed, beside the grid and as a thin line across it; labels keep clear of each other and of now. */
function hourLines(labels: readonly string[], now: number, { isOpen, yOf }: WeekAxis): string {
  const shown = labels.map((label, hour) => ({ label, minute: hour * 60 })).filter(({ minute }) => isOpen(minute));
  const size = Math.min(...shown.map(({ label }) => sizeFor(label, LEFT - 12, 18, 27, 'plain')));
  const told: number[] = [now];
  return shown
    .map(({ label, minute }) => {
      const y = yOf(minute);
      const line = `<path d="M${LEFT} ${rounded(y)}H${WIDTH - 10}" stroke="${INK}" stroke-width="1.2" stroke-opacity="0.28"/>`;
      if (told.some((other) => Math.abs(other - y) < CLEAR)) return line;
      told.push(y);
      const at = { x: LEFT - 8, y: y + 9, size, most: LEFT - 8, anchor: 'end', face: 'plain' } as const;
      return line + written(label, at);
    })
    .join('');
}

/** Pixels from one label to the next. */
const CLEAR = 32;
