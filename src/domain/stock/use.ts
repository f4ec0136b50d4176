import type { Spec } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { needsFor, type Amounts } from './needs.ts';

/** The step at which each kind of material is used up. */
const USED_AT: Readonly<Record<string, Step>> = {
  metal: 'pour',
  hook: 'pour',
  keeper: 'pour',
  paint: 'paint',
  guard: 'guard',
  epoxy: 'guard',
  dressing: 'dress',
  bag: 'pack',
  label: 'pack',
};

/** What a step has used up by its count: at the pour a hook for every head poured and metal for those that are good, scrap being remelted;
 *  later something for every head that had the step, good or not; at the packing for those that were ordered. */
export function countedUse(
  shop: Shop,
  { spec, heads: ordered, good }: Readonly<{ spec: Spec; heads: number; good: number }>,
  step: Step,
  heads: number,
): Amounts {
  const quantity = step === 'pour' ? good : step === 'pack' ? ordered : heads;
  return usedAt(step, needsFor(shop, { spec, quantity }, heads)).used;
}

/** What a step takes of a lot's share, and what is left of it afterwards. */
export function usedAt(step: Step, reserved: Amounts): Readonly<{ used: Amounts; left: Record<string, number> }> {
  const entries = Object.entries(reserved);
  const isUsed = ([item]: readonly [string, number]): boolean => USED_AT[item.split(':')[0] ?? ''] === step;
  return {
    used: Object.fromEntries(entries.filter(isUsed)),
    left: Object.fromEntries(entries.filter((entry) => !isUsed(entry))),
  };
}
