import type { Lot } from '../bench/lot.ts';
import { addDays, daysBetween, localDay, type Instant } from '../craft/time.ts';
import { cavityFor } from '../order/rules.ts';
import { balanceOf, mayBegin, type Balance } from '../quote/payment.ts';
import type { Shop } from '../shop/shop.ts';
import { addAmounts } from '../stock/needs.ts';
import { promisedAnew } from './begun.ts';
import type { UnpaidRow } from './business.ts';
import type { Order } from './order.ts';
import type { Desk } from './state.ts';

export const accountOf = ({ money, ledger }: Order): Balance => balanceOf(money.total, ledger);

/** An order with an account: on the bench, or off it with money still open. */
export const orderWithAccount = (desk: Desk, id: string): Order | undefined => desk.orders[id] ?? desk.settling[id];

const isSettled = (order: Order): boolean => {
  const { due, over } = accountOf(order);
  return due === 0 && over === 0;
};

/** What a change of an account comes to: the order is in `settled` if it is thereby done with for good, and `begins` if its rule for
 *  the bench is met by it. */
export type Accounted = Readonly<{ desk: Desk; settled: readonly Order[]; begins: boolean }>;

/** The order with its account changed; one that has left the bench stands in `settling` as long as money is open on it. */
export function withAccount(shop: Shop, desk: Desk, order: Order, now: Instant): Accounted {
  const before = desk.orders[order.id];
  if (before === undefined) {
    return isSettled(order)
      ? { desk: { ...desk, settling: lessOf(desk.settling, order.id) }, settled: [order], begins: false }
      : { desk: { ...desk, settling: { ...desk.settling, [order.id]: order } }, settled: [], begins: false };
  }
  const next: Desk = { ...desk, orders: { ...desk.orders, [order.id]: order } };
  // A hold that the maker put on it stays.
  const begins = desk.held.includes(order.id) && !mayBegin(shop, accountOf(before)) && mayBegin(shop, accountOf(order));
  if (!begins) return { desk: next, settled: [], begins };
  const held = desk.held.filter((id) => id !== order.id);
  return { desk: promisedAnew(shop, { ...next, held }, order.id, now), settled: [], begins };
}

/** Orders that left the bench with money open. */
export const settlingWith = (desk: Desk, gone: Order): Desk['settling'] =>
  isSettled(gone) ? desk.settling : { ...desk.settling, [gone.id]: gone };

/** An order as it is written down when it leaves the bench: with what its lots used and how their heads came out. */
export function written(shop: Shop, lots: readonly Lot[], order: Order): Order {
  const cast = lots.map(({ spec, good, over, scrap }) => ({
    style: spec.style,
    mold: cavityFor(shop, spec)?.mold.id ?? spec.style,
    heads: good + over,
    scrap,
  }));
  return {
    ...order,
    lots: [...lots],
    used: { ...addAmounts(lots.map(({ used }) => used)) },
    made: [...new Set(cast.map(({ mold }) => mold))].map((mold) => {
      const own = cast.filter((one) => one.mold === mold);
      const sum = (of: 'heads' | 'scrap'): number => own.reduce((all, one) => all + one[of], 0);
      return { style: own[0]?.style ?? mold, mold, heads: sum('heads'), scrap: sum('scrap') };
    }),
  };
}

/** Everything that is owed either way, what is due longest first. */
export function unpaidOf(shop: Shop, desk: Desk, now: Instant): readonly UnpaidRow[] {
  const today = localDay(now, shop.zone);
  return [...Object.values(desk.orders), ...Object.values(desk.settling)]
    .flatMap((order) => {
      const { due, over, kept } = accountOf(order);
      if (due === 0 && over === 0) return [];
      const dueOn = addDays(localDay(order.acceptedAt, shop.zone), shop.payment.dueDays);
      const buyer = desk.people[order.buyer]?.name ?? String(order.buyer);
      return [{ order: order.id, buyer, due, over, kept, dueOn, late: Math.max(0, daysBetween(dueOn, today)) }];
    })
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn) || a.order.localeCompare(b.order));
}

const lessOf = (orders: Desk['settling'], id: string): Desk['settling'] =>
  Object.fromEntries(Object.entries(orders).filter(([one]) => one !== id));
