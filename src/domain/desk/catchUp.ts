import type { Lot } from '../bench/lot.ts';
import type { Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { shipDays } from './heading.ts';
import type { Desk } from './state.ts';

/** The desk with top-ups first in the order of work, so that they catch up with their lots while mold and pot are hot; they stay last
 *  where a promise would break by it that holds otherwise. */
export function catchingUp(shop: Shop, desk: Desk, topUps: readonly Lot[], now: Instant): Desk {
  if (topUps.length === 0 || desk.planOrder === null) return desk;
  const { places } = desk.planOrder;
  const key = Math.min(0, ...places.map((place) => place.key)) - 1;
  const made = topUps.map(({ id }) => ({ lot: id, do: 'pour', key }));
  const ahead: Desk = { ...desk, planOrder: { ...desk.planOrder, places: [...places, ...made] } };
  const late = lateOrders(shop, desk, now);
  return lateOrders(shop, ahead, now).every((order) => late.includes(order)) ? ahead : desk;
}

function lateOrders(shop: Shop, desk: Desk, now: Instant): readonly string[] {
  const days = shipDays(shop, desk, now);
  return Object.keys(days).filter((id) => (days[id] ?? '') > (desk.orders[id]?.promise.ships ?? '9999'));
}
