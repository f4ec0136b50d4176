import { z } from 'zod';
import { lineSchema } from '../order/spec.ts';
import { LANGUAGES } from '../shop/words.ts';

/** The chat platform's number for a person: up to 52 bits, never a name. */
export const personId = z.number().int().positive();
export type PersonId = z.infer<typeof personId>;

/** How many orders of a person are kept at hand; the archive has them all. */
export const PAST_ORDERS = 5;

/** Who sent something, as the platform says it. */
export type Sender = Readonly<{ id: PersonId; name: string; language: string | null }>;

/** What a typed answer of this person will be taken for, besides an order. */
const asked = z.discriminatedUnion('for', [
  z.strictObject({ for: z.literal('address'), order: z.string() }),
  z.strictObject({ for: z.literal('tracking'), order: z.string() }),
  /** About an order, where it was asked from that order's card. */
  z.strictObject({ for: z.literal('question'), order: z.string().nullable().default(null) }),
  z.strictObject({ for: z.literal('reply'), question: z.string() }),
]);
export type Asked = z.infer<typeof asked>;

const loose = z.strictObject({ said: z.string().max(1000), photos: z.array(z.string()) });
/** Words, or photos with the words under them, that have yet to find their order. */
export type Loose = Readonly<z.infer<typeof loose>>;

/** Someone the program talks with, buyer or maker. */
export const personSchema = z.strictObject({
  id: personId,
  name: z.string().max(200),
  language: z.enum(LANGUAGES),
  /** True once the platform says that this person cannot be written to. */
  unreachable: z.boolean(),
  asked: asked.nullable(),
  /** The place of the last order, offered first next time. */
  place: z.string().nullable(),
  /** The last orders, newest first: what "like last time" means, and what may be ordered again. */
  past: z.array(z.strictObject({ order: z.string(), lines: z.array(lineSchema) })).max(PAST_ORDERS),
  /** Photos that came together are answered once: the last such group. */
  album: z.string().nullable(),
  /** A message that was changed after it was answered, until the person says whether to go by it. */
  reworded: z.string().max(4096).nullable(),
  /** The question that such a group answers, if it does. */
  albumFor: z.string().nullable().default(null),
  /** What came after an order and waits to be told which order it is about. */
  loose: loose.nullable().default(null),
  seenAt: z.number(),
});
export type Person = z.infer<typeof personSchema>;
