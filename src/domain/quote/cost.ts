import { shareOf, total, type Cents, type Rate } from '../craft/money.ts';
import type { Minutes } from '../craft/time.ts';
import type { Line, Spec } from '../order/spec.ts';
import { headsToPour, routing } from '../plan/routing.ts';
import { cavityFor } from '../order/rules.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { needsOf, type Amounts } from '../stock/needs.ts';
import { inclusiveTax } from './excise.ts';
import type { Money } from './quote.ts';

/** What a line costs to make. Each part is rounded once, half up, and the total is their sum. */
export type LineCost = Readonly<{
  /** Metal, hooks, powder and all else that ends in a head, expected scrap and dross included. */
  material: Cents;
  packaging: Cents;
  hands: Cents;
  overhead: Cents;
  total: Cents;
  minutes: Minutes;
  steps: readonly Readonly<{ step: Step; minutes: Minutes }>[];
}>;

/** The cost of a line that is made by itself: sessions shared with other lines make it less.
 *  An item without a cost in the shop file costs nothing here; `uncosted` names those. */
export function costLine(shop: Shop, line: Line): LineCost {
  const needs = Object.entries(needsOf(shop, line));
  const material = centsOf(shop, Object.fromEntries(needs.filter(([item]) => !isPackaging(item))));
  const packaging = centsOf(shop, Object.fromEntries(needs.filter(([item]) => isPackaging(item))));
  const steps = handsBySteps(shop, line);
  const minutes = Math.round(steps.reduce((sum, one) => sum + one.minutes, 0));
  const hands = Math.round((minutes * shop.costing.hourCents) / 60);
  const overhead = shareOf(material + packaging + hands, shop.costing.overhead);
  return { material, packaging, hands, overhead, total: material + packaging + hands + overhead, minutes, steps };
}

/** What an order brings after its costs. Postage and sales tax only pass through, so they are on neither side. */
export type OrderCost = Readonly<{
  lines: readonly LineCost[];
  /** Heads and what brings them up to the least order. */
  price: Cents;
  excise: Cents;
  cost: Cents;
  margin: Cents;
  /** The margin's share of the price, below nothing for a loss; nothing where the price is nothing. */
  share: Rate;
  minutes: Minutes;
  /** Below the shop's floor. */
  thin: boolean;
  uncosted: readonly ItemId[];
}>;

export function costOrder(shop: Shop, lines: readonly Line[], money: Money, adjusted: Cents = 0): OrderCost {
  const costs = lines.map((line) => costLine(shop, line));
  const price = soldFor(money) + adjusted;
  const excise = shop.excise === null ? 0 : inclusiveTax(price, shop.excise.share);
  const cost = total(costs.map((one) => one.total)) + excise;
  const share = price <= 0 ? 0 : Math.round(((price - cost) / price) * 100_000);
  return {
    lines: costs,
    price,
    excise,
    cost,
    margin: price - cost,
    share,
    minutes: costs.reduce((sum, one) => sum + one.minutes, 0),
    thin: share < shop.costing.marginFloor,
    uncosted: uncosted(shop, lines),
  };
}

/** What the heads were sold for, without what only passes through. */
export const soldFor = (money: Money): Cents => total(money.lines.map((line) => line.total)) + money.topUp + money.rush;

/** Money for amounts off the shelf, rounded once. */
export const centsOf = ({ stock }: Shop, amounts: Amounts): Cents =>
  Math.round(
    Object.entries(amounts).reduce(
      (sum, [item, amount]) => sum + amount * (stock.find((row) => row.item === item)?.costPerThousand ?? 0),
      0,
    ) / 1000,
  );

/** Minutes of hands at each step of a line; the oven and the cure take none. Pouring counts shots. */
function handsBySteps(shop: Shop, { spec, quantity }: Line): LineCost['steps'] {
  const cast = headsToPour(shop, spec, quantity);
  return routing(spec).flatMap((step) => {
    const minutes = handsAt(shop, spec, step, step === 'pour' ? cast : quantity);
    return minutes === 0 ? [] : [{ step, minutes }];
  });
}

function handsAt(shop: Shop, spec: Spec, step: Step, heads: number): Minutes {
  if (step === 'cool' || step === 'cure' || step === 'post') return 0;
  if (step === 'bake') return Math.ceil(heads / shop.oven.rack) * (shop.steps.bake.load + shop.steps.bake.unload);
  const { setup, each } = shop.steps[step];
  const strokes = step === 'pour' ? Math.ceil(heads / (cavityFor(shop, spec)?.cavity.count ?? 1)) : heads;
  return setup + each * strokes;
}

const isPackaging = (item: ItemId): boolean => item === 'bag' || item === 'label';

function uncosted(shop: Shop, lines: readonly Line[]): readonly ItemId[] {
  const used = new Set(lines.flatMap((line) => Object.keys(needsOf(shop, line))));
  return shop.stock
    .filter(({ item, costPerThousand }) => used.has(item) && costPerThousand === undefined)
    .map(({ item }) => item);
}
