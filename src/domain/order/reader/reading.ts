import type { Day } from '../../craft/time.ts';
import type { LineSlot } from '../../shop/words.ts';

/** What was said of one line; a guard may be `yes`: wanted, no colour said. */
export type LineWords = Readonly<Partial<{ quantity: number } & Record<Exclude<LineSlot, 'quantity'>, string>>>;
export type Unclear = Readonly<{ slot: LineSlot | 'needBy' | 'shipTo'; said: string }>;
export type Reading = Readonly<{
  lines: readonly LineWords[];
  needBy: Day | null;
  shipTo: string | null;
  /** What was spoken of but cannot be written down, in words copied from the message. */
  unclear: readonly Unclear[];
  /** What the message points at outside itself. */
  refers: Reference | null;
}>;

/** What a conversation needs beside the slots, when the message leans on something said before it. */
export type Reference = Readonly<{
  /** `same`: the line at hand again (same but white). `another`: more of it (another 20 of those). `last-time`: the buyer's earlier order.
   *  `add`: one more line. `remove`: a line no longer wanted. `change`: a line that is to be otherwise.
   *  `part`: so many of a line that are to be otherwise (make 10 of them white). `several`: lines told apart by place, each to be otherwise.
   *  `all`: every line (all of them white). */
  kind: 'same' | 'another' | 'last-time' | 'add' | 'remove' | 'change' | 'part' | 'several' | 'all';
  /** Which line is meant: by place counted from 1, by what it is (the 1/4s), or by nothing but the talk. */
  which: number | LineWords | null;
}>;
