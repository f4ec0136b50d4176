import { z } from 'zod';
import { personId } from '../domain/desk/person.ts';

/** What a letter is for decides what happens when nobody knows whether it arrived. */
export const LETTER_KINDS = ['answer', 'confirmation', 'reminder', 'digest', 'news'] as const;
export type LetterKind = (typeof LETTER_KINDS)[number];

export const buttonSchema = z.strictObject({ label: z.string().min(1).max(100), data: z.string().min(1).max(64) });
export type Button = z.infer<typeof buttonSchema>;

/** A picture that is drawn when the letter goes out, from values that are kept with it. */
export const pictureSchema = z.strictObject({
  kind: z.literal('head'),
  spec: z.record(z.string(), z.string()),
  caption: z.array(z.string()),
});
export type Picture = z.infer<typeof pictureSchema>;

/** A text file that goes along with a letter, whole. */
export const documentSchema = z.strictObject({
  name: z.string().regex(/^[\w.-]{1,64}$/),
  text: z.string().min(1).max(4_000_000),
});
export type LetterDocument = z.infer<typeof documentSchema>;

/** One message to send: words already chosen, in the person's language, ready to go out under a key that never changes. */
export const letterSchema = z.strictObject({
  key: z.string().min(1),
  to: personId,
  kind: z.enum(LETTER_KINDS),
  text: z.string().min(1).max(4096),
  rows: z.array(z.array(buttonSchema)),
  picture: pictureSchema.nullable(),
  /** A file, sent instead of a picture with the text under it. */
  document: documentSchema.optional(),
  /** Cards with one slot follow each other: the newer replaces the older in that chat. */
  slot: z.string().nullable(),
  /** Whether the newer card is written over the older one or sent below it (the older one then loses its buttons). */
  place: z.enum(['over', 'below']),
  queuedAt: z.number(),
  /** Put aside until then; 0 for at once. */
  notBefore: z.number(),
  /** How often it may have arrived: calls that went out and were not surely refused. */
  attempts: z.number().int().min(0),
  /** Set just before the call goes out, so that after a crash it is known which letter is in doubt. */
  sendingSince: z.number().nullable(),
});
export type Letter = Readonly<z.infer<typeof letterSchema>>;

/** What is said before it is queued. A `key` of its own (`digest/2026-11-25`) makes it go out once, whoever asks for it again. */
export type LetterDraft = Omit<Letter, 'key' | 'queuedAt' | 'notBefore' | 'attempts' | 'sendingSince'> &
  Readonly<{ key?: string }>;
