import { parted, type Cents } from '../craft/money.ts';
import { localDay, type Minutes } from '../craft/time.ts';
import { headsOf } from '../order/spec.ts';
import { costOrder, soldFor, type OrderCost } from '../quote/cost.ts';
import { centsOf } from '../quote/lineCost.ts';
import { balanceOf } from '../quote/payment.ts';
import { taxedBy } from '../quote/taxed.ts';
import type { Shop } from '../shop/shop.ts';
import type { Order } from './order.ts';

/** How a month went, by the orders that were accepted and those that shipped in it. */
export type MonthFacts = Readonly<{
  /** `2026-11`. */
  month: string;
  accepted: number;
  shipped: number;
  cancelled: number;
  /** In orders that shipped. */
  heads: number;
  revenue: Cents;
  /** What left the shelf for the orders that left the bench, cancelled ones too. */
  material: Cents;
  margin: Cents;
  /** By the shop file's minutes, not by a watch. */
  minutes: Minutes;
  /** Orders that shipped by their promised day. */
  onTime: number;
  /** Money that came in less what went back. */
  received: Cents;
  scrap: readonly Readonly<{ mold: string; heads: number; scrap: number }>[];
  /** What was sold of each style, what it left over, and what an hour of it did, best first; they add up to the month's. */
  styles: readonly Readonly<{ style: string; heads: number; revenue: Cents; margin: Cents; marginAnHour: Cents }>[];
}>;

/** The month of these orders, open and archived. An order counts in the month of what happened to it. */
export function monthOf(shop: Shop, orders: readonly Order[], month: string): MonthFacts {
  const within = (at: number | null): boolean => at !== null && localDay(at, shop.zone).startsWith(month);
  const gone = orders.filter(({ shippedAt }) => within(shippedAt));
  const shipped = gone.filter(({ state }) => state === 'shipped');
  const sales = shipped.map((order) => ({
    order,
    cost: costOrder(shop, order.lines, order.money, adjustedBy(order)),
  }));
  const of = (what: 'price' | 'margin' | 'minutes'): number => sum(sales.map(({ cost }) => cost[what]));
  const entries = orders.flatMap(({ ledger }) => ledger).filter(({ at }) => within(at));
  return {
    month,
    accepted: orders.filter(({ acceptedAt }) => within(acceptedAt)).length,
    shipped: shipped.length,
    cancelled: gone.length - shipped.length,
    heads: shipped.reduce((sum, { lines }) => sum + headsOf(lines), 0),
    revenue: of('price'),
    material: sum(gone.map(({ used }) => centsOf(shop, used))),
    margin: of('margin'),
    minutes: of('minutes'),
    onTime: shipped.filter(({ shippedAt, promise }) => localDay(shippedAt ?? 0, shop.zone) <= promise.ships).length,
    received: balanceOf(0, entries).kept,
    scrap: scrapOf(shipped),
    styles: stylesOf(sales),
  };
}

/** What was added to or taken off the price of an order's heads since, without its sales tax. */
export const adjustedBy = (order: Order): Cents => soldBy(order) - soldFor(order.money);

/** Heads and scrap by mold; most scrap by the head first. */
function scrapOf(orders: readonly Order[]): MonthFacts['scrap'] {
  const made = orders.flatMap((order) => order.made.map((one) => ({ ...one, mold: one.mold ?? one.style })));
  return [...new Set(made.map(({ mold }) => mold))]
    .map((mold) => {
      const own = made.filter((one) => one.mold === mold);
      return { mold, heads: sum(own.map(({ heads }) => heads)), scrap: sum(own.map(({ scrap }) => scrap)) };
    })
    .sort((a, b) => share(b) - share(a));
}

const share = ({ heads, scrap }: MonthFacts['scrap'][number]): number => scrap / Math.max(1, heads + scrap);

/** Each style's part of the month: what changed an order's price, and the tax in it, are shared by its lines, so the styles add up to the whole. */
function stylesOf(sales: readonly Sale[]): MonthFacts['styles'] {
  const lines = sales.flatMap(linesOf);
  return [...new Set(lines.map(({ style }) => style))]
    .map((style) => {
      const own = lines.filter((one) => one.style === style);
      const of = (what: 'heads' | 'revenue' | 'margin' | 'minutes'): number => sum(own.map((one) => one[what]));
      const [margin, minutes] = [of('margin'), of('minutes')];
      const marginAnHour = Math.round((margin * 60) / Math.max(1, minutes));
      return { style, heads: of('heads'), revenue: of('revenue'), margin, marginAnHour };
    })
    .sort((a, b) => b.marginAnHour - a.marginAnHour);
}

type Sale = Readonly<{ order: Order; cost: OrderCost }>;

function linesOf({
  order: { lines, money },
  cost,
}: Sale): readonly Readonly<Record<'heads' | 'revenue' | 'margin' | 'minutes', number> & { style: string }>[] {
  const weights = money.lines.map((line) => line.total);
  const [prices, taxes] = [parted(cost.price, weights), parted(cost.excise, weights)];
  return lines.map(({ spec, quantity }, at) => {
    const [revenue, made] = [prices[at] ?? 0, cost.lines[at]];
    const margin = revenue - (taxes[at] ?? 0) - (made?.total ?? 0);
    return { style: spec.style, heads: quantity, revenue, margin, minutes: made?.minutes ?? 0 };
  });
}

/** What an order was sold for in the end, without postage and sales tax; and the sales tax on it. */
export const soldBy = ({ money, ledger }: Order): Cents => taxedBy(money, ledger).sold;
export const taxBy = ({ money, ledger }: Order): Cents => taxedBy(money, ledger).tax;

const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);
