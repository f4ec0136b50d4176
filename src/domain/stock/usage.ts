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

/** Whole weeks that the book looks back on, up to a quarter of a year: since it began, or since its first use of anything if that was before. */
export const weeksOf = (usage: Usage, began: Day | null, today: Day): number =>
  Math.floor(daysBetween(sinceOf(usage, began, today), today) / 7);

function sinceOf(usage: Usage, began: Day | null, today: Day): Day {
  const uses = Object.values(usage).flatMap((rows) => rows.map(({ week }) => week));
  const [first = today] = [...uses, ...(began === null ? [] : [began])].sort();
  const oldest = addDays(mondayOf(today), -7 * (WEEKS_KEPT - 1));
  return first < oldest ? oldest : first;
}

/** What a day uses on average, and how far days differ (standard deviation). */
export type Demand = Readonly<{ daily: number; sigma: number }>;

/** The demand for an item as the book's days show it, weeks in which nothing was used counted; how far they differ, from the weeks that are over.
 *  Days are taken as independent, so a day's deviation is a week's over √7. */
export function demandOf(usage: Usage, item: ItemId, began: Day | null, today: Day): Demand {
  const since = sinceOf(usage, began, today);
  const usedIn = (week: Day): number => usage[item]?.find((row) => row.week === week)?.amount ?? 0;
  const weeks = Array.from({ length: daysBetween(mondayOf(since), mondayOf(today)) / 7 }, (_, at) =>
    usedIn(addDays(mondayOf(since), 7 * at)),
  );
  const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);
  const daily = Math.max(0, sum(weeks) + usedIn(mondayOf(today))) / (daysBetween(since, today) + 1);
  const mean = sum(weeks) / Math.max(1, weeks.length);
  const squares = sum(weeks.map((amount) => (amount - mean) ** 2));
  return { daily, sigma: weeks.length < 2 ? 0 : Math.sqrt(squares / (weeks.length - 1) / 7) };
}
