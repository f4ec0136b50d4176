import type { Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { promisedAnew } from './begun.ts';
import type { Change } from './change.ts';
import { waitsOf } from './heading.ts';
import { withPlan } from './planning.ts';
import type { Desk } from './state.ts';

/** What comes when: an order put first, on hold, or back in its turn. */

type InTurn = Extract<Change, Readonly<{ order: string }>>;

/** Whether there is nothing to change: no such order, or it is so already. */
export function isSo({ orders, held, first }: Desk, { do: what, order }: InTurn): boolean {
  if (orders[order] === undefined) return true;
  if (what === 'release') return !held.includes(order) && !first.includes(order);
  return what === 'hold' ? held.includes(order) : first.at(-1) === order;
}

export function inTurn(shop: Shop, desk: Desk, { do: what, order }: InTurn, now: Instant): Desk {
  const others = { held: desk.held.filter((one) => one !== order), first: desk.first.filter((one) => one !== order) };
  if (what === 'hold') return { ...desk, ...others, held: [...others.held, order] };
  if (what === 'release') return offHold(shop, desk, { ...desk, ...others }, order, now);
  const free = { ...desk, ...others, first: [...others.first, order], lots: begunAtOnce(desk.lots, order) };
  return offHold(shop, desk, putFirst(withPlan(shop, free, now), order), order, now);
}

/** An order that waited for its money and begins without it has its day from now on. */
function offHold(shop: Shop, before: Desk, desk: Desk, id: string, now: Instant): Desk {
  return isUnbegun(shop, before, id) ? promisedAnew(shop, desk, id, now) : desk;
}

/** Whether an order waits for its money. */
export function isUnbegun(shop: Shop, desk: Desk, id: string): boolean {
  const order = desk.orders[id];
  return order !== undefined && waitsOf(shop, desk, order)?.for === 'money';
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
