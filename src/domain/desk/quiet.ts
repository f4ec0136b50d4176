import { addDays, instantOf, localClock, localDay, type Clock, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';

/** Whether the maker is not to be written to now, except for something hot. */
export function isQuiet({ quiet, zone }: Shop, now: Instant): boolean {
  const { from, to } = quiet;
  const clock: Clock = localClock(now, zone);
  return from <= to ? clock >= from && clock < to : clock >= from || clock < to;
}

/** The instant itself, or the end of the quiet hours that it falls into. */
export function afterQuiet(shop: Shop, at: Instant): Instant {
  if (!isQuiet(shop, at)) return at;
  const day = localDay(at, shop.zone);
  const ends = instantOf(day, shop.quiet.to, shop.zone);
  return ends > at ? ends : instantOf(addDays(day, 1), shop.quiet.to, shop.zone);
}
