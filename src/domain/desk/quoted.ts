import { z } from 'zod';
import { lineSchema } from '../order/spec.ts';
import { moneySchema } from '../quote/quote.ts';
import { promiseSchema } from './order.ts';

const until = z.number();

/** Why the ship day is what it is, in order of time, as the plan says it. */
export const becauseSchema = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('material'), until }),
  z.strictObject({ code: z.literal('hands'), until, with: z.array(z.string()) }),
  z.strictObject({ code: z.literal('hours'), until }),
  z.strictObject({ code: z.literal('oven'), until }),
  z.strictObject({ code: z.literal('lag'), do: z.string(), until }),
  z.strictObject({ code: z.literal('work'), do: z.string(), until }),
  /** Days kept in hand, so that a bad evening does not break the promise. */
  z.strictObject({ code: z.literal('spare'), day: z.iso.date() }),
  z.strictObject({ code: z.literal('post'), day: z.iso.date(), by: z.number() }),
]);
export type Because = Readonly<z.infer<typeof becauseSchema>>;

/** Priced lines, postage, tax, total, the promised ship day with its reason, and until when all that holds. */
export const quoteSchema = z.strictObject({
  draft: z.string(),
  /** The draft's version that was priced. */
  version: z.number().int(),
  lines: z.array(lineSchema).min(1),
  shipTo: z.string(),
  money: moneySchema,
  promise: promiseSchema,
  because: z.array(becauseSchema),
  goodUntil: z.number(),
});
export type Quote = Readonly<z.infer<typeof quoteSchema>>;
