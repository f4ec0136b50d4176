import { shareOf, total, type Cents } from '../craft/money.ts';
import type { Line } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import { BARE, NONE } from '../shop/words.ts';
import { costLine } from './lineCost.ts';

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

/** The price of a line in minor units, by the shop's rule. Rounded once, on what the number takes off.
 *  More heads never cost less: just below a break the line costs what the break's number would, if that is less. */
export function priceLine(shop: Shop, line: Line): LinePrice {
  const { quantity } = line;
  const parts = RULES[shop.prices.rule].parts(shop, line);
  const each = total(parts.map(({ cents }) => cents));
  const more = shop.prices.breaks.filter(({ from }) => from > quantity);
  const atBreaks = more.map(({ from }) => discounted(shop, { ...line, quantity: from }));
  const lineTotal = Math.min(discounted(shop, line), ...atBreaks);
  return { each, parts, quantity, off: each * quantity - lineTotal, total: lineTotal };
}

/** The most heads that cost no more than the line does: just below a break, as many as the break wants. Undefined where more cost more.
 *  @example sameFor(shop, { spec, quantity: 24 }) //=> 25 */
export function sameFor(shop: Shop, line: Line): number | undefined {
  const { total: cents } = priceLine(shop, line);
  const counts = shop.prices.breaks.map(({ from }) => from).filter((from) => from > line.quantity);
  return counts
    .filter((from) => from <= shop.orders.most && priceLine(shop, { ...line, quantity: from }).total === cents)
    .sort((a, b) => b - a)[0];
}

type Rule = Readonly<{
  parts: (shop: Shop, line: Line) => LinePrice['parts'];
  /** The line before what its number takes off: at most its parts times its heads, and never less for more heads. */
  full: (shop: Shop, line: Line) => Cents;
}>;

/** By the list a head costs what it is made of. By margin it costs its share of the line, rounded up; set-ups weigh less on a longer line. */
const RULES: Readonly<Record<Shop['prices']['rule'], Rule>> = {
  list: {
    parts: partsOf,
    full: (shop, line) => total(partsOf(shop, line).map(({ cents }) => cents)) * line.quantity,
  },
  margin: {
    parts: (shop, line) => [
      { part: 'head', cents: Math.ceil(marginPrice(shop, line) / line.quantity) },
      ...((line.extra ?? 0) > 0 ? [{ part: 'wish' as const, cents: line.extra ?? 0 }] : []),
    ],
    full: (shop, line) => marginPrice(shop, line) + (line.extra ?? 0) * line.quantity,
  },
};

/** The least price that leaves the shop's margin over once its cost and the excise tax in it are paid: P = C / (1 − m − t),
 *  where t = 0.1·f / (1 + 0.1·f) is the tax in a price that includes it. */
export function marginPrice(shop: Shop, line: Line): Cents {
  const share = shop.excise?.share ?? 0;
  const left = (100_000 - shop.prices.margin) * (1000 + share) - 100_000 * share;
  return Math.ceil((costLine(shop, line).total * 100_000 * (1000 + share)) / left);
}

/** What one head is made of in money; parts that cost nothing are left out, except the head. */
function partsOf({ prices }: Shop, { spec, extra = 0 }: Line): LinePrice['parts'] {
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
function discounted(shop: Shop, line: Line): Cents {
  const { breaks, rule } = shop.prices;
  const off = Math.max(0, ...breaks.filter(({ from }) => line.quantity >= from).map(({ off }) => off));
  const full = RULES[rule].full(shop, line);
  return full - shareOf(full, off);
}
