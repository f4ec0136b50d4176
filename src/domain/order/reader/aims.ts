import type { Clause } from './clauses.ts';
import { isCore, isSame, saidBy, type Draft } from './draft.ts';
import { spread } from './divide.ts';
import type { Fact } from './span.ts';

/** Words that find the lines they are about by what those already say. */

const PLACES = ['first', 'second', 'third'] as const;

/** The first in white: goes to the line at that place. Undefined where no place is said, or no such line is. */
export function placedAt(lines: readonly Draft[], { facts, words }: Clause): readonly Draft[] | undefined {
  const place = PLACES.findIndex((word) => words.has(word));
  if (place === -1 || lines.length < 2 || place >= lines.length || hasQuantity(facts)) return undefined;
  const said = saidBy(facts);
  return lines.map((line, at) => (at === place ? { ...line, said: { ...line.said, ...said } } : line));
}

/** Size 2 on the eighths: goes to every line that is so. Undefined where no line is. */
export function aimed(lines: readonly Draft[], { facts }: Clause): readonly Draft[] | undefined {
  const aims = facts.filter((fact) => lines.some(({ said }) => isSame(said[fact.slot], fact)));
  if (aims.length === 0 || aims.length === facts.length || hasQuantity(facts)) return undefined;
  const said = saidBy(facts.filter((fact) => !aims.includes(fact)));
  return lines.map((line) =>
    aims.every((fact) => isSame(line.said[fact.slot], fact)) ? { ...line, said: { ...line.said, ...said } } : line,
  );
}

/** 25 each black and purple, #2 in the black: the line that names several is as many lines from here on. */
export function singledOut(lines: readonly Draft[], { facts }: Clause): readonly Draft[] {
  const last = facts.length > 1 ? lines.at(-1) : undefined;
  if (!last) return lines;
  const isOneOf = (fact: Fact) => {
    const several = last.said[fact.slot];
    return several?.joined === 'and' && fact.values.length === 1 && several.values.includes(fact.values[0] as string);
  };
  const isMeant = !hasQuantity(facts) && facts.filter(isOneOf).length === 1;
  return isMeant ? [...lines.slice(0, -1), ...spread(last)] : lines;
}

/** `The eighths black`: after lines that all have their quantity, a size without one is of the line that has it, if that lacks the rest. */
export const isOfEarlier = (lines: readonly Draft[], { facts }: Clause): boolean =>
  lines.length > 1 &&
  !hasQuantity(facts) &&
  facts.length > 1 &&
  lines.every(({ said }) => said.quantity) &&
  lines.some(({ said }) =>
    facts.every((fact) => (isCore(fact.slot) ? isSame(said[fact.slot], fact) : !said[fact.slot])),
  );

const hasQuantity = (facts: readonly Fact[]): boolean => facts.some(({ slot }) => slot === 'quantity');

/** Whether the last line was just fitted with a guard or skirt that no other has: an `and` goes on with it alone. */
export function isSingledOut(lines: readonly Draft[]): boolean {
  const said = Object.values(lines.at(-1)?.said ?? {});
  const last = said.reduce<Fact | undefined>(
    (late, fact) => (late && late.until > fact.until ? late : fact),
    undefined,
  );
  return (
    last !== undefined &&
    (last.slot === 'guard' || last.slot === 'dressing') &&
    lines.slice(0, -1).every((line) => line.said[last.slot] === undefined)
  );
}
