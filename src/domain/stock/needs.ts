import { gluePlan } from '../craft/epoxy.ts';
import { headsToCast, meltFor } from '../craft/melt.ts';
import { powderFor } from '../craft/powder.ts';
import { castingOf } from '../order/head.ts';
import { cavityFor } from '../order/rules.ts';
import type { Line } from '../order/spec.ts';
import { wordsAgreed } from '../order/agreed.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import { BARE, NONE } from '../shop/words.ts';

/** Amounts by stock item, in whole pieces or grams. */
export type Amounts = Readonly<Record<ItemId, number>>;

/** Heads that go into one bag; common practice, no source. */
const HEADS_A_BAG = 25;

/** Everything that a line uses up, expected scrap and dross included, rounded up to whole pieces and grams. */
export const needsOf = (shop: Shop, { spec, quantity }: Line): Amounts =>
  needsFor(shop, { spec, quantity }, headsToCast(quantity, shop.casting.scrapShare));

/** The same where `cast` heads are cast and painted to have as many good ones as the line says. */
export function needsFor(shop: Shop, { spec, quantity }: Line, cast: number): Amounts {
  const found = cavityFor(shop, spec);
  if (found === undefined) return {};
  const casting = castingOf(shop, spec);
  const melt = meltFor({ heads: quantity, cavities: found.cavity.count, metalGrams: casting.grams }, shop.casting);
  return amounts([
    [`metal:${spec.metal}`, melt.usedGrams],
    [`hook:${found.mold.pattern}:${spec.hook}`, cast],
    ...(spec.keeper === 'wire' ? [['keeper:wire', cast] as const] : []),
    ...(spec.paint === BARE || wordsAgreed(spec.paint)
      ? []
      : [[`paint:${spec.paint}`, powderFor(casting, cast, shop.powder)] as const]),
    ...(spec.guard === NONE
      ? []
      : [
          ...(wordsAgreed(spec.guard) ? [] : [[`guard:${spec.guard}`, quantity] as const]),
          ['epoxy', glueGrams(shop, quantity)] as const,
        ]),
    ...dressingNeeds(shop, spec.dressing, quantity),
    ['bag', quantity / HEADS_A_BAG],
    ['label', 1],
  ]);
}

/** The sum of several needs, item by item. */
export const addAmounts = (all: readonly Amounts[]): Amounts => amounts(all.flatMap((one) => Object.entries(one)));

/** A skirt goes on a collar, so it uses both. */
function dressingNeeds(shop: Shop, dressing: string, quantity: number): readonly (readonly [ItemId, number])[] {
  if (dressing === NONE) return [];
  const collar = shop.dressings.find(({ kind }) => kind === 'collar')?.id;
  const pieces = new Set([...(wordsAgreed(dressing) ? [] : [dressing]), ...(collar === undefined ? [] : [collar])]);
  return [...pieces].map((piece) => [`dressing:${piece}`, quantity] as const);
}

/** Mixed epoxy weighs a little more than water: 1.15 g/cm³, from memory of typical data sheets. */
const EPOXY_DENSITY = 1.15;

function glueGrams(shop: Shop, guards: number): number {
  const plan = gluePlan(guards, shop.epoxy.atCelsius, shop.epoxy);
  return plan.ok ? plan.cm3 * EPOXY_DENSITY : 0;
}

function amounts(entries: readonly (readonly [ItemId, number])[]): Amounts {
  const sums: Record<ItemId, number> = {};
  for (const [item, amount] of entries) sums[item] = (sums[item] ?? 0) + amount;
  return Object.fromEntries(Object.entries(sums).map(([item, amount]) => [item, Math.ceil(amount - 1e-9)]));
}
