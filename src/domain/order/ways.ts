import { hookRank } from '../craft/hook.ts';
import { ounces } from '../craft/weight.ts';
import type { Shop } from '../shop/shop.ts';
import type { SpecSlot } from '../shop/words.ts';
import { choicesFor } from './choices.ts';
import type { WayOut } from './finding.ts';
import type { Conflict } from './rules.ts';
import type { PartialSpec } from './spec.ts';

const MOST_WAYS = 4;

/** The nearest ways out of a conflict: for each slot it touches, the values that go with all the others, nearest first. */
export function waysOut(shop: Shop, spec: PartialSpec, conflict: Conflict): readonly WayOut[] {
  const perSlot = conflict.slots.map((slot) =>
    nearestFirst(slot, spec[slot], choicesFor(shop, without(spec, slot), slot)).map((value) => ({
      put: { [slot]: value },
    })),
  );
  return interleave(perSlot).slice(0, MOST_WAYS);
}

const without = (spec: PartialSpec, slot: SpecSlot): PartialSpec =>
  Object.fromEntries(Object.entries(spec).filter(([name]) => name !== slot));

/** Weights and hooks by how far they are from what was said; words stay in the shop's order. */
function nearestFirst(slot: SpecSlot, said: string | undefined, values: readonly string[]): readonly string[] {
  const measure = MEASURE[slot];
  if (measure === undefined || said === undefined) return values;
  const distance = (value: string): number => Math.abs(measure(value) - measure(said));
  return [...values].sort((a, b) => distance(a) - distance(b));
}

const MEASURE: Partial<Record<SpecSlot, (value: string) => number>> = {
  weight: (value) => Math.log(ounces(value)),
  hook: hookRank,
};

/** One of each list in turn, so that every slot's nearest way is among the first. */
function interleave<T>(lists: readonly (readonly T[])[]): readonly T[] {
  const longest = Math.max(0, ...lists.map(({ length }) => length));
  return Array.from({ length: longest }, (_, at) => lists.flatMap((list) => list.slice(at, at + 1))).flat();
}
