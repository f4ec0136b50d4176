import { addDays, localDay, type Day, type Instant } from '../craft/time.ts';
import type { Because } from '../plan/plan.ts';
import type { Shop } from '../shop/shop.ts';
import { deliveriesOf } from '../stock/availability.ts';
import { unpaidOf } from './account.ts';
import { cutOffOn, packedOrders } from './daily.ts';
import { coursesOf } from './planning.ts';
import { shelfOf } from './shelves.ts';
import type { Desk } from './state.ts';

/** A promise that the bench as it stands would break: whose, and the chain of what it waits on, other orders by their number. */
export type Danger = Readonly<{
  order: string;
  buyer: string;
  promised: Day;
  ships: Day;
  because: readonly Because[];
}>;

/** What falls due beside the timers at the bench. */
export type Coming =
  | Readonly<{ what: 'post'; orders: readonly string[]; by: Instant }>
  | Readonly<{ what: 'danger'; danger: Danger }>
  | Readonly<{ what: 'unpaid'; order: string; buyer: string; day: Day }>
  | Readonly<{ what: 'quote'; buyer: string; until: Instant }>
  | Readonly<{ what: 'restock'; item: string; count: number; day: Day }>;

/** All of it that is known of now, each kind in order of time. */
export const comingOf = (shop: Shop, desk: Desk, now: Instant): readonly Coming[] => [
  ...nextPost(shop, desk, now),
  ...dangersOf(shop, desk, now).map((danger): Coming => ({ what: 'danger', danger })),
  ...unpaidOf(shop, desk, now)
    .filter(({ due }) => due > 0)
    .map(({ order, buyer, dueOn }): Coming => ({ what: 'unpaid', order, buyer, day: dueOn })),
  ...openQuotes(desk, now),
  ...deliveries(shop, desk, now),
];

/** Promises in danger, the soonest first. A packed order that has not left is one from the day after its own. */
export function dangersOf(shop: Shop, desk: Desk, now: Instant): readonly Danger[] {
  const open = Object.values(desk.orders);
  if (open.length === 0) return [];
  const today = localDay(now, shop.zone);
  const courses = coursesOf(shop, desk, now);
  return open
    .flatMap(({ id, buyer, promise }) => {
      const course = courses[id];
      const ships = course?.ships ?? (today > promise.ships ? today : promise.ships);
      if (ships <= promise.ships) return [];
      const because = (course?.because ?? []).map((one) => byOrder(desk, one));
      return [{ order: id, buyer: nameOf(desk, buyer), promised: promise.ships, ships, because }];
    })
    .sort((a, b) => a.promised.localeCompare(b.promised) || a.order.localeCompare(b.order));
}

/** A reason that names orders where the plan names lots. */
const byOrder = (desk: Desk, one: Because): Because =>
  one.code === 'hands' ? { ...one, with: [...new Set(one.with.map((lot) => desk.lots[lot]?.order ?? lot))] } : one;

/** How far ahead the next post is looked for. */
const POST_DAYS = 14;

function nextPost(shop: Shop, desk: Desk, now: Instant): readonly Coming[] {
  const orders = packedOrders(desk);
  if (orders.length === 0) return [];
  const today = localDay(now, shop.zone);
  const days = Array.from({ length: POST_DAYS }, (_, after) => cutOffOn(shop, addDays(today, after)));
  const by = days.find((at) => at !== undefined && at > now);
  return by === undefined ? [] : [{ what: 'post', orders, by }];
}

const openQuotes = (desk: Desk, now: Instant): readonly Coming[] =>
  Object.entries(desk.drafts)
    .flatMap(([buyer, { id, version }]): Extract<Coming, { what: 'quote' }>[] => {
      const quote = desk.quotes[id];
      const isOpen = quote?.version === version && quote.goodUntil > now;
      return isOpen ? [{ what: 'quote', buyer: nameOf(desk, buyer), until: quote.goodUntil }] : [];
    })
    .sort((a, b) => a.until - b.until);

function deliveries(shop: Shop, desk: Desk, now: Instant): readonly Coming[] {
  const shelf = shelfOf(shop, desk, now);
  return shop.stock
    .flatMap(({ item }) => deliveriesOf(shop, shelf, item))
    .sort((a, b) => a.day.localeCompare(b.day))
    .map(({ item, count, day }) => ({ what: 'restock', item, count, day }));
}

const nameOf = (desk: Desk, person: number | string): string => desk.people[person]?.name ?? String(person);
