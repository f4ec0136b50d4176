import { finding } from '../order/check.ts';
import type { Finding } from '../order/finding.ts';
import type { Line } from '../order/spec.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import type { LineSlot } from '../shop/words.ts';
import { supplyOf, type Shelf } from './availability.ts';
import { insteadOf } from './instead.ts';
import { needsOf, type Amounts } from './needs.ts';

/** What a line has to wait for, or cannot have, item by item, and what the mold takes instead; the amounts other lines of the order take are counted as gone.
 *  `needs` is said where that is not all the line's heads from the pour on. */
export const checkStock = (
  shop: Shop,
  shelf: Shelf,
  line: Line,
  at: number,
  needs: Amounts = needsOf(shop, line),
): readonly Finding[] =>
  Object.entries(needs).flatMap(([item, need]) => {
    const supply = supplyOf(shop, shelf, item, need);
    if (supply.when === 'now') return [];
    const slot = slotOf(item);
    const instead = insteadOf(shop, shelf, line, slot);
    const facts = { slots: [slot], item, need, free: supply.free, instead };
    const ways = instead.map((value) => ({ put: { [slot]: value } }));
    return supply.when === 'later'
      ? [finding(at, { code: 'waits-for-stock', ...facts, day: supply.day, due: supply.due }, ways)]
      : [finding(at, { code: 'out-of-stock', ...facts }, ways)];
  });

/** The shelf after so much was put aside. */
export const setAside = (shelf: Shelf, needs: Amounts): Shelf => ({
  ...shelf,
  reserved: Object.fromEntries(
    [...new Set([...Object.keys(shelf.reserved), ...Object.keys(needs)])].map((item) => [
      item,
      (shelf.reserved[item] ?? 0) + (needs[item] ?? 0),
    ]),
  ),
});

const SLOT_OF: Readonly<Record<string, LineSlot>> = {
  metal: 'metal',
  hook: 'hook',
  paint: 'paint',
  guard: 'guard',
  keeper: 'keeper',
  dressing: 'dressing',
  epoxy: 'guard',
};

/** The slot that a buyer could change to need another item. */
const slotOf = (item: ItemId): LineSlot => SLOT_OF[item.split(':')[0] ?? ''] ?? 'quantity';
