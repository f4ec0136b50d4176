import type { Instant } from '../craft/time.ts';
import { lessOf } from '../stock/journal.ts';
import { putUnder } from './extras.ts';
import type { Desk, Undo } from './state.ts';
import { withStates } from './progress.ts';

/** The desk after an act at the bench, with what that act changed put by, so that a mis-tap can be taken back once. */
export const remember = (before: Desk, after: Desk, what: string, now: Instant): Desk => ({
  ...after,
  undo: {
    what,
    at: now,
    lots: changed(before.lots, after.lots),
    sessions: changed(before.sessions, after.sessions),
    timers: changed(before.timers, after.timers),
    onHand: before.onHand,
    counts: Object.fromEntries(Object.entries(after.onHand).filter(([item, count]) => before.onHand[item] !== count)),
    shelved: lessOf(after.shelf, before.shelf),
    learned: before.learned,
    worked: before.worked,
    overtaken: false,
  },
});

/** The desk after a maker's act; one on money, stock or hours is noted beside the work that could be taken back. */
export function overtaken(before: Desk, after: Desk): Desk {
  const { undo } = after;
  const isOther = OTHER.some((part) => !isSame(before[part], after[part])) || paid(before, after);
  return undo === null || undo !== before.undo || undo.overtaken || !isOther
    ? after
    : { ...after, undo: { ...undo, overtaken: true } };
}
const OTHER = [
  'held',
  'first',
  'daysOff',
  'daysOn',
  'extraHours',
  'ordered',
  'settling',
  'garageCelsius',
  'onHand',
] as const;

/** Some acts write a list anew as it was. */
const isSame = (one: unknown, other: unknown): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);

const paid = (before: Desk, after: Desk): boolean =>
  before.orders !== after.orders &&
  Object.values(after.orders).some(({ id, ledger }) => ledger !== (before.orders[id]?.ledger ?? ledger));

/** The desk as it was before the act remembered; undefined when there is none, or later work stands on it. */
export function takenBack(desk: Desk): Desk | undefined {
  const { undo } = desk;
  const onHand = undo && countsBefore(desk, undo);
  const shelf = undo && shelfBefore(desk, undo);
  if (undo === null || !onHand || !shelf || !lotsStillThere(desk, undo)) return undefined;
  return withStates({
    ...desk,
    undo: null,
    lots: restored(desk.lots, undo.lots),
    sessions: restored(desk.sessions, undo.sessions),
    timers: restored(desk.timers, undo.timers),
    onHand,
    shelf,
    learned: undo.learned ?? desk.learned,
    worked: undo.worked ?? desk.worked,
  });
}

/** An order that left the bench since takes its lots with it; then there is nothing to restore them to. */
const lotsStillThere = (desk: Desk, undo: Undo): boolean =>
  Object.values(undo.lots).every((lot) => lot === null || desk.orders[lot.order] !== undefined);

/** Counts as if the act had used nothing; what came or went since stays. Undefined where an item's count before is not known and it has moved since. */
function countsBefore({ onHand }: Desk, undo: Undo): Record<string, number> | undefined {
  const items = Object.entries(undo.counts);
  if (items.some(([item, count]) => undo.onHand[item] === undefined && onHand[item] !== count)) return undefined;
  const others = Object.entries(onHand).filter(([item]) => undo.counts[item] === undefined);
  const back = items.flatMap(([item, count]) => {
    const was = undo.onHand[item];
    return was === undefined ? [] : [[item, was + (onHand[item] ?? count) - count] as const];
  });
  return Object.fromEntries([...others, ...back]);
}

/** The shelf without what the act put on it; undefined where an order has taken some of that since. */
function shelfBefore({ shelf }: Desk, { shelved }: Undo): Desk['shelf'] | undefined {
  const put = Object.entries(shelved);
  if (put.some(([head, count]) => (shelf[head] ?? 0) < count)) return undefined;
  return put.reduce((left, [head, count]) => putUnder(left, head, -count), shelf);
}

function changed<T>(before: Readonly<Record<string, T>>, after: Readonly<Record<string, T>>): Record<string, T | null> {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return Object.fromEntries(
    [...keys].filter((key) => before[key] !== after[key]).map((key) => [key, before[key] ?? null]),
  );
}

function restored<T>(now: Readonly<Record<string, T>>, old: Readonly<Record<string, T | null>>): Record<string, T> {
  const all = { ...now, ...old };
  return Object.fromEntries(
    Object.entries(all).flatMap(([key, value]) => (value === null ? [] : [[key, value] as const])),
  );
}
