import { z } from 'zod';
import { addDays, daysBetween, weekdayOf, WEEKDAYS, type Day } from '../craft/time.ts';
import type { ItemId } from '../shop/shop.ts';

/** What the bench used of an item by week, oldest first; a week without a row used nothing. */
export const usageSchema = z.record(z.string(), z.array(z.strictObject({ week: z.iso.date(), amount: z.number() })));
export type Usage = Readonly<Record<ItemId, readonly Readonly<{ week: Day; amount: number }>[]>>;

/** Weeks that are looked back on: a quarter of a year. */
export const WEEKS_KEPT = 13;

/** The usage with an amount more used on a day; what was taken back is less than nothing. */
export function withUse(usage: Usage, item: ItemId, amount: number, day: Day): Usage {
  const week = mondayOf(day);
  const rows = usage[item] ?? [];
  const there = rows.find((row) => row.week === week)?.amount ?? 0;
  const others = rows.filter((row) => row.week !== week && daysBetween(row.week, week) < WEEKS_KEPT * 7);
  return { ...usage, [item]: [...others, { week, amount: there + amount }] };
}

/** The Monday that a day's week begins with. */
export const mondayOf = (day: Day): Day => addDays(day, -WEEKDAYS.indexOf(weekdayOf(day)));

/** What a day uses on average, and how far days differ (standard deviation), from the weeks that are over and the days of this one. */
export type Demand = Readonly<{ daily: number; sigma: number }>;

/** The demand for an item as its weeks show it; nothing used, nothing wanted. Weeks since the first are counted, be they empty.
 *  Days are taken as independent, so a day's deviation is a week's over √7. */
export function demandOf(usage: Usage, item: ItemId, today: Day): Demand {
  const rows = usage[item] ?? [];
  const first = rows.map(({ week }) => week).sort()[0];
  if (first === undefined) return { daily: 0, sigma: 0 };
  const weeks = Math.min(WEEKS_KEPT, Math.floor(daysBetween(first, mondayOf(today)) / 7) + 1);
  const amounts = Array.from({ length: weeks }, (_, back) => {
    const week = addDays(mondayOf(today), -7 * back);
    return rows.find((row) => row.week === week)?.amount ?? 0;
  });
  const mean = amounts.reduce((sum, amount) => sum + amount, 0) / weeks;
  const squares = amounts.reduce((sum, amount) => sum + (amount - mean) ** 2, 0);
  return { daily: Math.max(0, mean) / 7, sigma: weeks < 2 ? 0 : Math.sqrt(squares / (weeks - 1) / 7) };
}
