import { z } from 'zod';
import { personId } from '../domain/desk/person.ts';

/** What a letter is for decides what happens when nobody knows whether it arrived. */
export const LETTER_KINDS = ['answer', 'confirmation', 'reminder', 'digest', 'news'] as const;
export type LetterKind = (typeof LETTER_KINDS)[number];

export const buttonSchema = z.strictObject({ label: z.string().min(1).max(100), data: z.string().min(1).max(64) });
export type Button = z.infer<typeof buttonSchema>;

const headPictureSchema = z.strictObject({
  kind: z.literal('head'),
  spec: z.record(z.string(), z.string()),
  caption: z.array(z.string()),
});

/** Several heads in one picture, each with its own words. */
const headsPictureSchema = z.strictObject({
  kind: z.literal('heads'),
  heads: z.array(headPictureSchema.omit({ kind: true })).min(1),
});

/** A stretch of a day on the wall clock, in minutes from midnight. */
const stretch = { from: z.number().min(0).max(1440), to: z.number().min(0).max(1440) };
const weekPictureSchema = z.strictObject({
  kind: z.literal('week'),
  title: z.string(),
  days: z.array(
    z.strictObject({
      weekday: z.string(),
      date: z.string(),
      /** What stands over a day without hours. */
      off: z.string().nullable(),
      hours: z.array(z.strictObject(stretch)),
      /** Labels from the most telling to the least. */
      work: z.array(z.strictObject({ ...stretch, step: z.string(), label: z.array(z.string()) })),
      /** Whether a cure begins and ends on the day itself. */
      cures: z.array(z.strictObject({ ...stretch, begins: z.boolean(), ends: z.boolean() })),
      ships: z.array(z.string()),
      promised: z.array(z.strictObject({ order: z.string(), late: z.boolean() })),
    }),
  ),
  /** On the first day. */
  now: z.strictObject({ at: z.number().min(0).max(1440), label: z.string() }),
  /** The name of each hour of the day. */
  hours: z.array(z.string()).length(24),
  /** Steps that are shown, in words. */
  legend: z.array(z.strictObject({ step: z.string(), label: z.string() })),
  rows: z.strictObject({ ships: z.string(), promised: z.string() }),
  /** What the lines and the mark of a late order mean, where there are some. */
  cure: z.string().nullable(),
  late: z.string().nullable(),
});
export type WeekPicture = z.infer<typeof weekPictureSchema>;

/** Numbers as bars: each group's longest bar is as wide as there is room. */
const barsPictureSchema = z.strictObject({
  kind: z.literal('bars'),
  title: z.string(),
  figures: z.array(z.strictObject({ name: z.string(), value: z.string() })),
  groups: z.array(
    z.strictObject({
      title: z.string(),
      /** `share` of the longest, 0 to 1. */
      bars: z.array(z.strictObject({ label: z.string(), value: z.string(), share: z.number().min(0).max(1) })),
    }),
  ),
});
export type BarsPicture = z.infer<typeof barsPictureSchema>;

const tableSchema = z.strictObject({
  kind: z.literal('table'),
  /** `share` of the page's width. */
  columns: z.array(
    z.strictObject({ title: z.string(), align: z.enum(['left', 'right']), share: z.number().positive() }),
  ),
  rows: z.array(z.array(z.string())),
});

/** A paper that is printed when the letter goes out, from words that are kept with it. */
export const paperSchema = z.strictObject({
  name: z.string().regex(/^[\w.-]{1,64}$/),
  size: z.enum(['letter', 'a4']),
  shop: z.string(),
  title: z.string(),
  /** What stands small at the foot of each page; `{page}` and `{of}` become numbers. */
  foot: z.string(),
  pages: z.string(),
  /** Short facts under the head, each with its name. */
  facts: z.array(z.strictObject({ name: z.string(), text: z.string() })),
  blocks: z.array(
    z.discriminatedUnion('kind', [
      tableSchema,
      z.strictObject({
        kind: z.literal('sums'),
        rows: z.array(z.strictObject({ name: z.string(), amount: z.string(), weight: z.enum(['plain', 'strong']) })),
      }),
      z.strictObject({ kind: z.literal('text'), heading: z.string(), lines: z.array(z.string()) }),
    ]),
  ),
});
export type Paper = Readonly<z.infer<typeof paperSchema>>;

/** A photo that somebody sent, by the platform's id of it. */
const photoSchema = z.strictObject({ kind: z.literal('photo'), file: z.string().min(1).max(300) });

/** A paper shown as a picture. */
const sheetPictureSchema = z.strictObject({ kind: z.literal('sheet'), paper: paperSchema });

/** A picture that is drawn when the letter goes out, from values that are kept with it; or a photo that is there already. */
export const pictureSchema = z.discriminatedUnion('kind', [
  headPictureSchema,
  headsPictureSchema,
  weekPictureSchema,
  barsPictureSchema,
  sheetPictureSchema,
  photoSchema,
]);
export type Picture = z.infer<typeof pictureSchema>;
export type DrawnPicture = Exclude<Picture, Readonly<{ kind: 'photo' }>>;

/** A text file that goes along with a letter, whole. */
export const documentSchema = z.strictObject({
  name: z.string().regex(/^[\w.-]{1,64}$/),
  text: z.string().min(1).max(4_000_000),
});

/** A bill that is paid in the chat. The provider's token is no part of it, for it is a secret. */
const invoiceSchema = z.strictObject({
  title: z.string().min(1).max(32),
  description: z.string().min(1).max(255),
  /** Comes back with the payment. */
  reason: z.string().min(1).max(64),
  currency: z.string(),
  prices: z.array(z.strictObject({ label: z.string().min(1), amount: z.number().int() })).min(1),
});
export type Invoice = Readonly<z.infer<typeof invoiceSchema>>;

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
  /** A paper, sent as a file likewise. */
  paper: paperSchema.optional(),
  /** A bill, sent in place of the words where the program can take payments. */
  invoice: invoiceSchema.optional(),
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
