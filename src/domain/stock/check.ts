import type { Day } from '../craft/time.ts';
import { finding } from '../order/check.ts';
import type { Finding } from '../order/finding.ts';
import type { Line } from '../order/spec.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import type { LineSlot } from '../shop/words.ts';
import { supplyOf, type Shelf } from './availability.ts';
import { needsOf, type Amounts } from './needs.ts';

/** What a line has to wait for, or cannot have, item by item; the amounts other lines of the order take are counted as gone. */
export const checkStock = (shop: Shop, shelf: Shelf, line: Line, at: number): readonly Finding[] =>
  checkNeeds(shop, shelf, needsOf(shop, line), at);

/** The same of what a line needs, where that is not all its heads from the pour on. */
export function checkNeeds(shop: Shop, shelf: Shelf, needs: Amounts, at: number): readonly Finding[] {
  return Object.entries(needs).flatMap(([item, need]) => {
    const supply = supplyOf(shop, shelf, item, need);
    const slots = slotsOf(item);
    if (supply.when === 'now') return [];
    const facts = { slots, item, need, free: supply.free };
    return supply.when === 'later'
      ? [finding(at, { code: 'waits-for-stock', ...facts, day: supply.day })]
      : [finding(at, { code: 'out-of-stock', ...facts })];
  });
}

/** The day the last of an amount is there; null when all is there now. What never comes is the check's to say. */
export function materialsDay(shop: Shop, shelf: Shelf, needs: Amounts): Day | null {
  const days = Object.entries(needs).flatMap(([item, need]) => {
    const supply = supplyOf(shop, shelf, item, need);
    return supply.when === 'later' ? [supply.day] : [];
  });
  return days.sort().at(-1) ?? null;
}

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
const slotsOf = (item: ItemId): readonly LineSlot[] => [SLOT_OF[item.split(':')[0] ?? ''] ?? 'quantity'];
