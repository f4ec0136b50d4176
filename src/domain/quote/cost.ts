import { total, type Cents, type Rate } from '../craft/money.ts';
import type { Minutes } from '../craft/time.ts';
import type { Line } from '../order/spec.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import { needsOf } from '../stock/needs.ts';
import { inclusiveTax } from './excise.ts';
import { costLine, type LineCost } from './lineCost.ts';
import type { Money } from './quote.ts';

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

function uncosted(shop: Shop, lines: readonly Line[]): readonly ItemId[] {
  const used = new Set(lines.flatMap((line) => Object.keys(needsOf(shop, line))));
  return shop.stock
    .filter(({ item, costPerThousand }) => used.has(item) && costPerThousand === undefined)
    .map(({ item }) => item);
}
