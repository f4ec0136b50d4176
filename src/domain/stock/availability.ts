import { addDays, daysBetween, type Day } from '../craft/time.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import type { Amounts } from './needs.ts';
import type { Ordered } from './ordered.ts';

/** What the stock is at a moment: what lies there, what open lots will still use, and which deliveries have come. */
export type Shelf = Readonly<{
  onHand: Amounts;
  reserved: Amounts;
  /** Deliveries that were put away, as `item@day`. */
  arrived: readonly string[];
  /** Deliveries ordered from chat, beside those of the shop file. */
  ordered?: readonly Ordered[];
  today: Day;
}>;

/** A delivery still to come: the day it is counted on, and the day it was named for, which one that is overdue has so many days behind it. */
export type Delivery = Readonly<{ item: ItemId; day: Day; named: Day; count: number; overdue: number }>;

/** Whether an item is there, comes on a day, or is not to be had. */
export type Supply =
  | Readonly<{ when: 'now' }>
  /** `due` is the day an overdue delivery was named for; null when it is not overdue. */
  | Readonly<{ when: 'later'; day: Day; free: number; due: Day | null }>
  | Readonly<{ when: 'never'; free: number }>;

/** On hand less reserved; negative when open lots wait for a delivery. */
export const freeOf = (shelf: Shelf, item: ItemId): number => (shelf.onHand[item] ?? 0) - (shelf.reserved[item] ?? 0);

/** When so much of an item can be had: from what is free, else with the first delivery that makes it enough. */
export function supplyOf(shop: Shop, shelf: Shelf, item: ItemId, need: number): Supply {
  const free = freeOf(shelf, item);
  if (need <= free) return { when: 'now' };
  let sum = free;
  for (const { day, count, named, overdue } of deliveriesOf(shop, shelf, item)) {
    sum += count;
    if (need <= sum) return { when: 'later', day, free: Math.max(0, free), due: overdue > 0 ? named : null };
  }
  return { when: 'never', free: Math.max(0, free) };
}

/** Deliveries of an item still to come, soonest first. Of one that is overdue nobody knows the day: it is counted on only when one ordered today would come. */
export function deliveriesOf(shop: Shop, shelf: Shelf, item: ItemId): readonly Delivery[] {
  const rows = shop.stock.find((row) => row.item === item)?.restock ?? [];
  const toCome = rows.filter(({ day }) => !shelf.arrived.includes(deliveryKey(item, day)));
  return [...toCome, ...(shelf.ordered ?? []).filter((one) => one.item === item)]
    .map(({ day: named, count }) => {
      const overdue = named < shelf.today ? daysBetween(named, shelf.today) : 0;
      return { item, count, named, overdue, day: overdue > 0 ? ifOrdered(shop, item, shelf.today) : named };
    })
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

/** The day an item would come if it were ordered on this one. */
export const ifOrdered = ({ stock, buying }: Shop, item: ItemId, today: Day): Day =>
  addDays(today, stock.find((row) => row.item === item)?.leadDays ?? buying.leadDays);

export const deliveryKey = (item: ItemId, day: Day): string => `${item}@${day}`;
