import { addDays, calendarDay, type Day } from '../craft/time.ts';
import { quarterDays, type Quarter } from '../quote/excise.ts';
import type { Period } from './books.ts';

/** Periods as they are written. Each is undefined for one that the calendar does not have; it is never taken for another. */

/** @example monthIn('2026-11') //=> '2026-11' */
export const monthIn = (text: string): string | undefined => (MONTH.test(text) ? text : undefined);

/** @example quarterIn('2026-q4') //=> '2026-Q4' */
export const quarterIn = (text: string): Quarter | undefined =>
  /^\d{4}-q[1-4]$/i.test(text) ? text.toUpperCase() : undefined;

/** A year, a quarter, a month, a day, or two days.
 *  @example periodIn('2026-11') //=> { from: '2026-11-01', to: '2026-11-30' } */
export function periodIn(text: string): Period | undefined {
  const [from = '', to = from, ...more] = text.split(/\s+(?:to\s+|-\s+|a\s+)?/i);
  if (more.length > 0) return undefined;
  if (to !== from) return isDay(from) && isDay(to) && from <= to ? { from, to } : undefined;
  return isDay(from) ? { from, to } : spanIn(from);
}

const isDay = (text: string): boolean => calendarDay(text) !== undefined;

function spanIn(text: string): Period | undefined {
  const quarter = quarterIn(text);
  if (quarter !== undefined) return quarterDays(quarter);
  if (/^(?:19|20)\d\d$/.test(text)) return { from: `${text}-01-01`, to: `${text}-12-31` };
  return monthIn(text) === undefined ? undefined : monthDays(text);
}

const MONTH = /^\d{4}-(?:0[1-9]|1[0-2])$/;

export function monthDays(month: string): Period {
  const next: Day = addDays(`${month}-28`, 4).slice(0, 7);
  return { from: `${month}-01`, to: addDays(`${next}-01`, -1) };
}
