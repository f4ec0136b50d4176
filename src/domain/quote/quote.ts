import { z } from 'zod';
import { shareOf, total, type Rate } from '../craft/money.ts';
import type { Line } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import { covers, postageFor } from './postage.ts';
import { PRICE_PARTS, priceLine } from './price.ts';

const cents = z.number().int().min(0);

/** The money of an order: priced lines, what is added, and the sum, all in minor units. */
export const moneySchema = z.strictObject({
  lines: z.array(
    z.strictObject({
      each: cents,
      parts: z.array(z.strictObject({ part: z.enum(PRICE_PARTS), cents })),
      quantity: z.number().int(),
      off: cents,
      total: cents,
    }),
  ),
  /** What brings a small order up to the shop's least order. */
  topUp: cents,
  /** What is charged more because it is needed soon. */
  rush: cents.default(0),
  postage: z.strictObject({ region: z.string(), grams: z.number().int(), parcels: z.number().int(), cents }),
  tax: cents,
  /** The sales tax's rate; absent in what was written before it was. */
  taxRate: z.number().int().min(0).optional(),
  total: cents,
});
export type Money = Readonly<z.infer<typeof moneySchema>>;

/** What an order costs sent to a place; undefined where the shop file has no postage for it.
 *  Sales tax is on the heads, not on separately charged postage, and is rounded once an order. `rushed` is the share charged more for haste. */
export function moneyFor(shop: Shop, lines: readonly Line[], place: string, rushed: Rate = 0): Money | undefined {
  const postage = postageFor(shop, lines, place);
  if (postage === undefined) return undefined;
  const priced = lines.map((line) => priceLine(shop, line));
  const heads = total(priced.map((line) => line.total));
  const topUp = Math.max(0, shop.prices.minimumOrder - heads);
  const rate = taxRateAt(shop, place);
  const rush = shareOf(heads, rushed);
  const tax = shareOf(heads + topUp + rush, rate);
  return {
    lines: priced.map((line) => ({ ...line, parts: [...line.parts] })),
    topUp,
    rush,
    postage,
    tax,
    taxRate: rate,
    total: heads + topUp + rush + postage.cents + tax,
  };
}

/** The sales tax at a place; none where the shop file names none. */
export const taxRateAt = ({ salesTax }: Shop, place: string): Rate =>
  salesTax.find((row) => covers(row.place, place))?.rate ?? 0;
