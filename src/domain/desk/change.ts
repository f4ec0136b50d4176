import type { Day } from '../craft/time.ts';

/** Something the maker wants otherwise: hours of a day, the order of orders, or what becomes of a lot. */
export type Change =
  | Readonly<{ do: 'off' | 'on'; day: Day }>
  | Readonly<{ do: 'extra' | 'hours'; day: Day; from: string; to: string }>
  /** Away for a part of a day: from `00:00` for its beginning, to `24:00` for its end. */
  | Readonly<{ do: 'away'; day: Day; from: string; to: string }>
  | Readonly<{ do: 'first' | 'hold' | 'release'; order: string }>
  | Readonly<{ do: 'remake' | 'shelve' | 'join'; lot: string }>
  /** So many heads off a lot that has `of`, so that a second press of the button finds nothing left to do. */
  | Readonly<{ do: 'split'; lot: string; heads: number; of: number }>;

/** What has to be named with a change. */
export type About = 'day' | 'hours' | 'order' | 'lot' | 'split';

/** What a change would do to an order: the day it heads for before and after; null where there is none, as on hold. */
export type Effect = Readonly<{ order: string; promised: Day; before: Day | null; after: Day | null }>;

/** A change as a button carries it. @example writeChange({ do: 'off', day: '2026-12-05' }) //=> 'off 2026-12-05' */
export const writeChange = (change: Change): string => Object.values(change).join(' ');

/** The change that a button carries; undefined for anything else. */
export function parseChange(said: string): Change | undefined {
  const [what = '', about = '', ...more] = said.split(' ');
  const change = READ[what]?.(about, more);
  return change !== undefined && writeChange(change) === said ? change : undefined;
}

const READ: Readonly<Record<string, (about: string, more: readonly string[]) => Change | undefined>> = {
  off: (day) => (DAY.test(day) ? { do: 'off', day } : undefined),
  on: (day) => (DAY.test(day) ? { do: 'on', day } : undefined),
  extra: (day, [from, to]) => between('extra', day, from, to),
  hours: (day, [from, to]) => between('hours', day, from, to),
  away: (day, [from, to]) => between('away', day, from, to, DAY_END),
  first: (order) => ({ do: 'first', order }),
  hold: (order) => ({ do: 'hold', order }),
  release: (order) => ({ do: 'release', order }),
  remake: (lot) => ({ do: 'remake', lot }),
  shelve: (lot) => ({ do: 'shelve', lot }),
  join: (lot) => ({ do: 'join', lot }),
  split: (lot, [heads, of]) => ({ do: 'split', lot, heads: Number(heads), of: Number(of) }),
};

const between = (what: 'extra' | 'hours' | 'away', day: Day, from = '', to = '', last = '23:59'): Change | undefined =>
  DAY.test(day) && CLOCK.test(from) && (CLOCK.test(to) || to === last) && from < to
    ? { do: what, day, from, to }
    : undefined;

/** The clocks at which a day begins and ends. */
export const DAY_BEGIN = '00:00';
export const DAY_END = '24:00';

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;
