import type { LineSlot } from '../../shop/words.ts';
import type { Clause } from './clauses.ts';
import { isSame, pick, saidBy, type Draft } from './draft.ts';
import type { Fact } from './span.ts';

/** A correction replaces: in all lines if it says so (make that 40 each), else in the line it names by a value (make the 1/4s 30), else in the last. */
export function corrected(lines: readonly Draft[], clause: Clause): readonly Draft[] {
  if (clause.words.has('all') || clause.words.has('each')) return lines.map((line) => replaced(line, clause.facts));
  const named = lines.findLastIndex(
    (line) => clause.facts.length > 1 && clause.facts.some((fact) => isSame(line.said[fact.slot], fact)),
  );
  const at = named === -1 ? lines.length - 1 : named;
  const isMeant = (line: Draft, place: number): boolean =>
    place === at || (named === -1 && clause.facts.some(({ slot }) => isOneWord(line, lines[at], slot)));
  return lines.map((line, place) => (isMeant(line, place) ? replaced(line, clause.facts) : line));
}

/** Whether two lines have a slot by one and the same word: what was said for both is set right for both. */
const isOneWord = (a: Draft, b: Draft | undefined, slot: LineSlot): boolean =>
  a.said[slot] !== undefined && a.said[slot]?.from === b?.said[slot]?.from;

/** The lines without those spoken of. */
export const dropped = (lines: readonly Draft[], facts: readonly Fact[]): readonly Draft[] =>
  lines.filter((line) => !facts.every((fact) => isSame(line.said[fact.slot], fact)));

/** Lets go of a value that was taken back, where a line holds it. */
export const withoutTaken = (lines: readonly Draft[], taken: readonly Fact[]): readonly Draft[] =>
  taken.length === 0
    ? lines
    : lines.map((line) => ({
        ...line,
        said: pick(line.said, (slot, fact) => !taken.some((gone) => gone.slot === slot && isSame(gone, fact))),
      }));

function replaced(line: Draft, facts: readonly Fact[]): Draft {
  const fresh = facts.filter((fact) => !isSame(line.said[fact.slot], fact) && !fact.copied);
  const kept = pick(line.said, (slot: LineSlot) => !fresh.some((fact) => fact.slot === slot));
  return { ...line, said: saidBy(fresh, kept) };
}
