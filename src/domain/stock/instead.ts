import { choicesFor } from '../order/choices.ts';
import type { Line } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import { NONE, type LineSlot, type SpecSlot } from '../shop/words.ts';
import { supplyOf, type Shelf } from './availability.ts';
import { needsOf } from './needs.ts';

/** What the mold also takes in a slot whose material is short, and whose own lies there now: the other hook size that fits, another guard.
 *  The mold's usual one first, three at most; nothing for slots that a buyer would not swap so lightly. */
export function insteadOf(shop: Shop, shelf: Shelf, { spec, quantity }: Line, slot: LineSlot): readonly string[] {
  const swapped = SWAPPED.find((one) => one === slot);
  if (swapped === undefined) return [];
  const needed = needsOf(shop, { spec, quantity });
  const others = choicesFor(shop, { ...spec, [swapped]: undefined }, swapped).filter((value) => value !== NONE);
  return others
    .filter((value) => {
      const needs = Object.entries(needsOf(shop, { spec: { ...spec, [swapped]: value }, quantity }));
      const own = needs.filter(([item]) => needed[item] === undefined);
      return own.length > 0 && own.every(([item, need]) => supplyOf(shop, shelf, item, need).when === 'now');
    })
    .slice(0, MOST);
}

const SWAPPED: readonly SpecSlot[] = ['hook', 'guard'];
const MOST = 3;
