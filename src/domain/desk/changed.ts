import { localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import type { Change, Effect } from './change.ts';
import { clocksOn, spansOn, spansWithout, type Span } from './hours.ts';
import { inTurn, isSo } from './changedTurn.ts';
import { shipDays } from './heading.ts';
import { lotChanged } from './lotChanges.ts';
import { withoutStrayTimers } from './offBench.ts';
import { withPlan } from './planning.ts';
import { withStates } from './progress.ts';
import type { Desk } from './state.ts';

/** The desk with the change made; undefined where there is nothing that it could change. A mis-tap from before it can no longer be taken back. */
export function changed(shop: Shop, desk: Desk, change: Change, now: Instant): Desk | undefined {
  const next = made(shop, desk, change, now);
  return next && withPlan(shop, withStates(withoutStrayTimers(next)), now);
}

/** What the change does to the days of open orders: those it moves, and those it leaves past their promise. */
export function effectsOf(shop: Shop, desk: Desk, after: Desk, now: Instant): readonly Effect[] {
  const [was, will] = [shipDays(shop, desk, now), shipDays(shop, after, now)];
  return Object.values(desk.orders)
    .map(({ id, promise }) => ({
      order: id,
      promised: promise.ships,
      before: was[id] ?? null,
      after: will[id] ?? null,
    }))
    .filter(({ before, after }) => before !== after);
}

function made(shop: Shop, desk: Desk, change: Change, now: Instant): Desk | undefined {
  switch (change.do) {
    case 'off':
    case 'on':
    case 'extra':
    case 'hours':
    case 'away':
      return change.day < localDay(now, shop.zone) ? undefined : otherwise(shop, desk, change);
    case 'first':
    case 'hold':
    case 'release':
      return isSo(desk, change) ? undefined : inTurn(shop, desk, change, now);
    default: {
      const next = lotChanged(shop, desk, change);
      return typeof next === 'string' ? undefined : next;
    }
  }
}

type OfDay = Extract<Change, Readonly<{ day: string }>>;

/** The hours of a day as they are told: none, the usual ones, some more, others instead, or what is left of them. */
function onDay(shop: Shop, desk: Desk, change: OfDay): Desk {
  const { day } = change;
  const more = told(shop, desk, change).map(({ from, to }) => ({ date: day, from, to }));
  if (change.do === 'extra') return { ...desk, extraHours: [...desk.extraHours, ...more] };
  const extraHours = [...desk.extraHours.filter(({ date }) => date !== day), ...more];
  const [daysOn, daysOff] = [desk.daysOn, desk.daysOff].map((days) => days.filter((one) => one !== day)) as [
    string[],
    string[],
  ];
  return change.do === 'on'
    ? { ...desk, extraHours, daysOff, daysOn: [...daysOn, day] }
    : { ...desk, extraHours, daysOn, daysOff: [...daysOff, day] };
}

/** The hours that a change names. */
function told(shop: Shop, desk: Desk, change: OfDay): readonly Span[] {
  if (change.do === 'extra' || change.do === 'hours') return [change];
  return change.do === 'away' ? spansWithout(clocksOn(shop, desk, change.day), change) : [];
}

/** The desk with other hours on a day; undefined when they are what they were. */
function otherwise(shop: Shop, desk: Desk, change: OfDay): Desk | undefined {
  const next = onDay(shop, desk, change);
  const hours = (one: Desk): string => JSON.stringify(spansOn(shop, one, change.day));
  return hours(next) === hours(desk) ? undefined : next;
}
