import { hookRank } from '../craft/hook.ts';
import { ounces } from '../craft/weight.ts';
import type { Cavity, Mold, Shop } from '../shop/shop.ts';
import { BARE, NONE, type SpecSlot } from '../shop/words.ts';
import { ovenRefuses } from './oven.ts';
import type { PartialSpec } from './spec.ts';
import { wordsAgreed } from './agreed.ts';

/** Why slots of a spec do not go together, with what would. */
export type Conflict =
  | Readonly<{
      code: 'no-such-weight';
      slots: readonly SpecSlot[];
      style: string;
      weight: string;
      weights: readonly string[];
    }>
  | Readonly<{ code: 'weight-unknown'; slots: readonly SpecSlot[]; weight: string; weights: readonly string[] }>
  | Readonly<{ code: 'hook-does-not-fit'; slots: readonly SpecSlot[]; hook: string; fits: readonly string[] }>
  | Readonly<{ code: 'no-guard-hole'; slots: readonly SpecSlot[]; style: string }>
  | Readonly<{ code: 'guard-too-thick'; slots: readonly SpecSlot[]; guard: string; pin: string }>
  | Readonly<{
      code: 'keeper-not-in-mold';
      slots: readonly SpecSlot[];
      style: string;
      keeper: string;
      keepers: readonly string[];
    }>
  | Readonly<{ code: 'takes-no-dressing'; slots: readonly SpecSlot[]; style: string }>
  | Readonly<{ code: 'melts-in-oven'; slots: readonly SpecSlot[]; metal: string; solidus: number; oven: number }>
  | Readonly<{ code: 'not-together'; slots: readonly SpecSlot[] }>;

type Rule = (shop: Shop, spec: PartialSpec) => Conflict | undefined;

/** Everything that keeps the stated slots from being cast together, the plainest reason first; empty when some mold can do it. */
export function conflicts(shop: Shop, spec: PartialSpec): readonly Conflict[] {
  const found = RULES.map((rule) => rule(shop, spec)).filter((conflict) => conflict !== undefined);
  return found.length > 0 || castable(shop, spec)
    ? found
    : [{ code: 'not-together', slots: MOLD_SLOTS.filter((slot) => spec[slot]) }];
}

/** The mold and cavity that casts the stated slots; the first one of the shop file if several do. */
export function cavityFor(shop: Shop, spec: PartialSpec): Readonly<{ mold: Mold; cavity: Cavity }> | undefined {
  for (const mold of shop.molds) {
    if (!moldTakes(shop, mold, spec)) continue;
    const cavity = mold.cavities.find((cavity) => cavityTakes(cavity, spec));
    if (cavity) return { mold, cavity };
  }
  return undefined;
}

const MOLD_SLOTS = ['style', 'weight', 'hook', 'keeper', 'guard', 'dressing'] as const;

const RULES: readonly Rule[] = [
  function weightIsCast(shop, { style, weight }) {
    if (weight === undefined) return undefined;
    const weights = weightsOf(shop, style);
    if (weights.includes(weight)) return undefined;
    return style === undefined
      ? { code: 'weight-unknown', slots: ['weight'], weight, weights }
      : { code: 'no-such-weight', slots: ['weight', 'style'], style, weight, weights };
  },
  function hookFits(shop, { style, weight, hook }) {
    if (hook === undefined) return undefined;
    const fits = hooksOf(shop, style, weight);
    if (fits.length === 0 || fits.includes(hook)) return undefined;
    return { code: 'hook-does-not-fit', slots: ['hook', 'weight', 'style'], hook, fits };
  },
  function guardHasHole(shop, { style, guard }) {
    if (style === undefined || guard === undefined || guard === NONE) return undefined;
    return moldsOf(shop, style).some(({ pin }) => pin !== null)
      ? undefined
      : { code: 'no-guard-hole', slots: ['guard', 'style'], style };
  },
  function guardFitsHole(shop, { style, guard }) {
    const diameter = shop.guards.find(({ id }) => id === guard)?.diameter;
    const pins = moldsOf(shop, style).flatMap(({ pin }) => pin ?? []);
    if (guard === undefined || diameter === undefined || pins.length === 0 || pins.includes(diameter)) return undefined;
    return { code: 'guard-too-thick', slots: ['guard'], guard, pin: pins[0] ?? '' };
  },
  function keeperIsCast(shop, { style, keeper }) {
    if (style === undefined || keeper === undefined) return undefined;
    const keepers = [...new Set(moldsOf(shop, style).flatMap(({ keepers }) => keepers))];
    return keepers.includes(keeper)
      ? undefined
      : { code: 'keeper-not-in-mold', slots: ['keeper', 'style'], style, keeper, keepers };
  },
  function dressingHasCollar(shop, { style, dressing }) {
    if (style === undefined || dressing === undefined || dressing === NONE) return undefined;
    return moldsOf(shop, style).some((mold) => mold.dressing)
      ? undefined
      : { code: 'takes-no-dressing', slots: ['dressing', 'style'], style };
  },
  function metalStandsOven(shop, { metal, paint }) {
    if (metal === undefined || paint === undefined || paint === BARE) return undefined;
    const solidus = ovenRefuses(shop, metal);
    return solidus === undefined
      ? undefined
      : { code: 'melts-in-oven', slots: ['metal', 'paint'], metal, solidus, oven: shop.oven.celsius };
  },
];

const castable = (shop: Shop, spec: PartialSpec): boolean => cavityFor(shop, spec) !== undefined;

function moldTakes(shop: Shop, mold: Mold, { style, guard, keeper, dressing }: PartialSpec): boolean {
  return (
    (style === undefined || mold.style === style) &&
    (keeper === undefined || mold.keepers.includes(keeper)) &&
    (dressing === undefined || dressing === NONE || mold.dressing) &&
    (guard === undefined ||
      guard === NONE ||
      (wordsAgreed(guard) !== undefined && mold.pin !== null) ||
      mold.pin === shop.guards.find(({ id }) => id === guard)?.diameter)
  );
}

const cavityTakes = (cavity: Cavity, { weight, hook }: PartialSpec): boolean =>
  (weight === undefined || cavity.weight === weight) && (hook === undefined || cavity.hooks.includes(hook));

const moldsOf = (shop: Shop, style: string | undefined): readonly Mold[] =>
  shop.molds.filter((mold) => style === undefined || mold.style === style);

const weightsOf = (shop: Shop, style: string | undefined): readonly string[] =>
  [...new Set(moldsOf(shop, style).flatMap(({ cavities }) => cavities.map(({ weight }) => weight)))].sort(
    (a, b) => ounces(a) - ounces(b),
  );

const hooksOf = (shop: Shop, style: string | undefined, weight: string | undefined): readonly string[] =>
  [
    ...new Set(
      moldsOf(shop, style)
        .flatMap(({ cavities }) => cavities)
        .filter((cavity) => weight === undefined || cavity.weight === weight)
        .flatMap(({ hooks }) => hooks),
    ),
  ].sort((a, b) => hookRank(a) - hookRank(b));
