import { z } from 'zod';
import type { Instant } from '../craft/time.ts';
import type { ItemId } from '../shop/shop.ts';
import type { Amounts } from './needs.ts';

/** Why a count on the shelf changed: used at the bench, taken back there, a delivery put away, or said by the maker. */
export const JOURNAL_WHYS = ['used', 'taken-back', 'arrived', 'said'] as const;
export type JournalWhy = (typeof JOURNAL_WHYS)[number];

/** One change of one item: who, when, why, by how much, and what there was afterwards. */
export const journalRowSchema = z.strictObject({
  at: z.number(),
  /** The person; null for the clock. */
  by: z.number().int().nullable(),
  item: z.string(),
  change: z.number(),
  onHand: z.number(),
  why: z.enum(JOURNAL_WHYS),
  /** The act at the bench, or the maker's own words. */
  ref: z.string().max(80),
});
export type JournalRow = Readonly<z.infer<typeof journalRowSchema>>;

/** Rows that are kept at hand; older ones fall off the end. */
export const JOURNAL_MOST = 300;

/** What caused a change of the shelf. */
export type Cause = Readonly<{ at: Instant; by: number | null; why: JournalWhy; ref: string }>;

/** The journal with a row for every item whose count differs, oldest first; rows are only ever added. */
export function journaled(
  journal: readonly JournalRow[],
  before: Amounts,
  after: Amounts,
  { at, by, why, ref }: Cause,
): readonly JournalRow[] {
  const rows = changedItems(before, after).map((item) => {
    const onHand = after[item] ?? 0;
    return { at, by, item, change: onHand - (before[item] ?? 0), onHand, why, ref: ref.slice(0, REF_MOST) };
  });
  return rows.length === 0 ? journal : [...journal, ...rows].slice(-JOURNAL_MOST);
}

const REF_MOST = 80;

export const changedItems = (before: Amounts, after: Amounts): readonly ItemId[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
    (item) => (before[item] ?? 0) !== (after[item] ?? 0),
  );
