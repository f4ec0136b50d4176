import { z } from 'zod';
import type { Instant } from '../craft/time.ts';
import type { ItemId } from '../shop/shop.ts';
import type { Amounts } from './needs.ts';

/** Why a count on the shelf changed: used at the bench, taken back there, a delivery put away, said by the maker,
 *  or found at the bench beyond what was counted, for what was used must have been there. */
export const JOURNAL_WHYS = ['used', 'taken-back', 'arrived', 'said', 'uncounted'] as const;
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

/** The journal with a row for every item whose count differs, oldest first; rows are only ever added.
 *  Where the bench used more than was counted, `used` says so, and the difference stands in a row of its own. */
export function journaled(
  journal: readonly JournalRow[],
  before: Amounts,
  after: Amounts,
  cause: Cause,
  used: Amounts = lessOf(before, after),
): readonly JournalRow[] {
  const items = new Set([...changedItems(before, after), ...Object.keys(used)]);
  const rows = [...items].flatMap((item) => rowsOf(item, before[item] ?? 0, after[item] ?? 0, used[item] ?? 0, cause));
  return rows.length === 0 ? journal : [...journal, ...rows].slice(-JOURNAL_MOST);
}

function rowsOf(
  item: ItemId,
  before: number,
  after: number,
  used: number,
  { at, by, why, ref }: Cause,
): readonly JournalRow[] {
  const uncounted = after + used - before;
  const row = (change: number, onHand: number, reason: JournalWhy): readonly JournalRow[] =>
    change === 0 ? [] : [{ at, by, item, change, onHand, why: reason, ref: ref.slice(0, REF_MOST) }];
  return [...row(uncounted, before + uncounted, 'uncounted'), ...row(-used, after, why)];
}

/** What is less than before, item by item; negative where there is more. */
export const lessOf = (before: Amounts, after: Amounts): Amounts =>
  Object.fromEntries(changedItems(before, after).map((item) => [item, (before[item] ?? 0) - (after[item] ?? 0)]));

const REF_MOST = 80;

export const changedItems = (before: Amounts, after: Amounts): readonly ItemId[] =>
  [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
    (item) => (before[item] ?? 0) !== (after[item] ?? 0),
  );
