import type { Day, Instant } from '../craft/time.ts';
import type { Because } from '../plan/plan.ts';
import type { Shop } from '../shop/shop.ts';
import { deliveriesOf, type Delivery } from '../stock/availability.ts';
import { unpaidOf } from './account.ts';
import { packedOrders } from './daily.ts';
import { headingsOf, type Heading } from './heading.ts';
import { cutOffOn, nextPost } from './post.ts';
import { shelfOf } from './shelves.ts';
import type { Desk } from './state.ts';

/** A promise that the bench as it stands would break: whose, where it heads, whether no post leaves in time any more,
 *  and the chain of what it waits on, other orders by their number. */
export type Danger = Heading & Readonly<{ order: string; buyer: string; promised: Day; late: boolean }>;

/** What falls due beside the timers at the bench. */
export type Coming =
  | Readonly<{ what: 'post'; orders: readonly string[]; by: Instant }>
  | Readonly<{ what: 'danger'; danger: Danger }>
  | Readonly<{ what: 'unpaid'; order: string; buyer: string; day: Day }>
  | Readonly<{ what: 'quote'; buyer: string; until: Instant }>
  | (Readonly<{ what: 'restock' }> & Delivery);

/** All of it that is known of now, each kind in order of time. */
export const comingOf = (shop: Shop, desk: Desk, now: Instant): readonly Coming[] => [
  ...nextHandIn(shop, desk, now),
  ...dangersOf(shop, desk, now).map((danger): Coming => ({ what: 'danger', danger })),
  ...unpaidOf(shop, desk, now)
    .filter(({ due }) => due > 0)
    .map(({ order, buyer, dueOn }): Coming => ({ what: 'unpaid', order, buyer, day: dueOn })),
  ...openQuotes(desk, now),
  ...deliveries(shop, desk, now),
];

/** Promises in danger, the soonest first: those on hold, and those heading for a later day than theirs. Nothing is promised
 *  for an order that waits for its money. */
export function dangersOf(shop: Shop, desk: Desk, now: Instant): readonly Danger[] {
  const open = Object.values(desk.orders);
  if (open.length === 0) return [];
  const headingOf = headingsOf(shop, desk, now);
  const post = nextPost(shop, now) ?? '9999';
  return open
    .flatMap((order) => {
      const { id, buyer, promise } = order;
      const heading = headingOf(order);
      if (heading.waits?.for === 'money' || (heading.ships ?? '9999') <= promise.ships) return [];
      const because = heading.because.map((one) => byOrder(desk, one));
      const late = post > promise.ships;
      return [{ ...heading, because, order: id, buyer: nameOf(desk, buyer), promised: promise.ships, late }];
    })
    .sort((a, b) => a.promised.localeCompare(b.promised) || a.order.localeCompare(b.order));
}

/** A reason that names orders where the plan names lots. */
const byOrder = (desk: Desk, one: Because): Because =>
  one.code === 'hands' ? { ...one, with: [...new Set(one.with.map((lot) => desk.lots[lot]?.order ?? lot))] } : one;

function nextHandIn(shop: Shop, desk: Desk, now: Instant): readonly Coming[] {
  const orders = packedOrders(desk);
  const day = nextPost(shop, now);
  const by = day === undefined ? undefined : cutOffOn(shop, day);
  return orders.length === 0 || by === undefined ? [] : [{ what: 'post', orders, by }];
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
    .sort((a, b) => a.named.localeCompare(b.named))
    .map((delivery) => ({ what: 'restock', ...delivery }));
}

const nameOf = (desk: Desk, person: number | string): string => desk.people[person]?.name ?? String(person);
