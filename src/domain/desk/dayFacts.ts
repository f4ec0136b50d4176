import { stepOf } from '../bench/lot.ts';
import { addDays, localDay, type Day, type Instant } from '../craft/time.ts';
import type { Plan } from '../plan/plan.ts';
import type { Shop } from '../shop/shop.ts';
import { STEPS } from '../shop/words.ts';
import type { Digest } from './facts.ts';
import type { Heading } from './heading.ts';
import type { Order } from './order.ts';
import { plannedHeads } from './planned.ts';
import { cutOffOn } from './post.ts';
import type { Desk } from './state.ts';
import { meltGrams } from './work.ts';

/** Grams of each metal for the pours that the plan has on a day. */
export function meltOn(shop: Shop, desk: Desk, plan: Plan, day: Day): Digest['melt'] {
  const pours = plan.sessions.filter((one) => one.do === 'pour' && localDay(one.start, shop.zone) === day);
  const sums = new Map<string, number>();
  for (const session of pours) {
    const lots = plannedHeads(shop, desk, plan, session)
      .filter(({ lot }) => stepOf(lot, 'pour')?.state !== 'done')
      .map(({ lot, heads }) => ({ heads, spec: lot.spec }));
    const metal = lots[0]?.spec.metal;
    if (metal !== undefined) sums.set(metal, (sums.get(metal) ?? 0) + meltGrams(shop, lots));
  }
  return [...sums].map(([metal, grams]) => ({ metal, grams }));
}

/** Heads that had a step the day before, in the order of the work. */
export const doneBefore = (desk: Desk, day: Day): Digest['done'] =>
  desk.worked
    .filter((one) => one.day === addDays(day, -1) && one.heads > 0)
    .map(({ step, heads }) => ({ step, heads }))
    .sort((a, b) => STEPS.indexOf(a.step) - STEPS.indexOf(b.step));

/** Orders promised for today or before that leave today as the bench stands, and when the post does. */
export function leavingToday(
  shop: Shop,
  desk: Desk,
  headingOf: (order: Order) => Heading,
  now: Instant,
): Digest['leaving'] {
  const today = localDay(now, shop.zone);
  const by = cutOffOn(shop, today);
  const orders = Object.values(desk.orders).filter(
    (order) => order.promise.ships <= today && headingOf(order).ships === today,
  );
  return by === undefined || by <= now || orders.length === 0 ? null : { orders: orders.map(({ id }) => id), by };
}
