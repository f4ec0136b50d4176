import { afterEvening } from '../bench/learned.ts';
import { currentStep, type Lot } from '../bench/lot.ts';
import { addDays, type Day, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { inWorkingOrder } from './inOrder.ts';
import { spansOn } from './hours.ts';
import type { Desk } from './state.ts';

/** The desk that knows whether the day before was worked: it teaches how many evenings fall out. A day without hours, or without work
 *  that had waited since before they began, teaches nothing. */
export function withEvening(shop: Shop, desk: Desk, today: Day): Desk {
  const day = addDays(today, -1);
  const opened = spansOn(shop, desk, day)[0]?.from;
  if (opened === undefined) return desk;
  if (desk.worked.some((one) => one.day === day)) return { ...desk, learned: afterEvening(desk.learned, 'kept') };
  const waited = inWorkingOrder(desk).some((lot) => waitedSince(desk, lot) < opened);
  return waited ? { ...desk, learned: afterEvening(desk.learned, 'missed') } : desk;
}

/** Since when a lot could be worked on; never, while something of it runs. */
function waitedSince({ orders }: Desk, lot: Lot): Instant {
  if (currentStep(lot)?.state !== 'ready') return Infinity;
  const done = lot.steps.map(({ doneAt }) => doneAt ?? 0);
  return Math.max(orders[lot.order]?.acceptedAt ?? 0, lot.from ?? 0, ...done);
}
