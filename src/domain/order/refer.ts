import type { LineSlot } from '../shop/words.ts';
import { currentLine, emptyLine, putWords, withLine, type Draft, type DraftLine } from './draft.ts';
import type { LineWords, Reading, Reference } from './reader/reading.ts';
import type { Line } from './spec.ts';

/** The draft after words that lean on a line said before: the same but white, another 20 of those, like last time, the second one out;
 *  `used` is how many of the message's lines went there, the others stand for themselves. Words that lean on nothing that is there use none. */
export function refer(
  draft: Draft,
  { lines, refers }: Reading,
  past: readonly Line[],
): Readonly<{ draft: Draft; used: number }> {
  const leaning = refers && HOW[refers.kind](draft, lines[0] ?? {}, refers, past);
  if (!leaning) return { draft, used: 0 };
  return { draft: leaning, used: refers.kind === 'remove' ? 0 : refers.kind === 'several' ? lines.length : 1 };
}

type How = (draft: Draft, words: LineWords, refers: Reference, past: readonly Line[]) => Draft | undefined;

const HOW: Readonly<Record<Reference['kind'], How>> = {
  same: (draft, words, { which }, past) => {
    const like = likened(draft, past, which);
    return like && added(draft, putWords(like, words));
  },
  another: (draft, words, { which }, past) => {
    const like = likened(draft, past, which);
    if (like === undefined) return undefined;
    const more = words.quantity ?? 0;
    const sameHead = Object.keys(words).every((slot) => slot === 'quantity') && isSaid(currentLine(draft));
    return sameHead
      ? withLine(draft, lineMeant(draft, which) ?? draft.current, { ...like, quantity: (like.quantity ?? 0) + more })
      : added(draft, putWords(like, words));
  },
  'last-time': (draft, words, _, past) => {
    if (past.length === 0) return undefined;
    const lines = past.map((line) => putWords(asDraftLine(line), words));
    return isSaid(currentLine(draft))
      ? { ...draft, lines: [...draft.lines, ...lines] }
      : { ...draft, lines, current: 0 };
  },
  remove: (draft, _, { which }) => {
    const at = lineMeant(draft, which);
    if (at === undefined || !draft.lines.some(isSaid)) return undefined;
    const lines = draft.lines.filter((__, index) => index !== at);
    return { ...draft, lines: lines.length === 0 ? [emptyLine] : lines, current: 0 };
  },
  change: (draft, words, { which }) => {
    const at = lineMeant(draft, which);
    // A line that is not there: better not understood than another one changed.
    if (at === undefined && typeof which === 'number' && draft.lines.some(isSaid)) return draft;
    const line = at === undefined ? undefined : draft.lines[at];
    return at === undefined || line === undefined || !isSaid(line)
      ? undefined
      : withLine({ ...draft, current: at }, at, putWords(line, words));
  },
  part: (draft, words, { which }) => {
    const at = lineMeant(draft, which) ?? draft.current;
    const line = draft.lines[at];
    const left = (line?.quantity ?? 0) - (words.quantity ?? 0);
    if (line === undefined || !isSaid(line)) return undefined;
    if (left <= 0) return withLine({ ...draft, current: at }, at, putWords(line, words));
    const rest = withLine(draft, at, { ...line, quantity: left });
    return { ...rest, lines: [...rest.lines, putWords(line, words)], current: rest.lines.length };
  },
  all: (draft, words) =>
    draft.lines.filter(isSaid).length > 1
      ? { ...draft, lines: draft.lines.map((line) => (isSaid(line) ? putWords(line, words) : line)) }
      : undefined,
  several: (draft) => (draft.lines.filter(isSaid).length > 1 ? draft : undefined),
  add: () => undefined,
};

/** The line that words like "the same" mean: the one at hand, else the first of the buyer's last order. */
function likened(draft: Draft, past: readonly Line[], which: Reference['which']): DraftLine | undefined {
  const line = (typeof which === 'number' ? draft.lines[which - 1] : undefined) ?? currentLine(draft);
  return isSaid(line) ? line : past[0] && asDraftLine(past[0]);
}

function added(draft: Draft, line: DraftLine): Draft {
  if (!isSaid(currentLine(draft))) return withLine(draft, draft.current, line);
  return { ...draft, lines: [...draft.lines, line], current: draft.lines.length };
}

/** By its place, by what it is, or the one at hand. */
function lineMeant(draft: Draft, which: Reference['which']): number | undefined {
  if (which === null) return draft.current;
  if (typeof which === 'number') return draft.lines[which - 1] === undefined ? undefined : which - 1;
  const at = draft.lines.findIndex((line) =>
    Object.entries(which).every(([slot, value]) => valueIn(line, slot as LineSlot) === value),
  );
  return at < 0 ? undefined : at;
}

const valueIn = ({ spec, quantity }: DraftLine, slot: LineSlot): string | number | null | undefined =>
  slot === 'quantity' ? quantity : spec[slot];

const isSaid = ({ spec }: DraftLine): boolean => spec.style !== undefined || spec.weight !== undefined;

/** A line ordered before, to be talked about again: what was agreed with the maker, and for how much more, stays. */
export const asDraftLine = ({ spec, quantity, extra = 0 }: Line): DraftLine => ({
  ...emptyLine,
  spec,
  quantity,
  extra,
});
