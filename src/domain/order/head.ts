import type { Casting } from '../craft/casting.ts';
import { headMass, type HeadMass } from '../craft/mass.ts';
import type { Metal, Shop } from '../shop/shop.ts';
import { cavityFor } from './rules.ts';
import { NONE } from '../shop/words.ts';
import type { Spec } from './spec.ts';

/** What one head of a spec weighs, grams: the maker's own weighing if there is one, else worked out from the cavity's lead rating. */
export function massOf(shop: Shop, spec: Spec): HeadMass {
  const found = cavityFor(shop, spec);
  const hookGrams = shop.patterns.find(({ id }) => id === found?.mold.pattern)?.grams[spec.hook];
  return headMass({
    weight: spec.weight,
    composition: metalOf(shop, spec).composition,
    hook: hookGrams === undefined ? undefined : { grams: hookGrams },
    measuredGrams: found?.cavity.measured.find(({ hook, metal }) => hook === spec.hook && metal === spec.metal)?.grams,
  });
}

/** Whether a base-hole pin is in the mold when this head is poured; null where the mold has none. */
export function hasPin(shop: Shop, spec: Spec): boolean | null {
  const pin = cavityFor(shop, spec)?.mold.pin ?? null;
  return pin === null ? null : spec.guard !== NONE;
}

/** The body of metal that is heated, baked and painted. */
export const castingOf = (shop: Shop, spec: Spec): Casting => ({
  grams: massOf(shop, spec).metalGrams,
  composition: metalOf(shop, spec).composition,
});

/** The metal of a spec. A spec that was checked names one of the shop's metals. */
export function metalOf(shop: Shop, spec: Pick<Spec, 'metal'>): Metal {
  const metal = shop.metals.find(({ id }) => id === spec.metal);
  if (metal === undefined) throw new Error(`The shop has no metal ${spec.metal}.`);
  return metal;
}
