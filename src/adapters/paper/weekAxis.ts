import type { WeekPicture } from '../../app/letter.ts';

/** A stretch of a day on the wall clock, in minutes from midnight. */
export type Stretch = Readonly<{ from: number; to: number }>;

/** The hours of a day from top to bottom: those with work high, idle hours of the bench lower, all others pressed together. */
export type WeekAxis = Readonly<{
  top: number;
  bottom: number;
  /** Whether a minute lies in, or at the edge of, hours that are not pressed. */
  isOpen: (minute: number) => boolean;
  /** The pixel of a minute of the day. */
  yOf: (minute: number) => number;
}>;

/** An axis that begins at a pixel and gives room to every hour at which somebody works on one of the days. */
export function weekAxis(days: WeekPicture['days'], top: number): WeekAxis {
  const runs = runsOf(cellsOf(days));
  const shares = runs.reduce((sum, { from, to, use }) => sum + (to - from) * SHARES[use], 0);
  const scale = Math.min(MOST_HIGH, Math.max(LEAST_HIGH, shares * EASY)) / Math.max(1, shares);
  const pieces = piecesOf(runs, top, scale);
  const pieceAt = (minute: number): Piece | undefined => pieces.find(({ to }) => minute <= to) ?? pieces.at(-1);
  const yOf = (minute: number): number => {
    const piece = pieceAt(minute);
    return piece === undefined ? top : piece.y + (minute - piece.from) * piece.scale;
  };
  const isOpen = (minute: number): boolean =>
    runs.some(({ from, to, use }) => use !== 'closed' && from <= minute && minute <= to);
  return { top, bottom: yOf(DAY), isOpen, yOf };
}

type Use = 'work' | 'idle' | 'closed';
type Run = Stretch & Readonly<{ use: Use }>;
type Piece = Stretch & Readonly<{ y: number; scale: number }>;

const DAY = 1440;
const LEAST_HIGH = 760;
const MOST_HIGH = 960;
/** Pixels to a minute that suit a few hours of work. */
const EASY = 3.2;
/** How high a closed stretch is, however long. */
const PRESSED = 42;
/** How high a minute is beside a minute with work. */
const SHARES: Readonly<Record<Use, number>> = { work: 1, idle: 0.4, closed: 0 };
const CELL = 30;
/** A week in which nobody works is still a week. */
const USUAL: Stretch = { from: 8 * 60, to: 20 * 60 };

/** What each half hour is used for, on any of the days; a pause of one of them is not worth pressing. */
function cellsOf(days: WeekPicture['days']): readonly Use[] {
  const work = days.flatMap((day) => day.work);
  const hours = days.flatMap((day) => day.hours);
  const idle = work.length + hours.length === 0 ? [USUAL] : hours;
  const cells = Array.from({ length: DAY / CELL }, (_, place): Use => {
    const cell = { from: place * CELL, to: (place + 1) * CELL };
    if (work.some((one) => overlaps(one, cell))) return 'work';
    return idle.some((one) => overlaps(one, cell)) ? 'idle' : 'closed';
  });
  const isOpen = (place: number): boolean => (cells[place] ?? 'closed') !== 'closed';
  return cells.map((use, place) => (use === 'closed' && isOpen(place - 1) && isOpen(place + 1) ? 'idle' : use));
}

const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to;

const runsOf = (cells: readonly Use[]): readonly Run[] =>
  cells.reduce<Run[]>((runs, use, place) => {
    const last = runs.at(-1);
    const to = (place + 1) * CELL;
    return last?.use === use ? [...runs.slice(0, -1), { ...last, to }] : [...runs, { from: place * CELL, to, use }];
  }, []);

function piecesOf(runs: readonly Run[], top: number, scale: number): readonly Piece[] {
  let y = top;
  return runs.map(({ from, to, use }) => {
    const piece = { from, to, y, scale: use === 'closed' ? PRESSED / (to - from) : scale * SHARES[use] };
    y += (to - from) * piece.scale;
    return piece;
  });
}
