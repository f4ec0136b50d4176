import { corrected, dropped, withoutTaken } from './corrections.ts';
import type { Clause } from './clauses.ts';
import { divided } from './divide.ts';
import { draftOf, isCore, isSame, pick, saidBy, shareOf, slotsOf, type Draft, type Said } from './draft.ts';
import type { Fact } from './span.ts';

/** The lines read so far, and what still waits for its clause. */
export type Desk = Readonly<{
  lines: readonly Draft[];
  /** Said for all lines before any line was begun. */
  shared: Said;
  /** Whether what follows still holds for all lines. */
  sharing: boolean;
  /** Words of clauses without facts, which go with the next. */
  waiting: Clause['words'];
}>;

/** The order lines of a message, in the order first mentioned. */
export function linesOf(clauses: readonly Clause[]): readonly Draft[] {
  const desk = clauses.reduce<Desk>(read, { lines: [], shared: {}, sharing: false, waiting: new Set() });
  const lines = desk.lines.length > 0 || slotsOf(desk.shared).length === 0 ? desk.lines : [draftOf({}, NOTHING)];
  return divided(backfilled(lines.map((line) => ({ ...line, said: { ...desk.shared, ...line.said } }))));
}
const NOTHING: Clause = { opens: 'start', sentence: 0, facts: [], taken: [], words: new Set(), asks: false };

function read(before: Desk, spoken: Clause): Desk {
  const clause: Clause = {
    ...spoken,
    words: new Set([...(spoken.opens === 'line' ? [] : before.waiting), ...spoken.words]),
  };
  const desk: Desk = { ...before, lines: withoutTaken(before.lines, clause.taken), waiting: new Set() };
  if (clause.facts.length === 0)
    return { ...desk, waiting: new Set([...clause.words].filter((word) => WAITING.has(word))) };
  if (clause.words.has('drop')) return { ...desk, lines: dropped(desk.lines, clause.facts) };
  if (isCorrection(clause) && desk.lines.length > 0)
    return { ...desk, lines: corrected(desk.lines, clause), sharing: clause.words.has('all') };
  if (clause.words.has('all') && !has(clause, 'quantity')) return shared(desk, clause);
  if (clause.words.has('same') && desk.lines.length > 0 && !clause.facts.some(({ copied }) => copied))
    return repeated(desk, clause);
  if (isEachForAll(desk, clause)) return shared(desk, clause);
  if (clause.words.has('aim') || clause.words.has('for')) return aimed(desk, clause) ?? added(desk, clause);
  return added(desk, clause);
}

function added(desk: Desk, clause: Clause): Desk {
  const inTurn = isAttribute(clause) ? dealtOut(desk, clause) : undefined;
  if (inTurn) return inTurn;
  if (!has(clause, 'quantity') && isLackedByAll(desk, clause))
    return { ...shared(desk, clause), sharing: desk.sharing };
  return isAttribute(clause) ? attributed(desk, clause) : started(desk, clause);
}
const WAITING: ReadonlySet<string> = new Set([
  'all',
  'wrong',
  'make',
  'same',
  'each',
  'half',
  'rest',
  'split',
  'drop',
  'either',
]);

const has = ({ facts }: Clause, slot: Fact['slot']): boolean => facts.some((fact) => fact.slot === slot);
const isCorrection = ({ words }: Clause): boolean =>
  (words.has('wrong') || words.has('make') || words.has('instead')) && !words.has('add') && !words.has('more');
const isAttribute = ({ facts, words }: Clause): boolean =>
  facts.every(({ slot }) => !isCore(slot)) && !words.has('half') && !words.has('rest');

/** Size 2 on the eighths: goes to every line that is so. */
function aimed(desk: Desk, clause: Clause): Desk | undefined {
  const aims = clause.facts.filter((fact) => desk.lines.some(({ said }) => isSame(said[fact.slot], fact)));
  if (aims.length === 0 || aims.length === clause.facts.length || has(clause, 'quantity')) return undefined;
  const said = saidBy(clause.facts.filter((fact) => !aims.includes(fact)));
  const lines = desk.lines.map((line) =>
    aims.every((fact) => isSame(line.said[fact.slot], fact)) ? { ...line, said: { ...line.said, ...said } } : line,
  );
  return { ...desk, lines };
}

/** Said once after several lines of which none has it. */
const isLackedByAll = ({ lines }: Desk, { facts, opens }: Clause): boolean =>
  lines.length > 1 &&
  opens !== 'number' &&
  lines.at(-1)?.share !== 'each' &&
  facts.every(({ slot, copied }) => !copied && lines.every(({ said }) => said[slot] === undefined));

/** `20 of each` after lines that have no quantity. */
const isEachForAll = ({ lines }: Desk, { words, facts }: Clause): boolean =>
  words.has('each') &&
  lines.length > 1 &&
  facts.every(({ slot }) => slot === 'quantity') &&
  lines.every(({ said }) => said.quantity === undefined);

/** What holds for all lines fills every line that does not say otherwise. */
function shared(desk: Desk, clause: Clause): Desk {
  const lines = desk.lines.map((line) => ({
    ...line,
    said: { ...saidBy(resolved(clause.facts, desk.lines)), ...line.said },
  }));
  return {
    ...desk,
    lines,
    shared: desk.lines.length === 0 ? saidBy(clause.facts, desk.shared) : desk.shared,
    sharing: true,
  };
}

/** Same hooks: the hook of the last line that has one. */
const resolved = (facts: readonly Fact[], lines: readonly Draft[]): readonly Fact[] =>
  facts.flatMap((fact) =>
    fact.copied
      ? (lines.findLast(({ said }) => said[fact.slot] && !said[fact.slot]?.copied)?.said[fact.slot] ?? [])
      : fact,
  );

/** The same but…: the line before, with what is said now. */
function repeated(desk: Desk, clause: Clause): Desk {
  const line = draftOf({ ...desk.lines.at(-1)?.said, ...saidBy(clause.facts) }, clause);
  return { ...desk, lines: [...desk.lines, line], sharing: false };
}

/** Paint, hook and the like go to the line at hand, or to all lines when they come after lines that all lack them. */
function attributed(desk: Desk, clause: Clause): Desk {
  const line = desk.lines.at(-1);
  if (!line) return { ...desk, lines: [draftOf(saidBy(clause.facts), clause)] };
  if (desk.sharing) return shared(desk, clause);
  const facts = resolved(clause.facts, desk.lines);
  const said = facts.length === 1 && facts[0] ? besides(line.said, facts[0], clause) : saidBy(facts, line.said);
  return withLast(desk, {
    ...line,
    said,
    own: new Set([...line.own, ...facts.map(({ slot }) => slot)]),
    share: line.share ?? shareOf(clause.words),
  });
}

/** `size 1 and 1/0` after two lines: one hook for each, in their order. */
function dealtOut(desk: Desk, { facts }: Clause): Desk | undefined {
  const [fact] = facts;
  if (facts.length !== 1 || fact?.slot !== 'hook' || fact.joined !== 'and' || fact.values.length !== desk.lines.length)
    return undefined;
  if (desk.lines.some(({ said }) => said.hook)) return undefined;
  return {
    ...desk,
    lines: desk.lines.map((line, at) => ({
      ...line,
      said: { ...line.said, hook: { ...fact, values: fact.values.slice(at, at + 1) } },
    })),
  };
}

const withLast = (desk: Desk, line: Draft): Desk => ({ ...desk, lines: [...desk.lines.slice(0, -1), line] });

/** A second value, joined by `and` or a comma, stands beside the first; else the last word wins. */
function besides(said: Said, fact: Fact, { opens }: Clause): Said {
  const before = said[fact.slot];
  const isBeside =
    before &&
    fact.values[0] !== 'none' &&
    fact.values[0] !== 'bare' &&
    before.values.length > 0 &&
    fact.values.length > 0 &&
    !isSame(before, fact) &&
    fact.slot !== 'dressing' &&
    (opens === 'and' || opens === 'comma');
  return isBeside
    ? {
        ...said,
        [fact.slot]: { ...fact, from: before.from, values: [...before.values, ...fact.values], joined: 'and' },
      }
    : saidBy([fact], said);
}

/** A quantity, style or weight that the line at hand has otherwise begins a new line. */
function started(desk: Desk, clause: Clause): Desk {
  const line = desk.lines.at(-1);
  const said = saidBy(resolved(clause.facts, desk.lines));
  if (!line) return { ...desk, lines: [draftOf(said, clause)], sharing: false };
  if (differs(line, said, clause))
    return {
      ...desk,
      lines: [
        ...desk.lines,
        {
          ...draftOf(inherited(line, said), clause),
          head: line.head,
          ...(isEachOf(line, said) ? { share: line.share } : {}),
        },
      ],
      sharing: false,
    };
  const head = said.quantity && !line.said.quantity ? new Set(slotsOf(line.said)) : line.head;
  return {
    ...withLast(desk, {
      ...line,
      head,
      share: line.share ?? shareOf(clause.words),
      said: saidBy(Object.values(said), line.said),
      own: new Set([...line.own, ...slotsOf(said)]),
    }),
    sharing: false,
  };
}

const differs = (line: Draft, said: Said, { words }: Clause): boolean =>
  slotsOf(said).some((slot) => line.said[slot] && !isSame(line.said[slot], said[slot])) ||
  (said.quantity !== undefined && line.said.quantity !== undefined) ||
  words.has('half') ||
  words.has('rest');

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
function backfilled(lines: readonly Draft[]): readonly Draft[] {
  return lines.reduceRight<readonly Draft[]>((after, line) => {
    const next = after[0];
    const isOpen =
      next &&
      !line.said.style &&
      next.said.style &&
      line.sentence === next.sentence &&
      line.said.quantity !== undefined;
    const said = isOpen ? { ...pick(next.said, (slot) => slot !== 'quantity'), ...line.said } : line.said;
    return [{ ...line, said }, ...after];
  }, []);
}
