import { shareOf, total, type Cents } from '../craft/money.ts';
import type { Line, Spec } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import { BARE, NONE } from '../shop/words.ts';

/** What a line costs and of what that is made. `off` is what the quantity takes off; it is never below nothing. */
export type LinePrice = Readonly<{
  each: Cents;
  parts: readonly Readonly<{ part: PricePart; cents: Cents }>[];
  quantity: number;
  off: Cents;
  total: Cents;
}>;

export const PRICE_PARTS = ['head', 'paint', 'guard', 'keeper', 'dressing', 'metal', 'wish'] as const;
export type PricePart = (typeof PRICE_PARTS)[number];

/** The price of a line in minor units. Rounded once, on what the quantity takes off.
 *  More heads never cost less: just below a break the line costs what the break's number would, if that is less. */
export function priceLine(shop: Shop, { spec, quantity, extra = 0 }: Line): LinePrice {
  const parts = partsOf(shop, spec, extra);
  const each = total(parts.map(({ cents }) => cents));
  const atBreaks = shop.prices.breaks
    .filter(({ from }) => from > quantity)
    .map(({ from }) => discounted(shop, each, from));
  const lineTotal = Math.min(discounted(shop, each, quantity), ...atBreaks);
  return { each, parts, quantity, off: each * quantity - lineTotal, total: lineTotal };
}

/** What one head is made of in money; parts that cost nothing are left out, except the head. */
function partsOf({ prices }: Shop, spec: Spec, extra: Cents): LinePrice['parts'] {
  const cents: Readonly<Record<PricePart, Cents>> = {
    head: prices.heads[spec.style]?.[spec.weight] ?? 0,
    paint: spec.paint === BARE ? 0 : prices.paint,
    guard: spec.guard === NONE ? 0 : prices.guard,
    keeper: spec.keeper === 'wire' ? prices.keeper : 0,
    dressing: prices.dressings[spec.dressing] ?? 0,
    metal: prices.metals[spec.metal] ?? 0,
    wish: extra,
  };
  return PRICE_PARTS.filter((part) => part === 'head' || cents[part] > 0).map((part) => ({ part, cents: cents[part] }));
}

/** The whole line at the break that its number reaches. */
function discounted({ prices }: Shop, each: Cents, quantity: number): Cents {
  const off = Math.max(0, ...prices.breaks.filter(({ from }) => quantity >= from).map(({ off }) => off));
  return each * quantity - shareOf(each * quantity, off);
}
