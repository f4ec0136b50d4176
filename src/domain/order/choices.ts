import type { Shop } from '../shop/shop.ts';
import { BARE, KEEPERS, NONE, SPEC_SLOTS, type SpecSlot } from '../shop/words.ts';
import { conflicts } from './rules.ts';
import type { PartialSpec, Spec } from './spec.ts';

/** What may stand in a slot beside the slots already stated, the usual choice first.
 *  It asks the same rules as the check, so a menu never offers what a check would refuse. */
export const choicesFor = (shop: Shop, spec: PartialSpec, slot: SpecSlot): readonly string[] =>
  valuesOf(shop, spec, slot).filter((value) => conflicts(shop, { ...spec, [slot]: value }).length === 0);

/** The usual head that agrees with everything stated, or undefined when none can be made.
 *  Each open slot takes its first choice for which the rest can still be filled. */
export function usualSpec(shop: Shop, spec: PartialSpec): Spec | undefined {
  const open = SPEC_SLOTS.find((slot) => spec[slot] === undefined);
  if (open === undefined) return conflicts(shop, spec).length === 0 ? (spec as Spec) : undefined;
  for (const value of choicesFor(shop, spec, open)) {
    const whole = usualSpec(shop, { ...spec, [open]: value });
    if (whole) return whole;
  }
  return undefined;
}

/** Every word that the shop has for a slot, the usual one first; for hooks and keepers in the order of the mold. */
function valuesOf(shop: Shop, spec: PartialSpec, slot: SpecSlot): readonly string[] {
  const molds = shop.molds.filter((mold) => spec.style === undefined || mold.style === spec.style);
  const cavities = molds.flatMap((mold) => mold.cavities);
  const fitting = cavities.filter((cavity) => spec.weight === undefined || cavity.weight === spec.weight);
  const values: Record<SpecSlot, readonly string[]> = {
    style: shop.styles.map(({ id }) => id),
    weight: cavities.map(({ weight }) => weight),
    hook: fitting.flatMap(({ hooks }) => hooks),
    paint: [...shop.paints.map(({ id }) => id), BARE],
    guard: [NONE, ...shop.guards.map(({ id }) => id)],
    keeper: [...molds.flatMap(({ keepers }) => keepers), ...KEEPERS],
    dressing: [NONE, ...shop.dressings.map(({ id }) => id)],
    metal: shop.metals.map(({ id }) => id),
  };
  return [...new Set(values[slot])];
}
