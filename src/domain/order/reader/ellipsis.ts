import type { LineSlot } from '../../shop/words.ts';
import type { Clause } from './clauses.ts';
import { draftOf, isSame, pick, saidBy, shareOf, slotsOf, type Draft, type Said } from './draft.ts';

/** What buyers leave out because the line before, or the one after, has said it. */

/** A new line after `line`, with what it takes over from it. */
export const following = (line: Draft, said: Said, clause: Clause): Draft => ({
  ...draftOf(inherited(line, said), clause),
  head: line.head,
  ...(isEachOf(line, said) ? { share: line.share } : {}),
});

/** The line at hand with more of its own words; a style of its own lets go of what it took from the line before. */
export function continued(line: Draft, said: Said, clause: Clause): Draft {
  const isOther = said.style && line.said.style && !line.own.has('style');
  const kept = isOther ? pick(line.said, (slot) => line.own.has(slot) || line.head.has(slot)) : line.said;
  const head = said.quantity && !line.said.quantity ? new Set(slotsOf(line.said)) : line.head;
  return {
    ...line,
    head,
    share: line.share ?? shareOf(clause.words),
    last: clause.sentence,
    said: saidBy(Object.values(said), kept),
    own: new Set([...line.own, ...slotsOf(said)]),
  };
}

/** Whether a line has a slot for good: of its own, or taken over when it already had more of its own than a quantity. */
const holds = (line: Draft, slot: LineSlot): boolean =>
  line.own.has(slot) || (slot !== 'quantity' && line.own.size > 1 && line.said[slot] !== undefined);

/** Whether what is said cannot be of the line at hand. */
export const differs = (line: Draft, said: Said, { words }: Clause): boolean =>
  slotsOf(said).some(
    (slot) => holds(line, slot) && !isSame(line.said[slot], said[slot]) && !settles(line, said, slot),
  ) ||
  (said.quantity !== undefined && line.said.quantity !== undefined && !isCountOf(line, said)) ||
  words.has('half') ||
  words.has('third part') ||
  words.has('rest');

/** 3/8 or 1/2… ok 3/8: one of two values left open is the one. */
const settles = (line: Draft, said: Said, slot: LineSlot): boolean => {
  const [before, after] = [line.said[slot], said[slot]];
  return before?.joined === 'or' && after?.values.length === 1 && before.values.includes(after.values[0] ?? '');
};

/** The same but 1/2 oz, 10 of those: the number of a line that has another's only. */
const isCountOf = ({ own }: Draft, said: Said): boolean => !own.has('quantity') && slotsOf(said).join() === 'quantity';

/** A line without a style is another of the heads before it; one without a size as well is so in its hook and metal, and in all that was said before the word that differs. */
function inherited(line: Draft, said: Said): Said {
  const head = pick(line.said, (slot) => line.head.has(slot));
  const count: Said = isEachOf(line, said) && line.said.quantity ? { quantity: line.said.quantity } : {};
  if (said.style) return { ...head, ...count, ...said };
  const style: Said = line.said.style ? { style: line.said.style } : {};
  return { ...head, ...count, ...style, ...(said.weight ? {} : bodyOf(line, said)), ...said };
}

const isEachOf = (line: Draft, said: Said): boolean => line.share === 'each' && !said.quantity;

function bodyOf(line: Draft, said: Said): Said {
  const differing = Math.min(
    ...slotsOf(said)
      .filter((slot) => slot !== 'quantity')
      .map((slot) => line.said[slot]?.from ?? Infinity),
  );
  return pick(line.said, (slot, fact) => slot !== 'quantity' && (BODY.has(slot) || fact.from < differing));
}
const BODY: ReadonlySet<string> = new Set(['weight', 'hook', 'metal']);

/** `15 black and 15 brown 3/8 footballs`: a line without a style shares what the next one says. */
export function backfilled(lines: readonly Draft[]): readonly Draft[] {
  return lines.reduceRight<readonly Draft[]>((after, line) => {
    const next = after[0];
    const isOpen =
      next &&
      !line.said.style &&
      next.said.style &&
      line.sentence === next.sentence &&
      line.said.quantity !== undefined &&
      !isApart(line, next);
    const said = isOpen ? { ...pick(next.said, (slot) => slot !== 'quantity'), ...line.said } : line.said;
    return [{ ...line, said }, ...after];
  }, []);
}

/** `make it 40, and add 10 white swim heads`: the number corrects a head said before the message, and is none of the heads after it. */
const isApart = (line: Draft, next: Draft): boolean => line.corrects && (line.own.size === 1 || next.adds);

/** Everything else the same: the last line is as the one before in all it does not say. */
export const likened = (lines: readonly Draft[]): readonly Draft[] =>
  lines.map((line, at) =>
    at > 0 && at === lines.length - 1 ? { ...line, said: { ...lines[at - 1]?.said, ...line.said } } : line,
  );
