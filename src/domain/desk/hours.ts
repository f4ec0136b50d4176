import { instantOf, localClock, weekdayOf, type Clock, type Day, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { hoursOf } from './planning.ts';
import type { Desk } from './state.ts';

/** A stretch of bench hours. */
export type Stretch = Readonly<{ from: Instant; to: Instant }>;

/** The bench hours of a local day, extra ones in it and days off out of it, in order of time. */
export function spansOn(shop: Shop, desk: Desk, day: Day): readonly Stretch[] {
  const { weekly, daysOff, extra } = hoursOf(shop, desk);
  const usual = daysOff.includes(day) ? [] : (weekly[weekdayOf(day)] ?? []);
  const more = extra.filter(({ date }) => date === day).map(({ from, to }) => [from, to] as const);
  return [...usual, ...more]
    .map(([from, to]) => ({ from: instantOf(day, from, shop.zone), to: instantOf(day, to, shop.zone) }))
    .sort((a, b) => a.from - b.from)
    .reduce<readonly Stretch[]>(joined, []);
}

/** A stretch of bench hours on the shop's wall clock. */
export type Span = Readonly<{ from: Clock; to: Clock }>;

/** The bench hours of a local day as the wall clock shows them. */
export const clocksOn = (shop: Shop, desk: Desk, day: Day): readonly Span[] =>
  spansOn(shop, desk, day).map(({ from, to }) => ({
    from: localClock(from, shop.zone),
    to: localClock(to, shop.zone),
  }));

/** What is left of spans without the time away.
 *  @example spansWithout([{ from: '18:30', to: '21:30' }], { from: '20:00', to: '24:00' }) //=> [{ from: '18:30', to: '20:00' }] */
export const spansWithout = (spans: readonly Span[], away: Span): readonly Span[] =>
  spans
    .flatMap(({ from, to }) => [
      { from, to: to < away.from ? to : away.from },
      { from: from > away.to ? from : away.to, to },
    ])
    .filter(({ from, to }) => from < to);

/** Stretches that touch or overlap are one. */
function joined(before: readonly Stretch[], next: Stretch): readonly Stretch[] {
  const last = before.at(-1);
  if (last === undefined || next.from > last.to) return [...before, next];
  return [...before.slice(0, -1), { from: last.from, to: Math.max(last.to, next.to) }];
}

/** When the bench closes on a local day; undefined on a day without hours. */
export const closingOn = (shop: Shop, desk: Desk, day: Day): Instant | undefined =>
  spansOn(shop, desk, day).reduce<Instant | undefined>((last, { to }) => Math.max(last ?? to, to), undefined);
