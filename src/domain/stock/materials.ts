import type { Day } from '../craft/time.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import { ifOrdered, supplyOf, type Shelf } from './availability.ts';
import type { Amounts } from './needs.ts';

/** So much of an item is not there, and nobody knows when it will be: nothing of it is on order, or it was due on a day that is over. */
export type Missing = Readonly<{ item: ItemId; count: number; due: Day | null }>;

/** The day the last of some material is there, null when all is there now, and what of it has no day of its own:
 *  that is taken to come as late as if it were ordered today. */
export type Materials = Readonly<{ day: Day | null; missing: readonly Missing[] }>;

export function materialsFor(shop: Shop, shelf: Shelf, needs: Amounts): Materials {
  const waits = Object.entries(needs).flatMap(([item, need]): readonly Waiting[] => {
    const supply = supplyOf(shop, shelf, item, need);
    if (supply.when === 'now') return [];
    const missing = { item, count: need - supply.free };
    if (supply.when === 'never')
      return [{ day: ifOrdered(shop, item, shelf.today), missing: { ...missing, due: null } }];
    return [{ day: supply.day, missing: supply.due === null ? null : { ...missing, due: supply.due } }];
  });
  return {
    day:
      waits
        .map(({ day }) => day)
        .sort()
        .at(-1) ?? null,
    missing: waits.flatMap(({ missing }) => missing ?? []),
  };
}

type Waiting = Readonly<{ day: Day; missing: Missing | null }>;
