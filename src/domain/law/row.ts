import { z } from 'zod';

/** One rule of one place about lead tackle, as data: read from the law file, checked on load, shown with its source and date. */

/** What is restricted. Selling, bringing in, and having touch the order; use is the buyer's own affair. */
export const KINDS = ['sale', 'import', 'use', 'possess'] as const;

/** What to do with an order, gravest first: refuse it, hold it for the maker, or tell the buyer. */
export const ACTS = ['refuse', 'hold', 'notice'] as const;
export type Act = (typeof ACTS)[number];

/** How the row is known: its text seen (V), reported by another source (V2), or from memory (M). */
export const TAGS = ['V', 'V2', 'M'] as const;

const place = z.string().regex(/^[A-Z]{2}(-[A-Z0-9]{1,3})?$/, 'a place as ISO 3166 writes it, such as US-NH, GB or EU');
/** A day, or only its month or year where no more is known; compared as text with full days. */
const since = z.string().regex(/^\d{4}(-\d{2}(-\d{2})?)?$/, 'YYYY-MM-DD, YYYY-MM or YYYY');
const text = z.string().trim().min(1);

/** Met by the made head: total weight with its hook, or the longest axis in inches. `over` is a lower bound, not itself included. */
const threshold = z.strictObject({
  on: z.enum(['weight-oz', 'weight-g', 'length-in']),
  compare: z.enum(['<', '<=']),
  value: z.number().positive(),
  over: z.number().nonnegative().default(0),
});
export type Threshold = Readonly<z.infer<typeof threshold>>;

export const lawRow = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]+$/),
    places: z.array(place).min(1),
    /** Waters or lands inside the place where it holds; absent where it holds in all of it. */
    within: text.optional(),
    kind: z.enum(KINDS),
    /** Whether a lead jig head falls under it. */
    coversHead: z.enum(['yes', 'no', 'unclear']),
    /** Any one met is enough; none means every size. */
    anyOf: z.array(threshold).default([]),
    /** The share of lead by mass above, or from, which the row applies. */
    lead: z
      .strictObject({ compare: z.enum(['>', '>=']), value: z.number().min(0).max(1) })
      .default({ compare: '>', value: 0 }),
    citation: text,
    /** Since when; null where none is set: a draft or a bill, not law when seen. */
    since: since.nullable(),
    /** The day on which, or the time of which, the source speaks. */
    asOf: since,
    tag: z.enum(TAGS),
    act: z.enum(ACTS),
    fact: z.strictObject({ en: text, es: text }),
  })
  .refine((row) => row.coversHead !== 'unclear' || row.act === 'hold', {
    path: ['act'],
    message: 'a row that may or may not cover a jig head must hold for the maker',
  });
export type LawRow = Readonly<z.infer<typeof lawRow>>;

/** The law file. Facts with sources and dates, never legal advice. */
export const lawSchema = z.strictObject({
  version: z.literal(1),
  about: text,
  rows: z
    .array(lawRow)
    .refine((rows) => new Set(rows.map(({ id }) => id)).size === rows.length, 'rows with ids that differ'),
});
export type Law = z.infer<typeof lawSchema>;
