import type { Day } from '../craft/time.ts';
import type { ItemId, Shop, StockItem } from '../shop/shop.ts';
import { deliveriesOf, type Delivery, type Shelf } from './availability.ts';
import { normalQuantile, orderQuantity, reorderPoint } from './reorder.ts';
import { demandOf, weeksOf, type Usage } from './usage.ts';

/** An item to buy: how many, how many of them accepted orders already wait for, and where its reorder point lies. */
export type Purchase = Readonly<{
  item: ItemId;
  count: number;
  /** Short for orders that are accepted. */
  needed: number;
  onHand: number;
  reserved: number;
  /** On its way and not overdue. */
  coming: number;
  /** Deliveries that should be here, which are not counted on: the supplier has to be asked, or it is ordered anew. */
  overdue: readonly Delivery[];
  reorderAt: number;
  /** In minor units; null where the shop file has no cost. */
  cents: number | null;
}>;

/** What to buy of one supplier; null for items that name none. */
export type Basket = Readonly<{ supplier: string | null; items: readonly Purchase[] }>;

/** What the bench has used, and the day the book began. */
export type Use = Readonly<{ usage: Usage; began: Day | null }>;

/** What should be ordered now, by supplier; what accepted orders wait for comes first. */
export function toBuy(shop: Shop, shelf: Shelf, use: Use): readonly Basket[] {
  const wanted = shop.stock.flatMap((row) => {
    const purchase = purchaseOf(shop, shelf, use, row);
    return purchase === undefined ? [] : [{ supplier: row.supplier ?? null, purchase }];
  });
  const suppliers = [...new Set(wanted.map(({ supplier }) => supplier))];
  return suppliers
    .map((supplier) => ({
      supplier,
      items: wanted
        .filter((one) => one.supplier === supplier)
        .map(({ purchase }) => purchase)
        .sort((a, b) => Number(b.needed > 0) - Number(a.needed > 0)),
    }))
    .sort((a, b) => neededIn(b) - neededIn(a));
}

const neededIn = ({ items }: Basket): number => items.filter(({ needed }) => needed > 0).length;

/** What to order of one item; undefined while there is enough of it. */
function purchaseOf(shop: Shop, shelf: Shelf, use: Use, row: StockItem): Purchase | undefined {
  const { item } = row;
  const onHand = shelf.onHand[item] ?? 0;
  const reserved = shelf.reserved[item] ?? 0;
  const deliveries = deliveriesOf(shop, shelf, item);
  const overdue = deliveries.filter((one) => one.overdue > 0);
  const coming = deliveries.reduce((sum, { count, overdue: days }) => sum + (days > 0 ? 0 : count), 0);
  const free = onHand + coming - reserved;
  const needed = Math.max(0, -free);
  const { at, lot } = levels(shop, row, use, shelf.today);
  if (needed === 0 && (at === 0 || free > at)) return undefined;
  // Just to the reorder point it would be on the list again.
  const above = at === 0 ? 0 : at - free + 1;
  const count = inPacks(Math.max(lot, above, needed), row.packOf ?? 1);
  const cents = row.costPerThousand === undefined ? null : Math.round((count * row.costPerThousand) / 1000);
  return { item, count, needed, onHand, reserved, coming, overdue, reorderAt: at, cents };
}

/** Whole weeks from which on the usual use can be told; before that a week or two would be taken for the year. */
export const WEEKS_LEAST = 4;

/** The reorder point and the economic quantity of an item, in whole pieces or grams; both nothing for what was never used, or not long enough. */
function levels(
  { buying }: Shop,
  row: StockItem,
  { usage, began }: Use,
  today: Day,
): Readonly<{ at: number; lot: number }> {
  if (weeksOf(usage, began, today) < WEEKS_LEAST) return { at: 0, lot: 0 };
  const { daily, sigma } = demandOf(usage, row.item, began, today);
  const lead = row.leadDays ?? buying.leadDays;
  const z = normalQuantile(buying.servicePercent / 100);
  const at = reorderPoint({ demand: daily, sigma, lead, leadSigma: buying.leadSpreadDays, z });
  const keeping = ((row.costPerThousand ?? 0) / 1000) * (buying.holding / 100_000);
  const best =
    keeping > 0 ? orderQuantity({ yearly: daily * 365, perOrder: buying.orderCents, keeping }) : daily * MONTH;
  return { at: Math.ceil(at), lot: Math.ceil(Math.min(best, daily * YEAR)) };
}

/** Without a cost to weigh, a month's use is bought; nothing is bought for longer than a year. */
const MONTH = 30;
const YEAR = 365;

const inPacks = (count: number, packOf: number): number => Math.ceil(count / packOf - 1e-9) * packOf;
