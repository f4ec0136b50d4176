import { aimed, isOfEarlier, isSingledOut, placedAt, singledOut } from './aims.ts';
import {
  corrected,
  dropped,
  isCorrection,
  isGoingOn,
  isRecount,
  isRefusal,
  isSomeOf,
  withoutTaken,
} from './corrections.ts';
import type { Clause } from './clauses.ts';
import { divided } from './divide.ts';
import { draftOf, isAttribute, isSame, pick, saidBy, shareOf, slotsOf, type Draft, type Said } from './draft.ts';
import { backfilled, continued, differs, following, likened } from './ellipsis.ts';
import { beside } from './lists.ts';
import type { Fact } from './span.ts';

/** The lines read so far, and what still waits for its clause. */
export type Desk = Readonly<{
  lines: readonly Draft[];
  /** Said for all lines before any line was begun. */
  shared: Said;
  /** Whether what follows still holds for all lines. */
  sharing: boolean;
  /** What the clause before set right; an `and` goes on with it. */
  righted: readonly Fact[];
  /** Words of clauses without facts, which go with the next. */
  waiting: Clause['words'];
}>;

/** The order lines of a message, in the order first mentioned. */
export function linesOf(clauses: readonly Clause[]): readonly Draft[] {
  const desk = clauses.reduce<Desk>(read, { lines: [], shared: {}, sharing: false, righted: [], waiting: new Set() });
  const lines = desk.lines.length > 0 || slotsOf(desk.shared).length === 0 ? desk.lines : [draftOf({}, NOTHING)];
  const isShared = slotsOf(desk.shared).length > 0;
  const full = isShared ? lines.map((line) => ({ ...line, said: { ...desk.shared, ...line.said } })) : lines;
  return full.length > 1 ? backfilled(divided(backfilled(full))) : divided(full);
}
const NO_WORDS: Clause['words'] = new Set();
const NOTHING: Clause = { opens: 'start', sentence: 0, facts: [], taken: [], words: new Set(), asks: false };

/** One clause more; only the clause just after a correction can go on with it. */
function read(before: Desk, clause: Clause): Desk {
  const after = taken(before, clause);
  return after.righted === before.righted && before.righted.length > 0 ? { ...after, righted: [] } : after;
}

function taken(before: Desk, spoken: Clause): Desk {
  const isAlone = before.waiting.size === 0 || spoken.opens === 'line';
  const waiting = [...before.waiting].filter((word) => spoken.opens !== 'stop' || !WITHIN_SENTENCE.has(word));
  const clause: Clause = isAlone ? spoken : { ...spoken, words: new Set([...waiting, ...spoken.words]) };
  const isPlain = clause.taken.length === 0 && before.waiting.size === 0;
  const desk: Desk = isPlain
    ? before
    : { ...before, lines: withoutTaken(before.lines, clause.taken), waiting: NO_WORDS };
  if (clause.words.has('likewise')) return { ...desk, lines: likened(desk.lines) };
  if (isRefusal(clause) && isSomeOf(before.lines, clause.taken))
    return { ...before, lines: dropped(before.lines, clause.taken), waiting: NO_WORDS };
  if (clause.facts.length === 0)
    return { ...desk, waiting: new Set([...clause.words].filter((word) => WAITING.has(word))) };
  if (clause.words.has('drop')) return { ...desk, lines: dropped(desk.lines, clause.facts) };
  if (isCorrection(clause) && desk.lines.length > 0)
    return { ...desk, lines: corrected(desk.lines, clause), sharing: clause.words.has('all'), righted: clause.facts };
  if (isRecount(desk, clause)) return { ...desk, lines: corrected(desk.lines, clause) };
  if (isGoingOn(desk, clause))
    return { ...desk, lines: corrected(desk.lines, { ...clause, facts: [...desk.righted, ...clause.facts] }) };
  if (clause.words.has('all') && !has(clause, 'quantity')) return shared(desk, clause);
  if (clause.words.has('same') && desk.lines.length > 0 && !clause.facts.some(({ copied }) => copied))
    return repeated(desk, clause);
  if (isEachForAll(desk, clause)) return shared(desk, clause);
  if (clause.words.has('others') && isAttribute(clause)) return filled(desk, clause);
  const parted = singledOut(desk.lines, clause);
  const isAimed =
    parted !== desk.lines || clause.words.has('aim') || clause.words.has('for') || isOfEarlier(parted, clause);
  const lines = placedAt(parted, clause) ?? (isAimed ? aimed(parted, clause) : undefined);
  if (lines) return { ...desk, lines };
  return added(desk, clause);
}

function added(desk: Desk, clause: Clause): Desk {
  const inTurn = isAttribute(clause) ? dealtOut(desk, clause) : undefined;
  if (inTurn) return inTurn;
  if (!has(clause, 'quantity') && isLackedByAll(desk, clause))
    return { ...shared(desk, clause), sharing: desk.sharing };
  return isAttribute(clause) ? attributed(desk, clause) : started(desk, clause);
}
/** Words that are about the same sentence only: it drops, half of what was in it. */
const WITHIN_SENTENCE: ReadonlySet<string> = new Set(['drop', 'half', 'third part', 'rest']);
const WAITING: ReadonlySet<string> = new Set([
  'all',
  'wrong',
  'make',
  'same',
  'each',
  'half',
  'third part',
  'rest',
  'split',
  'first',
  'second',
  'third',
  'drop',
  'either',
]);

const has = ({ facts }: Clause, slot: Fact['slot']): boolean => facts.some((fact) => fact.slot === slot);
/** 2/0 on the others: goes to every line that has none of its own yet. */
const filled = (desk: Desk, { facts }: Clause): Desk => ({
  ...desk,
  lines:
    desk.lines.length === 0
      ? [draftOf(saidBy(facts), NOTHING)]
      : desk.lines.map((line) => ({ ...line, said: { ...saidBy(facts), ...line.said } })),
});

/** Said once after several lines of which none has it. */
const isLackedByAll = ({ lines }: Desk, { facts, opens }: Clause): boolean =>
  lines.length > 1 &&
  opens !== 'number' &&
  lines.at(-1)?.share !== 'each' &&
  !(opens === 'and' && isSingledOut(lines)) &&
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
function resolved(facts: readonly Fact[], lines: readonly Draft[]): readonly Fact[] {
  if (!facts.some(({ copied }) => copied)) return facts;
  return facts.flatMap((fact) => {
    if (!fact.copied) return fact;
    const before = lines.findLast(({ said }) => said[fact.slot] && !said[fact.slot]?.copied);
    return before?.said[fact.slot] ?? [];
  });
}

/** The same but…: the line before, with what is said now. */
function repeated(desk: Desk, clause: Clause): Desk {
  const [before, counted] = desk.lines.slice(-2);
  if (counted && isOnlyCounted(counted) && !has(clause, 'quantity'))
    return withLast(desk, { ...counted, said: { ...before?.said, ...counted.said, ...saidBy(clause.facts) } });
  const line = draftOf({ ...desk.lines.at(-1)?.said, ...saidBy(clause.facts) }, clause);
  return { ...desk, lines: [...desk.lines, line], sharing: false };
}

/** Another 12, just the same: nothing but a number was said of them yet. */
const isOnlyCounted = ({ own }: Draft): boolean => own.size === 1 && own.has('quantity');

/** Paint, hook and the like go to the line at hand, or to all lines when they come after lines that all lack them. */
function attributed(desk: Desk, clause: Clause): Desk {
  const line = desk.lines.at(-1);
  if (!line) return { ...desk, lines: [draftOf(saidBy(clause.facts), clause)] };
  if (desk.sharing) return shared(desk, clause);
  const facts = resolved(clause.facts, desk.lines);
  const said = facts.length === 1 && facts[0] ? besides(line, facts[0], clause) : saidBy(facts, line.said);
  return withLast(desk, {
    ...line,
    said,
    own: new Set([...line.own, ...facts.map(({ slot }) => slot)]),
    share: line.share ?? shareOf(clause.words),
    last: clause.sentence,
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

/** A second value, joined by `and` or a comma in the same sentence, stands beside the first; else the last word wins. */
function besides({ said, own, last }: Draft, fact: Fact, { opens, sentence }: Clause): Said {
  const before = own.has(fact.slot) ? said[fact.slot] : undefined;
  const isBeside =
    before &&
    fact.values[0] !== 'none' &&
    fact.values[0] !== 'bare' &&
    before.values.length > 0 &&
    fact.values.length > 0 &&
    !isSame(before, fact) &&
    fact.slot !== 'dressing' &&
    (opens === 'and' || opens === 'comma') &&
    sentence === last;
  return isBeside
    ? { ...said, [fact.slot]: beside(before, fact, 'and') }
    : saidBy([fact], before ? said : pick(said, (slot) => slot !== fact.slot));
}

/** A quantity, style or weight that the line at hand has otherwise begins a new line. */
function started(desk: Desk, clause: Clause): Desk {
  const line = desk.lines.at(-1);
  const said = saidBy(resolved(clause.facts, desk.lines));
  if (!line) return { ...desk, lines: [draftOf(said, clause)], sharing: false };
  if (differs(line, said, clause))
    return { ...desk, lines: [...desk.lines, following(line, said, clause)], sharing: false };
  return { ...withLast(desk, continued(line, said, clause)), sharing: false };
}
