import { z } from 'zod';
import { lotSchema } from '../bench/lot.ts';
import { lineSchema } from '../order/spec.ts';
import { entrySchema } from '../quote/payment.ts';
import { moneySchema } from '../quote/quote.ts';
import { personId } from './person.ts';

/** What the buyer was promised, and what it depends on. */
export const promiseSchema = z.strictObject({
  ships: z.iso.date(),
  /** Share of likely courses of the bench in which the day is kept. */
  confidence: z.number(),
});

export const ORDER_STATES = ['accepted', 'making', 'packed', 'shipped', 'cancelled'] as const;
export type OrderState = (typeof ORDER_STATES)[number];

/** An accepted order. Its lots say how far it is; its state is what the buyer is told. */
export const orderSchema = z.strictObject({
  id: z.string(),
  /** The draft it came from, so that a second press finds it. */
  draft: z.string(),
  buyer: personId,
  state: z.enum(ORDER_STATES),
  lines: z.array(lineSchema),
  photos: z.array(z.array(z.string())),
  /** What the buyer typed of each line, in their own words. */
  said: z.array(z.array(z.string())).default([]),
  needBy: z.iso.date().nullable(),
  shipTo: z.string(),
  /** Name and address as the buyer typed them; null until they did. */
  address: z.string().nullable(),
  money: moneySchema,
  promise: promiseSchema,
  /** A later day that the maker has told the buyer of, until the buyer says what then. */
  slip: z.iso.date().nullable().default(null),
  acceptedAt: z.number(),
  /** Set while the buyer's wish to cancel waits for the maker. */
  cancelAskedAt: z.number().nullable(),
  /** What they were told then that the shop keeps of it. */
  cancelKeeps: z.number().int().min(0).nullable().default(null),
  packedAt: z.number().nullable(),
  shippedAt: z.number().nullable(),
  tracking: z.string().nullable(),
  /** What was paid, given back and changed in price, in the order in which it happened. */
  ledger: z.array(entrySchema).default([]),
  /** Written down when it leaves the bench: what it used, and how its heads came out. */
  used: z.record(z.string(), z.number()).default({}),
  /** Its lots with their history, likewise. */
  lots: z.array(lotSchema).default([]),
  made: z
    .array(
      z.strictObject({
        style: z.string(),
        /** The mold it was cast in; the style's name in what was written before molds were. */
        mold: z.string().optional(),
        heads: z.number().int(),
        scrap: z.number().int(),
      }),
    )
    .default([]),
});
export type Order = Readonly<z.infer<typeof orderSchema>>;
