import type { LineSlot } from '../../shop/words.ts';
import type { Clause } from './clauses.ts';
import { isAttribute, isCore, isSame, pick, saidBy, type Draft } from './draft.ts';
import type { Fact } from './span.ts';

/** A correction replaces: in all lines if it says so (make that 40 each), else in the line it names by a value (make the 1/4s 30), else in the last. */
export function corrected(lines: readonly Draft[], clause: Clause): readonly Draft[] {
  if (clause.words.has('all') || clause.words.has('each')) return lines.map((line) => replaced(line, clause.facts));
  const parted = partedFrom(lines, clause);
  if (parted) return parted;
  const named = lines.findLastIndex(
    (line) => clause.facts.length > 1 && clause.facts.some((fact) => isSame(line.said[fact.slot], fact)),
  );
  const at = named === -1 ? lines.length - 1 : named;
  const isMeant = (line: Draft, place: number): boolean =>
    place === at || (named === -1 && clause.facts.some(({ slot }) => isOneWord(line, lines[at], slot)));
  return lines.map((line, place) => (isMeant(line, place) ? replaced(line, clause.facts) : line));
}

/** Make 10 of those orange: a part of the line at hand becomes a line of its own. */
function partedFrom(lines: readonly Draft[], { facts, words }: Clause): readonly Draft[] | undefined {
  const [part, ...others] = facts;
  const whole = lines.at(-1);
  const count = Number(whole?.said.quantity?.values[0]);
  const left = count - Number(part?.values[0]);
  const finish = others.filter((fact) => !(fact.slot === 'quantity' && isSame(fact, whole?.said.quantity)));
  const isPart = part?.slot === 'quantity' && words.has('count') && left > 0 && finish.length > 0;
  if (!whole || !isPart || finish.some(({ slot }) => isCore(slot))) return undefined;
  const rest = { ...whole, said: { ...whole.said, quantity: { ...part, values: [String(left)] } } };
  return [...lines.slice(0, -1), rest, replaced(whole, [part, ...finish])];
}

/** Whether two lines have a slot by one and the same word: what was said for both is set right for both. */
const isOneWord = (a: Draft, b: Draft | undefined, slot: LineSlot): boolean =>
  a.said[slot] !== undefined && a.said[slot]?.from === b?.said[slot]?.from;

/** The lines without those spoken of; where all are so, without what they are: scratch the white, all of them orange. */
export function dropped(lines: readonly Draft[], facts: readonly Fact[]): readonly Draft[] {
  const left = lines.filter((line) => !facts.every((fact) => isSame(line.said[fact.slot], fact)));
  const isAll = left.length === 0 || left.length === lines.length;
  return isAll && facts.every(({ slot }) => !isCore(slot)) ? withoutTaken(lines, facts) : left;
}

/** Lets go of a value that was taken back, where a line holds it. */
export const withoutTaken = (lines: readonly Draft[], taken: readonly Fact[]): readonly Draft[] =>
  taken.length === 0
    ? lines
    : lines.map((line) => ({
        ...line,
        said: pick(line.said, (slot, fact) => !taken.some((gone) => gone.slot === slot && isGone(gone, fact))),
      }));

/** The same value, or both not understood: never mind the pink. */
const isGone = (gone: Fact, fact: Fact): boolean =>
  isSame(gone, fact) || (gone.values.length === 0 && fact.values.length === 0);

function replaced(line: Draft, facts: readonly Fact[]): Draft {
  const fresh = facts.filter((fact) => !isSame(line.said[fact.slot], fact) && !fact.copied);
  const kept = pick(line.said, (slot: LineSlot) => !fresh.some((fact) => fact.slot === slot));
  return { ...line, said: saidBy(fresh, kept) };
}

/** The lines so far, and what the clause before set right. */
type Spoken = Readonly<{ lines: readonly Draft[]; righted: readonly Fact[] }>;

/** Skip the red, no red ones: the line that is so is taken back, where others stay. */
export const isRefusal = ({ facts, taken, words }: Clause): boolean =>
  facts.length === 0 && taken.length > 0 && words.has('no') && words.has('not');
export const isSomeOf = (lines: readonly Draft[], facts: readonly Fact[]): boolean => {
  const left = dropped(lines, facts).length;
  return left > 0 && left < lines.length;
};

/** Whether a clause sets right what was said. */
export const isCorrection = ({ words }: Clause): boolean =>
  (words.has('wrong') || words.has('make') || words.has('instead') || words.has('no')) &&
  !words.has('add') &&
  !words.has('more');

/** Make the footballs 30 and green pumpkin. */
export const isGoingOn = ({ righted, lines }: Spoken, clause: Clause): boolean =>
  righted.length > 0 && lines.length > 0 && clause.opens === 'and' && isAttribute(clause);

/** Hmm. 50. Actually 1/8. And 50 of them: a sentence of nothing but a number counts the heads at hand again. */
export const isRecount = ({ lines, righted }: Spoken, { facts, words, opens }: Clause): boolean =>
  opens === 'stop' &&
  facts.length === 1 &&
  facts[0]?.slot === 'quantity' &&
  lines.at(-1)?.said.quantity !== undefined &&
  (righted.length > 0 || !words.has('count')) &&
  !RECOUNTED_OTHERWISE.some((word) => words.has(word));
const RECOUNTED_OTHERWISE = ['each', 'more', 'add', 'half', 'third part', 'rest', 'split', 'all', 'same'] as const;
