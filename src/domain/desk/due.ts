import { INSISTS, nextTelling } from '../bench/timer.ts';
import { addDays, instantOf, localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { afterQuiet } from './quiet.ts';
import type { Desk } from './state.ts';

/** The next instant at which the clock has something to say: a timer, or the morning's digest. */
export function nextDue(shop: Shop, desk: Desk, now: Instant): Instant {
  const timers = Object.values(desk.timers).flatMap((timer) => {
    const at = nextTelling(timer);
    return at === undefined ? [] : [INSISTS[timer.kind] ? at : afterQuiet(shop, Math.max(at, now))];
  });
  return Math.max(now, Math.min(...timers, nextDigest(shop, desk, now)));
}

function nextDigest(shop: Shop, desk: Desk, now: Instant): Instant {
  const today = localDay(now, shop.zone);
  const todays = instantOf(today, shop.digestAt, shop.zone);
  return desk.digestOn === today || todays <= now ? instantOf(addDays(today, 1), shop.digestAt, shop.zone) : todays;
}
