import { LINE_SLOTS } from '../../shop/words.ts';
import type { Draft } from './draft.ts';
import type { Wanted } from './needby.ts';
import type { LineWords, Reading, Reference, Unclear } from './reading.ts';
import type { Destination } from './shipto.ts';
import type { Fact } from './span.ts';

type Understood = Readonly<{
  lines: readonly Draft[];
  needBy: Wanted | undefined;
  shipTo: Destination | undefined;
  refers: Reference | null;
}>;

/** What was understood, as the reader says it: clear slots, and for the rest the message's own words. */
export function written(said: string, { lines, needBy, shipTo, refers }: Understood): Reading {
  const words = ({ from, to }: Readonly<{ from: number; to: number }>) => said.slice(from, to);
  const unclear: readonly Unclear[] = [
    ...lines.flatMap(unclearOf).map((fact) => ({ slot: fact.slot, said: words(fact) })),
    ...(needBy?.day === null ? [{ slot: 'needBy' as const, said: words(needBy) }] : []),
    ...(shipTo?.code === null ? [{ slot: 'shipTo' as const, said: words(shipTo) }] : []),
  ];
  return {
    lines: lines.map(lineOf).filter((line) => Object.keys(line).length > 0),
    needBy: needBy?.day ?? null,
    shipTo: shipTo?.code ?? null,
    unclear: unclear.filter(
      (one, at) => unclear.findIndex(({ slot, said }) => slot === one.slot && said === one.said) === at,
    ),
    refers,
  };
}

function lineOf({ said }: Draft): LineWords {
  const line: Record<string, string | number> = {};
  for (const slot of LINE_SLOTS) {
    const value = clearValue(said[slot]);
    if (value !== undefined) line[slot] = slot === 'quantity' ? Number(value) : value;
  }
  return line as LineWords;
}

const isClear = (fact: Fact | undefined): boolean => fact?.values.length === 1 && fact.values[0] !== '';
const clearValue = (fact: Fact | undefined): string | undefined => (isClear(fact) ? fact?.values[0] : undefined);
const unclearOf = ({ said }: Draft): readonly Fact[] =>
  Object.values(said).filter((fact) => !isClear(fact) && !fact.copied);
