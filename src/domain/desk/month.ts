import type { Cents } from '../craft/money.ts';
import { localDay, type Minutes } from '../craft/time.ts';
import { headsOf } from '../order/spec.ts';
import { costOrder, soldFor } from '../quote/cost.ts';
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
  /** What was sold of each style and what an hour of it left over, best first. */
  styles: readonly Readonly<{ style: string; heads: number; revenue: Cents; marginAnHour: Cents }>[];
}>;

/** The month of these orders, open and archived. An order counts in the month of what happened to it. */
export function monthOf(shop: Shop, orders: readonly Order[], month: string): MonthFacts {
  const within = (at: number | null): boolean => at !== null && localDay(at, shop.zone).startsWith(month);
  const gone = orders.filter(({ shippedAt }) => within(shippedAt));
  const shipped = gone.filter(({ state }) => state === 'shipped');
  const costs = shipped.map((order) => costOrder(shop, order.lines, order.money, adjustedBy(order)));
  const entries = orders.flatMap(({ ledger }) => ledger).filter(({ at }) => within(at));
  return {
    month,
    accepted: orders.filter(({ acceptedAt }) => within(acceptedAt)).length,
    shipped: shipped.length,
    cancelled: gone.length - shipped.length,
    heads: shipped.reduce((sum, { lines }) => sum + headsOf(lines), 0),
    revenue: sum(costs.map(({ price }) => price)),
    material: sum(gone.map(({ used }) => centsOf(shop, used))),
    margin: sum(costs.map(({ margin }) => margin)),
    minutes: sum(costs.map(({ minutes }) => minutes)),
    onTime: shipped.filter(({ shippedAt, promise }) => localDay(shippedAt ?? 0, shop.zone) <= promise.ships).length,
    received: balanceOf(0, entries).kept,
    scrap: scrapOf(shipped),
    styles: stylesOf(shop, shipped),
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

function stylesOf(shop: Shop, orders: readonly Order[]): MonthFacts['styles'] {
  const lines = orders.flatMap(({ lines, money }) =>
    costOrder(shop, lines, money).lines.map((cost, at) => ({
      style: lines[at]?.spec.style ?? '',
      heads: lines[at]?.quantity ?? 0,
      revenue: money.lines[at]?.total ?? 0,
      margin: (money.lines[at]?.total ?? 0) - cost.total,
      minutes: cost.minutes,
    })),
  );
  return [...new Set(lines.map(({ style }) => style))]
    .map((style) => {
      const own = lines.filter((one) => one.style === style);
      const [margin, minutes] = [sum(own.map((one) => one.margin)), sum(own.map((one) => one.minutes))];
      return {
        style,
        heads: sum(own.map(({ heads }) => heads)),
        revenue: sum(own.map(({ revenue }) => revenue)),
        marginAnHour: Math.round((margin * 60) / Math.max(1, minutes)),
      };
    })
    .sort((a, b) => b.marginAnHour - a.marginAnHour);
}

/** What an order was sold for in the end, without postage and sales tax; and the sales tax on it. */
export const soldBy = ({ money, ledger }: Order): Cents => taxedBy(money, ledger).sold;
export const taxBy = ({ money, ledger }: Order): Cents => taxedBy(money, ledger).tax;

const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);
