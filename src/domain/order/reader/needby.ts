import { isNamed } from './facts.ts';
import type { Day } from '../../craft/time.ts';
import type { Item } from './span.ts';

/** The day by which the heads are wanted, or the words of one that is no one day; undefined when no day is. */
export type Wanted = Readonly<{ day: Day | null; from: number; to: number }>;

/** The last day said that a word beside it makes the day of the heads: trips, calls and past orders have days too. */
export function neededBy(items: readonly Item[], isAsked: boolean): Wanted | undefined {
  const at = items.findLastIndex((item, place) => item.is === 'day' && (isAsked || isWanted(items, place)));
  const item = items[at];
  if (item?.is !== 'day') return undefined;
  const first = items[at - 2];
  const isOpen = first?.is === 'day' && isNamed(items[at - 1], 'or');
  return isOpen ? { day: null, from: first.from, to: item.to } : { day: item.day, from: item.from, to: item.to };
}

function isWanted(items: readonly Item[], at: number): boolean {
  return before(items, at) ?? after(items, at) ?? (!isAskedAbout(items, at) && isBare(items, at));
}

/** The nearest word before it in its sentence that says what kind of day it is. */
function before(items: readonly Item[], at: number): boolean | undefined {
  if (isNamed(items[at - 1], 'for')) return true;
  // Since May.
  if (isNamed(items[at - 1], 'because')) return false;
  for (let place = at - 1; place >= 0 && !isEnd(items[place]); place -= 1) {
    const item = items[place];
    if (item?.is === 'day') return undefined;
    if (isNamed(item, 'due', 'want')) return !isNamed(items[place - 1], 'veto') && !isToldOf(items, place);
    if (isNamed(item, 'veto', 'past', 'notPlace')) return false;
  }
  return undefined;
}

/** I was out of jigs before August: a day of what is only told of, in the same breath. */
function isToldOf(items: readonly Item[], due: number): boolean {
  for (let place = due - 1; place >= 0 && !isPause(items[place]); place -= 1) {
    if (isNamed(items[place], 'want', 'due', 'may', 'make')) return false;
    if (isNamed(items[place], 'past', 'keep')) return true;
  }
  return false;
}

function after(items: readonly Item[], at: number): boolean | undefined {
  for (let place = at + 1; place < items.length && !isEnd(items[place]); place += 1) {
    const item = items[place];
    if (item?.is === 'day') return undefined;
    if (isNamed(item, 'fits')) return true;
    if (isNamed(item, 'veto', 'past')) return false;
  }
  return undefined;
}

/** Are you open saturday? */
const isAskedAbout = (items: readonly Item[], at: number): boolean =>
  stretch(items, at, isEnd).some((item) => isNamed(item, 'ask', 'stocked'));

/** A day that is nearly all its sentence says, or all that stands between two commas. */
const isBare = (items: readonly Item[], at: number): boolean =>
  strange(stretch(items, at, isEnd)) <= (isDay(items[at]) ? 1 : 0) || strange(stretch(items, at, isPause)) === 0;

/** What stands around a place, from one end to the next. */
function stretch(items: readonly Item[], at: number, ends: (item: Item | undefined) => boolean): readonly Item[] {
  const start = items.slice(0, at).findLastIndex(ends) + 1;
  const end = items.findIndex((item, place) => place > at && ends(item));
  return items.slice(start, end === -1 ? items.length : end);
}

/** How much of a stretch is of something else. */
const strange = (stretch: readonly Item[]): number =>
  stretch.filter(({ is }) => is === 'word' || is === 'noise' || is === 'place').length;

const isDay = (item: Item | undefined): boolean => item?.is === 'day' && item.day !== null;

const isEnd = (item: Item | undefined): boolean =>
  isNamed(item, 'but', 'because') ||
  (item?.is === 'mark' && (item.mark === 'stop' || item.mark === 'question' || item.mark === 'line'));

const isPause = (item: Item | undefined): boolean => isEnd(item) || (item?.is === 'mark' && item.mark === 'comma');
