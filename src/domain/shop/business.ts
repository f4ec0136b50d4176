import { z } from 'zod';

/** How the shop reckons what it spends, buys, is owed and pays in tax. A part left out stands as said here. */

const cents = z.number().int().min(0);
/** A rate in hundred-thousandths: 6.875 % is 6875. */
const rate = z.number().int().min(0).max(100_000);

/** What an hour and the roof over it cost. Nothing said: the cost of a line is its material alone. */
export const costingSettings = z.strictObject({
  /** What an hour of the maker's hands is worth. */
  hourCents: cents.default(0),
  /** Rent, power, tools, as a share of material and hands. */
  overhead: rate.default(0),
  /** An order that leaves a smaller share of its price than this is warned of. */
  marginFloor: rate.default(0),
});

/** How it is bought; every starting value is common practice, no source. */
export const buyingSettings = z.strictObject({
  /** What it costs to place an order, freight included. */
  orderCents: cents.default(1000),
  /** What a year on the shelf costs, as a share of the item's price. */
  holding: rate.default(25_000),
  /** In how many deliveries of a hundred the shelf should not run empty before it comes. */
  servicePercent: z.number().int().min(50).max(99).default(95),
  /** By how many days a supplier is usually early or late (one standard deviation). */
  leadSpreadDays: z.number().min(0).max(60).default(2),
  /** Lead time of an item that names none. */
  leadDays: z.number().int().min(0).max(365).default(10),
});

/** Federal excise tax on fishing tackle: the share of the price that is its base. Null where the shop owes none or nobody has looked yet. */
export const exciseSettings = z
  .strictObject({ share: z.union([z.literal(100), z.literal(75), z.literal(60)]) })
  .nullable();

/** What is charged more for an order that is needed soon: within so many days of asking, so much of the heads' price. */
export const rushSettings = z.strictObject({ withinDays: z.number().int().min(0).max(60), rate }).nullable();

/** How far an order's work is, for what is paid back when it is cancelled. */
export const PROGRESSES = ['waiting', 'cast', 'painted', 'packed'] as const;
export type WorkDone = (typeof PROGRESSES)[number];

export const paymentSettings = {
  /** The part of the total that is asked for before work begins. */
  deposit: rate.default(0),
  /** When the bench may begin an order: at once, once the deposit is in, or once all of it is. */
  startsWhen: z.enum(['accepted', 'deposit', 'paid']).default('accepted'),
  /** What of a line's price is paid back when it is cancelled at each stage; none of this is law, and the place may have its own. */
  credit: z
    .strictObject({
      waiting: rate.default(100_000),
      cast: rate.default(50_000),
      painted: rate.default(25_000),
      packed: rate.default(0),
    })
    .prefault({}),
};
