import { z } from 'zod';
import type { Day } from '../craft/time.ts';
import type { ItemId } from '../shop/shop.ts';

/** A delivery that was ordered from chat, and the day it is expected. */
export const orderedSchema = z.strictObject({
  item: z.string(),
  day: z.iso.date(),
  count: z.number().int().positive(),
});
export type Ordered = Readonly<z.infer<typeof orderedSchema>>;

/** The deliveries with one more; two of one item on one day are one. */
export const withOrdered = (ordered: readonly Ordered[], more: Ordered): readonly Ordered[] => [
  ...ordered.filter((one) => !isSame(one, more)),
  { ...more, count: more.count + (ordered.find((one) => isSame(one, more))?.count ?? 0) },
];

/** The deliveries without what came: the earliest of an item are counted off, one that came in part keeps its rest. */
export function lessArrived(ordered: readonly Ordered[], item: ItemId, count: number): readonly Ordered[] {
  let left = count;
  return [...ordered]
    .sort((a, b) => (a.day < b.day ? -1 : 1))
    .flatMap((one) => {
      if (one.item !== item) return [one];
      const came = Math.min(left, one.count);
      left -= came;
      return came === one.count ? [] : [{ ...one, count: one.count - came }];
    });
}

export const orderedOn = (ordered: readonly Ordered[], item: ItemId, day: Day): Ordered | undefined =>
  ordered.find((one) => one.item === item && one.day === day);

const isSame = (one: Ordered, other: Ordered): boolean => one.item === other.item && one.day === other.day;
