import { hasBegun, isFinished, newLot, type Lot } from '../bench/lot.ts';
import { localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { addAmounts, needsOf } from '../stock/needs.ts';
import type { Change, Effect } from './change.ts';
import { putBy } from './extras.ts';
import { clocksOn, spansOn, spansWithout, type Span } from './hours.ts';
import { withoutStrayTimers } from './offBench.ts';
import { shipDays, withPlan } from './planning.ts';
import { withStates } from './progress.ts';
import type { Desk } from './state.ts';
import { freshLotId } from './topUp.ts';

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
    default:
      return ofLot(shop, desk, change);
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

type InTurn = Extract<Change, Readonly<{ order: string }>>;

/** Whether there is nothing to change: no such order, or it is so already. */
function isSo({ orders, held, first }: Desk, { do: what, order }: InTurn): boolean {
  if (orders[order] === undefined) return true;
  if (what === 'release') return !held.includes(order) && !first.includes(order);
  return what === 'hold' ? held.includes(order) : first.at(-1) === order;
}

function inTurn(shop: Shop, desk: Desk, { do: what, order }: InTurn, now: Instant): Desk {
  const others = { held: desk.held.filter((one) => one !== order), first: desk.first.filter((one) => one !== order) };
  if (what === 'hold') return { ...desk, ...others, held: [...others.held, order] };
  if (what === 'release') return { ...desk, ...others };
  const free = { ...desk, ...others, first: [...others.first, order], lots: begunAtOnce(desk.lots, order) };
  return putFirst(withPlan(shop, free, now), order);
}

const begunAtOnce = (lots: Desk['lots'], order: string): Desk['lots'] =>
  Object.fromEntries(Object.entries(lots).map(([id, lot]) => [id, lot.order === order ? { ...lot, from: null } : lot]));

/** The order of work with one order's places before all others. */
function putFirst(desk: Desk, order: string): Desk {
  if (desk.planOrder === null) return desk;
  const keys = desk.planOrder.places.map(({ key }) => key);
  const ahead = Math.max(0, ...keys) - Math.min(0, ...keys) + 1;
  const places = desk.planOrder.places.map((place) =>
    desk.lots[place.lot]?.order === order ? { ...place, key: place.key - ahead } : place,
  );
  return { ...desk, planOrder: { ...desk.planOrder, places } };
}

type OfLot = Extract<Change, Readonly<{ lot: string }>>;

function ofLot(shop: Shop, desk: Desk, change: OfLot): Desk | undefined {
  const lot = desk.lots[change.lot];
  if (lot === undefined || lot.steps.some(({ state }) => state === 'running')) return undefined;
  const next = OF_LOT[change.do](shop, desk, lot, change);
  return next && { ...next, undo: null };
}

type MadeOf = (shop: Shop, desk: Desk, lot: Lot, change: OfLot) => Desk | undefined;

/** What can become of a lot as it stands, each shown before it is made; of the ways to split it the one in half. */
export const changesOf = (shop: Shop, desk: Desk, { id, heads }: Lot): readonly OfLot[] =>
  (
    [
      { do: 'split', lot: id, heads: Math.floor(heads / 2), of: heads },
      { do: 'join', lot: id },
      { do: 'shelve', lot: id },
      { do: 'remake', lot: id },
    ] as const
  ).filter((change) => ofLot(shop, desk, change) !== undefined);

const OF_LOT: Readonly<Record<OfLot['do'], MadeOf>> = { remake, shelve, join, split };

/** All heads of the lot are lost; as many begin again. */
function remake(shop: Shop, desk: Desk, lot: Lot): Desk | undefined {
  return lot.good === 0 ? undefined : begunAnew(shop, desk, lot, { scrap: lot.scrap + lot.good, used: lot.used });
}

/** Finished heads go on the shelf; as many begin again for the order. */
function shelve(shop: Shop, desk: Desk, lot: Lot): Desk | undefined {
  const isMade = lot.steps.every(({ step, state }) => step === 'pack' || state === 'done');
  const put = { ...desk, shelf: putBy(desk.shelf, lot.spec, lot.good) };
  return isMade ? begunAnew(shop, put, lot, { scrap: lot.scrap, used: lot.used }) : undefined;
}

/** The heir of a lot that is gone tells what that one used and scrapped, so that no material is forgotten. */
function begunAnew(shop: Shop, desk: Desk, lot: Lot, lost: Pick<Lot, 'scrap' | 'used'>): Desk {
  const again = newLot(freshLotId(desk, lot), lot.order, lot.spec, lot.heads, {
    ...needsOf(shop, { spec: lot.spec, quantity: lot.heads }),
  });
  return { ...standingIn(desk, lot.id, again.id), lots: withLots(desk, lot, [{ ...again, ...lost }]) };
}

/** A lot not yet begun in two: so many heads, and the rest, which goes on telling what a lot before it used. */
function split(shop: Shop, desk: Desk, lot: Lot, change: OfLot): Desk | undefined {
  const { heads, of } = change.do === 'split' ? change : { heads: 0, of: 0 };
  if (lot.heads !== of || hasBegun(lot) || lot.shelf > 0 || !(heads > 0 && heads < lot.heads)) return undefined;
  const part = (id: string, quantity: number): Lot => ({
    ...newLot(id, lot.order, lot.spec, quantity, { ...needsOf(shop, { spec: lot.spec, quantity }) }),
    from: lot.from,
  });
  const [rest, off] = [part(lot.id, lot.heads - heads), part(freshLotId(desk, lot), heads)];
  const kept: Lot = { ...rest, scrap: lot.scrap, used: lot.used };
  return { ...standingIn(desk, lot.id, off.id), lots: withLots(desk, lot, [kept, off]) };
}

/** The desk's lots with others where one stood. */
const withLots = ({ lots }: Desk, { id }: Lot, instead: readonly Lot[]): Desk['lots'] =>
  Object.fromEntries(
    Object.entries(lots).flatMap(([name, lot]) =>
      name === id ? instead.map((one) => [one.id, one] as const) : [[name, lot] as const],
    ),
  );

/** The order of work with another lot where one stands: a lot that it does not know would come last. */
function standingIn(desk: Desk, lot: string, other: string): Desk {
  if (desk.planOrder === null) return desk;
  const places = desk.planOrder.places.flatMap((place) =>
    place.lot === lot ? [place, { ...place, lot: other }] : [place],
  );
  return { ...desk, planOrder: { ...desk.planOrder, places } };
}

/** A lot not yet begun together with the other ones of its order that are the same and not begun either. */
function join(shop: Shop, desk: Desk, lot: Lot): Desk | undefined {
  const spec = JSON.stringify(lot.spec);
  const alike = Object.values(desk.lots).filter(
    (one) => one.order === lot.order && JSON.stringify(one.spec) === spec && !hasBegun(one) && one.shelf === 0,
  );
  if (alike.length < 2 || !alike.includes(lot) || isFinished(lot)) return undefined;
  const heads = alike.reduce((sum, one) => sum + one.heads, 0);
  const whole = newLot(lot.id, lot.order, lot.spec, heads, { ...needsOf(shop, { spec: lot.spec, quantity: heads }) });
  const scrap = alike.reduce((sum, one) => sum + one.scrap, 0);
  const used = { ...addAmounts(alike.map((one) => one.used)) };
  const left = Object.entries(desk.lots).filter(([, one]) => !alike.includes(one));
  return { ...desk, lots: Object.fromEntries([...left, [lot.id, { ...whole, from: lot.from, scrap, used }]]) };
}
