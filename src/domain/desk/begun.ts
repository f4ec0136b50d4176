import type { Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { promiseDay } from './planning.ts';
import type { Desk } from './state.ts';

/** The desk with an order that waited for its money and is off hold now: promised for the day that was quoted, or where the bench has
 *  filled up meanwhile for the one that holds now. */
export function promisedAnew(shop: Shop, desk: Desk, id: string, now: Instant): Desk {
  const order = desk.orders[id];
  const day = order && promiseDay(shop, desk, id, now);
  if (order === undefined || day === undefined || day <= order.promise.ships) return desk;
  return { ...desk, orders: { ...desk.orders, [id]: { ...order, promise: { ...order.promise, ships: day } } } };
}
