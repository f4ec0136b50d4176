import { shareOf, type Cents } from '../craft/money.ts';
import type { Minutes } from '../craft/time.ts';
import type { Line, Spec } from '../order/spec.ts';
import { cavityFor } from '../order/rules.ts';
import { headsToPour, routing } from '../plan/routing.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import type { Step } from '../shop/words.ts';
import { needsOf, type Amounts } from '../stock/needs.ts';

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
