import { INSISTS, nextTelling } from '../bench/timer.ts';
import { addDays, instantOf, localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { dailyTimes } from './daily.ts';
import { afterQuiet } from './quiet.ts';
import type { Desk } from './state.ts';
import { untold } from './unpaidTold.ts';

/** The next instant at which the clock has something to say: a timer, the morning's digest, or what is said once a day. */
export function nextDue(shop: Shop, desk: Desk, now: Instant): Instant {
  const timers = Object.values(desk.timers).flatMap((timer) => {
    const at = nextTelling(timer);
    return at === undefined ? [] : [INSISTS[timer.kind] ? at : afterQuiet(shop, Math.max(at, now))];
  });
  return Math.max(
    now,
    Math.min(...timers, ...nextDaily(shop, desk, now), ...nextUnpaid(shop, desk, now), nextDigest(shop, desk, now)),
  );
}

/** What is said once a day, today or tomorrow, if it is still to come. */
function nextDaily(shop: Shop, desk: Desk, now: Instant): readonly Instant[] {
  const today = localDay(now, shop.zone);
  return [today, addDays(today, 1)]
    .flatMap((day) => dailyTimes(shop, desk, day))
    .flatMap(({ from, until }) => {
      const at = afterQuiet(shop, Math.max(from, now));
      return at <= until ? [at] : [];
    });
}

const nextUnpaid = (shop: Shop, desk: Desk, now: Instant): readonly Instant[] =>
  untold(shop, desk, now).map(({ from }) => afterQuiet(shop, Math.max(from, now)));

function nextDigest(shop: Shop, desk: Desk, now: Instant): Instant {
  const today = localDay(now, shop.zone);
  const todays = instantOf(today, shop.digestAt, shop.zone);
  return desk.digestOn === today || todays <= now ? instantOf(addDays(today, 1), shop.digestAt, shop.zone) : todays;
}
