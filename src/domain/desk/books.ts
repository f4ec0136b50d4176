import { decimal, type Cents } from '../craft/money.ts';
import { localDay, type Day, type Instant } from '../craft/time.ts';
import { headsOf } from '../order/spec.ts';
import { soldFor } from '../quote/cost.ts';
import { centsOf } from '../quote/lineCost.ts';
import { writeCsv, type Cell } from '../quote/csv.ts';
import { inclusiveTax } from '../quote/excise.ts';
import { balanceOf } from '../quote/payment.ts';
import type { Shop } from '../shop/shop.ts';
import { adjustedBy, soldBy, taxBy } from './month.ts';
import type { Order } from './order.ts';

/** The books as tables: what was sold, what money moved, what material went into it, and what was collected for others. */
export const BOOKS = ['orders', 'payments', 'materials', 'taxes'] as const;
export type BookKind = (typeof BOOKS)[number];

/** Days from and to, both counted in. */
export type Period = Readonly<{ from: Day; to: Day }>;

/** A table of the period as CSV, and how many rows it has. Column names stay as they are, whatever the language. */
export function bookOf(
  kind: BookKind,
  shop: Shop,
  orders: readonly Order[],
  period: Period,
): Readonly<{ text: string; rows: number }> {
  const { columns, rows } = TABLES[kind];
  const filled = rows({ shop, orders, period });
  return { text: writeCsv(columns, filled), rows: filled.length };
}

type Look = Readonly<{ shop: Shop; orders: readonly Order[]; period: Period }>;
type Table = Readonly<{ columns: readonly string[]; rows: (look: Look) => readonly (readonly Cell[])[] }>;

const TABLES: Readonly<Record<BookKind, Table>> = {
  orders: {
    columns: [
      'order',
      'state',
      'accepted',
      'promised',
      'closed',
      'ship_to',
      'heads',
      'heads_total',
      'top_up',
      'rush',
      'postage',
      'sales_tax',
      'adjusted',
      'total',
      'paid',
      'refunded',
      'due',
      'currency',
    ],
    rows: (look) => look.orders.filter((order) => isIn(look, order.acceptedAt)).map((order) => orderRow(look, order)),
  },
  payments: {
    columns: ['order', 'day', 'kind', 'amount', 'currency', 'why'],
    rows: (look) => look.orders.flatMap((order) => paymentRows(look, order)),
  },
  materials: {
    columns: ['order', 'closed', 'item', 'unit', 'amount', 'cost', 'currency'],
    rows: (look) => closedIn(look).flatMap((order) => materialRows(look, order)),
  },
  taxes: {
    columns: [
      'order',
      'closed',
      'ship_to',
      'sold_for',
      'sales_tax',
      'excise_share_percent',
      'excise_in_price',
      'currency',
    ],
    rows: (look) =>
      closedIn(look)
        .filter(({ state }) => state === 'shipped')
        .map((order) => taxRow(look, order)),
  },
};

function orderRow({ shop }: Look, order: Order): readonly Cell[] {
  const { money } = order;
  const { asked, paid, refunded, due } = balanceOf(money.total, order.ledger);
  const cents = (amount: Cents): Cell => decimal(amount, shop.currency);
  return [
    order.id,
    order.state,
    localDay(order.acceptedAt, shop.zone),
    order.promise.ships,
    order.shippedAt === null ? null : localDay(order.shippedAt, shop.zone),
    order.shipTo,
    headsOf(order.lines),
    ...[soldFor(money) - money.topUp - money.rush, money.topUp, money.rush, money.postage.cents, taxBy(order)].map(
      cents,
    ),
    ...[adjustedBy(order), asked, paid, refunded, due].map(cents),
    shop.currency,
  ];
}

const paymentRows = ({ shop, ...look }: Look, { id, ledger }: Order): readonly (readonly Cell[])[] =>
  ledger
    .filter(({ at }) => isIn({ shop, ...look }, at))
    .map(({ at, kind, cents, why }) => [
      id,
      localDay(at, shop.zone),
      kind,
      decimal(kind === 'refund' ? -cents : cents, shop.currency),
      shop.currency,
      why,
    ]);

const materialRows = ({ shop }: Look, { id, shippedAt, used }: Order): readonly (readonly Cell[])[] =>
  Object.entries(used).map(([item, amount]) => [
    id,
    localDay(shippedAt ?? 0, shop.zone),
    item,
    shop.stock.find((row) => row.item === item)?.unit ?? 'piece',
    amount,
    decimal(centsOf(shop, { [item]: amount }), shop.currency),
    shop.currency,
  ]);

/** The excise tax of one order is shown rounded; the return rounds its sum. */
function taxRow({ shop }: Look, order: Order): readonly Cell[] {
  const sold = soldBy(order);
  const share = shop.excise?.share ?? null;
  return [
    order.id,
    localDay(order.shippedAt ?? 0, shop.zone),
    order.shipTo,
    decimal(sold, shop.currency),
    decimal(taxBy(order), shop.currency),
    share,
    share === null ? null : decimal(inclusiveTax(sold, share), shop.currency),
    shop.currency,
  ];
}

const closedIn = (look: Look): readonly Order[] => look.orders.filter(({ shippedAt }) => isIn(look, shippedAt));

function isIn({ shop, period }: Look, at: Instant | null): boolean {
  if (at === null) return false;
  const day = localDay(at, shop.zone);
  return day >= period.from && day <= period.to;
}
