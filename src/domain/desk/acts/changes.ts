import { currentStep } from '../../bench/lot.ts';
import { benchTap } from '../benchButtons.ts';
import type { Card } from '../card.ts';
import { parseChange, writeChange, type About, type Change } from '../change.ts';
import { begunTold } from '../begunTold.ts';
import { changed, effectsOf } from '../changed.ts';
import { isUnbegun } from '../changedTurn.ts';
import { wordButton } from '../draftButtons.ts';
import { lotChanged } from '../lotChanges.ts';
import { news } from '../news.ts';
import { dayIn, hoursIn, offIn } from './hourWords.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** A change the maker typed: what it would do to promises, with a button that makes it. Undefined for words that are none. */
export function change(turn: Turn, text: string): Decision | undefined {
  const found = SAID.find(({ pattern }) => pattern.test(text));
  if (found === undefined || isAnswering(turn)) return undefined;
  const rest = text.replace(found.pattern, '').trim();
  const change = found.read(turn, rest);
  if (change !== undefined) return shown(turn, change);
  if (!NAMED[found.about](turn, rest)) return undefined;
  return says(turn.desk, card(turn.by.id, { code: 'which-change', about: found.about }));
}

const isNumbered = (_: Turn, rest: string): boolean => rest === '' || /^k[\s-]?\d/i.test(rest);

/** Whether words after the first are about a change at all: "first a dozen balls" and "extra long hooks" are about something else. */
const NAMED: Readonly<Record<About, (turn: Turn, rest: string) => boolean>> = {
  day: () => true,
  hours: (turn, rest) => rest === '' || dayIn(turn, rest.split(/\s/)[0] ?? '') !== undefined,
  order: isNumbered,
  lot: isNumbered,
  split: isNumbered,
};

/** Shows what a change that a button names would do. */
export function propose(turn: Turn, tap: Tap): Decision {
  const change = parseChange(tap.arg);
  return change === undefined ? { ...nothing(turn.desk), toast: 'stale' } : shown(turn, change);
}

/** Makes the change that was shown. */
export function apply(turn: Turn, tap: Tap): Decision {
  const { world, desk, by, now } = turn;
  const change = parseChange(tap.arg);
  const after = change && changed(world.shop, desk, change, now);
  if (change === undefined) return { ...nothing(desk), toast: 'stale' };
  if (after === undefined) return { ...says(desk, card(by.id, noChange(turn, change))), toast: 'stale' };
  const rows = [[wordButton('bench', benchTap('bench')), wordButton('queue', benchTap('queue'))]];
  const begins = 'order' in change && isUnbegun(world.shop, desk, change.order) && !after.held.includes(change.order);
  const told = begins ? begunTold(after, change.order) : [];
  return news(turn, desk, {
    ...says(after, card(by.id, { code: 'changed', change }, { rows }), ...told),
    toast: 'done',
  });
}

/** Nothing is changed by it yet. */
function shown(turn: Turn, change: Change): Decision {
  const { world, desk, by, now } = turn;
  const after = changed(world.shop, desk, change, now);
  if (after === undefined) return says(desk, card(by.id, noChange(turn, change)));
  const rows = [[wordButton('apply', benchTap('apply', '-', writeChange(change)))]];
  const effects = effectsOf(world.shop, desk, after, now);
  return says(desk, card(by.id, { code: 'change-effect', change, effects }, { rows }));
}

/** That a change changes nothing, and of a lot what stands against it; nobody is told that an order waiting for its money is on hold. */
function noChange({ world, desk }: Turn, change: Change): Card['say'] {
  if (change.do === 'hold' && isUnbegun(world.shop, desk, change.order))
    return { code: 'waits-for-money', order: change.order };
  const next = 'lot' in change ? lotChanged(world.shop, desk, change) : null;
  const lot = 'lot' in change ? desk.lots[change.lot] : undefined;
  const why = typeof next === 'string' ? next : null;
  return { code: 'no-change', change, why, step: (lot && currentStep(lot)?.step) ?? null };
}

/** Words to a buyer are never taken for a change. */
const isAnswering = ({ by }: Turn): boolean => by.asked?.for === 'reply' || by.asked?.for === 'question';

type Said = Readonly<{
  pattern: RegExp;
  about: About;
  read: (turn: Turn, rest: string) => Change | undefined;
}>;

const opened = (turn: Turn, rest: string): Change | undefined => {
  const day = dayIn(turn, rest);
  return day === undefined ? undefined : { do: 'on', day };
};
const ofOrder =
  (what: 'first' | 'hold' | 'release') =>
  (_turn: Turn, rest: string): Change | undefined => {
    // A lot takes its turn with its order; the whole of that is shown before it is made.
    const digits = /^k[\s-]?(\d{3,7})(?:-\d{1,2}[a-z]{0,2})?[.!]?$/i.exec(rest)?.[1];
    return digits === undefined ? undefined : { do: what, order: `K-${digits}` };
  };
const ofLot =
  (what: 'remake' | 'shelve' | 'join') =>
  (_turn: Turn, rest: string): Change | undefined => {
    const lot = lotIn(rest);
    return lot === undefined ? undefined : { do: what, lot };
  };

/** What the maker says for each change, in English or Spanish. */
const SAID: readonly Said[] = [
  { pattern: word('(?:day )?off|closed|libre|cerrado'), about: 'day', read: offIn },
  { pattern: word('on|open|abierto'), about: 'day', read: opened },
  { pattern: word('extra'), about: 'hours', read: hoursIn('extra') },
  { pattern: word('hours|horas'), about: 'hours', read: hoursIn('hours') },
  { pattern: word('first|primero'), about: 'order', read: ofOrder('first') },
  { pattern: word('hold|pausa'), about: 'order', read: ofOrder('hold') },
  { pattern: word('release|sigue'), about: 'order', read: ofOrder('release') },
  { pattern: word('re-?make|rehacer'), about: 'lot', read: ofLot('remake') },
  { pattern: word('shel(?:ve|f)|to the shelf|estante'), about: 'lot', read: ofLot('shelve') },
  { pattern: word('join|juntar'), about: 'lot', read: ofLot('join') },
  { pattern: word('split|partir'), about: 'split', read: splitIn },
];

/** The word at the beginning, alone or with what it is about after it. */
function word(words: string): RegExp {
  return new RegExp(`^/?(?:${words})(?:\\s+|[.!]*$)`, 'i');
}

function splitIn({ desk }: Turn, rest: string): Change | undefined {
  const [, words = '', heads] = /^(\S+)\s+(\d{1,4})$/.exec(rest) ?? [];
  const lot = lotIn(words);
  return lot === undefined ? undefined : { do: 'split', lot, heads: Number(heads), of: desk.lots[lot]?.heads ?? 0 };
}

/** @example lotIn('k-1001-1B') //=> 'K-1001-1b' */
export const lotIn = (words: string): string | undefined => {
  const [, digits, rest] = /^k[\s-]?(\d{3,7})(-\d{1,2}[a-z]{0,2})[.!]?$/i.exec(words) ?? [];
  return digits === undefined || rest === undefined ? undefined : `K-${digits}${rest.toLowerCase()}`;
};
