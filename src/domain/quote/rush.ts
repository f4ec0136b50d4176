import type { Rate } from '../craft/money.ts';
import { daysBetween, type Day } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';

/** The share that haste adds to the price of heads: the shop's, if they are needed within its days of asking; else nothing. */
export function rushFor({ rush }: Shop, needBy: Day | null, today: Day): Rate {
  if (rush === null || needBy === null) return 0;
  return daysBetween(today, needBy) <= rush.withinDays ? rush.rate : 0;
}
