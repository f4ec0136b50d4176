import { NONE, type LineSlot } from '../../shop/words.ts';
import type { Clause } from './clauses.ts';
import type { Fact } from './span.ts';

/** What was said of a line, by slot. */
export type Said = Readonly<Partial<Record<LineSlot, Fact>>>;

/** A line while it is being read. */
export type Draft = Readonly<{
  said: Said;
  /** Slots that its own clauses name; the others it took from a neighbour. */
  own: ReadonlySet<LineSlot>;
  /** Slots said before the quantity, which hold for the lines after it too. */
  head: ReadonlySet<LineSlot>;
  /** How its quantity stands to the values: 20 of each, a total split evenly, half or a third of a total, the rest of one. */
  share: 'each' | 'split' | 'half' | 'third' | 'rest' | null;
  opens: Clause['opens'];
  sentence: number;
  /** The sentence that last said something of it. */
  last: number;
  /** Whether it sets right what was said before, and whether it was added to that. */
  corrects: boolean;
  adds: boolean;
}>;

export const draftOf = (said: Said, { opens, sentence, words, facts, taken }: Clause): Draft => ({
  said,
  own: new Set(facts.map(({ slot }) => slot)),
  head: new Set(),
  share: shareOf(words),
  opens,
  sentence,
  last: sentence,
  corrects: taken.length > 0 || words.has('not') || words.has('wrong') || words.has('make'),
  adds: words.has('add'),
});

export const shareOf = (words: Clause['words']): Draft['share'] =>
  words.has('half')
    ? 'half'
    : words.has('third part')
      ? 'third'
      : words.has('rest')
        ? 'rest'
        : words.has('split')
          ? 'split'
          : words.has('each')
            ? 'each'
            : null;

/** Facts by slot; the last word wins, but a hook or dressing that was narrowed down stays so. */
export function saidBy(facts: readonly Fact[], before: Said = {}): Said {
  const said: Partial<Record<LineSlot, Fact>> = { ...before };
  for (const fact of facts) said[fact.slot] = settled(said[fact.slot], fact);
  return said;
}

/** Two words for one slot: eyes of a colour leave the paint open, a collar outlives `no skirt`, and a hook of an unknown kind stays unknown when its size is said. */
function settled(before: Fact | undefined, fact: Fact): Fact {
  if (!before || before.copied) return fact;
  if (fact.copied || (before.firm && (before.values.length === 0 || fact.values[0] === NONE))) return before;
  if (fact.slot === 'hook' && before.values.length === 0 && isNear(before, fact))
    return { ...before, from: Math.min(before.from, fact.from), to: Math.max(before.to, fact.to) };
  if (fact.slot === 'hook' && fact.values.length === 0 && isNear(before, fact)) return fact;
  return fact;
}
const isNear = (a: Fact, b: Fact): boolean => Math.abs(a.at - b.until) <= 3 || Math.abs(b.at - a.until) <= 3;

export const isSame = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  !a.copied &&
  !b.copied &&
  a.values.length > 0 &&
  a.values.length === b.values.length &&
  a.values.every((value, at) => value === b.values[at]);

export const slotsOf = (said: Said): readonly LineSlot[] => Object.keys(said) as readonly LineSlot[];

export function pick(said: Said, wanted: (slot: LineSlot, fact: Fact) => boolean): Said {
  const picked: Partial<Record<LineSlot, Fact>> = {};
  for (const slot of slotsOf(said)) {
    const fact = said[slot];
    if (fact && wanted(slot, fact)) picked[slot] = fact;
  }
  return picked;
}

/** The slots by which a line is told from another. */
export const isCore = (slot: LineSlot): boolean => slot === 'quantity' || slot === 'style' || slot === 'weight';

/** Whether a clause says no more than how heads are finished: paint, hook, guard. */
export const isAttribute = ({ facts, words }: Clause): boolean =>
  facts.every(({ slot }) => !isCore(slot)) && !words.has('half') && !words.has('third part') && !words.has('rest');
