import { addDays, instantOf, localDay, weekdayOf, type Day, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';

/** When the post leaves on a day; undefined when it does not. */
export const cutOffOn = ({ post, zone }: Shop, day: Day): Instant | undefined =>
  post.days.includes(weekdayOf(day)) && !post.closed.includes(day) ? instantOf(day, post.by, zone) : undefined;

/** The day the next post leaves; undefined when none does within a month. */
export const nextPost = (shop: Shop, now: Instant): Day | undefined => {
  const today = localDay(now, shop.zone);
  return (cutOffOn(shop, today) ?? 0) > now ? today : postFrom(shop, addDays(today, 1));
};

/** The first day from this one on on which post leaves; undefined when none does within a month. */
export const postFrom = (shop: Shop, from: Day): Day | undefined =>
  Array.from({ length: 31 }, (_, days) => addDays(from, days)).find((day) => cutOffOn(shop, day) !== undefined);
