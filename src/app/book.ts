import { z } from 'zod';
import type { Day, Instant } from '../domain/craft/time.ts';
import { personId, type PersonId } from '../domain/desk/person.ts';
import { letterSchema } from './letter.ts';

/** An update that has had its effect. */
const seen = z.strictObject({ id: z.number().int(), at: z.number() });
export type Seen = Readonly<z.infer<typeof seen>>;

/** A letter's own key, kept so that the same reminder is never queued again. */
const said = z.strictObject({ key: z.string(), at: z.number() });

/** The message that shows a slot's card in a chat, and whether it is a picture. */
const card = z.strictObject({ message: z.number().int(), picture: z.boolean(), at: z.number() });
export type Card = Readonly<z.infer<typeof card>>;

/** A letter that was given up, and the outcome that ended it. */
const dead = z.strictObject({ letter: letterSchema, why: z.string(), at: z.number() });
export type Dead = Readonly<z.infer<typeof dead>>;

/** A finished order on its way to the archive file of its month, `2026-11`. */
const closed = z.strictObject({ id: z.string().min(1), month: z.string().regex(/^\d{4}-\d{2}$/), record: z.unknown() });
export type Closed = Readonly<{ id: string; month: string; record: unknown }>;

/** Everything that is live, written as one piece: the desk, and what keeps its words from being lost or said twice. */
export const bookSchema = <Desk>(desk: z.ZodType<Desk>) =>
  z.strictObject({
    desk,
    seen: z.array(seen),
    said: z.array(said),
    outbox: z.array(letterSchema),
    dead: z.array(dead),
    /** By `<chat>/<slot>`. */
    cards: z.record(z.string(), card),
    closing: z.array(closed),
    /** Turns that no update caused, counted so that their letters' keys are unlike. */
    unasked: z.number().int().min(0),
    /** The local day of the last backup that left this computer, and its instant. */
    backupDay: z.string().nullable(),
    backedUpAt: z.number().nullable(),
    /** People whose finished orders are still to be reduced to what the maker must keep. */
    forgetting: z.array(personId).default([]),
    /** Finished orders up to this local day have no address any more. */
    addressesUntil: z.string().nullable().default(null),
  });

export type Book<Desk> = Readonly<{
  desk: Desk;
  seen: readonly Seen[];
  said: readonly Readonly<z.infer<typeof said>>[];
  outbox: readonly z.infer<typeof letterSchema>[];
  dead: readonly Dead[];
  cards: Readonly<Record<string, Card>>;
  closing: readonly Closed[];
  unasked: number;
  backupDay: Day | null;
  backedUpAt: Instant | null;
  forgetting: readonly PersonId[];
  addressesUntil: Day | null;
}>;

export const emptyBook = <Desk>(desk: Desk): Book<Desk> => ({
  desk,
  seen: [],
  said: [],
  outbox: [],
  dead: [],
  cards: {},
  closing: [],
  unasked: 0,
  backupDay: null,
  backedUpAt: null,
  forgetting: [],
  addressesUntil: null,
});
