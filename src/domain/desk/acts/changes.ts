import type { Day } from '../../craft/time.ts';
import { benchTap } from '../benchButtons.ts';
import { parseChange, writeChange, type Change } from '../change.ts';
import { changed, effectsOf } from '../changed.ts';
import { wordButton } from '../draftButtons.ts';
import { news } from '../news.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** A change the maker typed: what it would do to promises, with a button that makes it. Undefined for words that are none. */
export function change(turn: Turn, text: string): Decision | undefined {
  const found = SAID.find(({ pattern }) => pattern.test(text));
  if (found === undefined || isAnswering(turn)) return undefined;
  const change = found.read(turn, text.replace(found.pattern, '').trim());
  if (change === undefined)
    return found.says === 'day' ? says(turn.desk, card(turn.by.id, { code: 'which-change' })) : undefined;
  return shown(turn, change);
}

/** Makes the change that was shown. */
export function apply(turn: Turn, tap: Tap): Decision {
  const { world, desk, by, now } = turn;
  const change = parseChange(tap.arg);
  const after = change && changed(world.shop, desk, change, now);
  if (change === undefined || after === undefined) return { ...nothing(desk), toast: 'stale' };
  const rows = [[wordButton('bench', benchTap('bench')), wordButton('queue', benchTap('queue'))]];
  return news(turn, desk, { ...says(after, card(by.id, { code: 'changed', change }, { rows })), toast: 'done' });
}

/** Nothing is changed by it yet. */
function shown({ world, desk, by, now }: Turn, change: Change): Decision {
  const after = changed(world.shop, desk, change, now);
  if (after === undefined) return says(desk, card(by.id, { code: 'no-change', change }));
  const rows = [[wordButton('apply', benchTap('apply', '-', writeChange(change)))]];
  const effects = effectsOf(world.shop, desk, after, now);
  return says(desk, card(by.id, { code: 'change-effect', change, effects }, { rows }));
}

/** Words to a buyer are never taken for a change. */
const isAnswering = ({ by }: Turn): boolean => by.asked?.for === 'reply' || by.asked?.for === 'question';

type Said = Readonly<{
  pattern: RegExp;
  says: 'day' | 'thing';
  read: (turn: Turn, rest: string) => Change | undefined;
}>;

const ofDay =
  (what: 'off' | 'on') =>
  (turn: Turn, rest: string): Change | undefined => {
    const day = dayIn(turn, rest);
    return day === undefined ? undefined : { do: what, day };
  };
const ofOrder =
  (what: 'first' | 'hold' | 'release') =>
  (_turn: Turn, rest: string): Change | undefined => {
    const digits = /^k[\s-]?(\d{3,7})[.!]?$/i.exec(rest)?.[1];
    return digits === undefined ? undefined : { do: what, order: `K-${digits}` };
  };
const ofLot =
  (what: 'remake' | 'shelve' | 'join') =>
  (_turn: Turn, rest: string): Change | undefined => {
    const lot = lotIn(rest);
    return lot === undefined ? undefined : { do: what, lot };
  };

/** What the maker says for each change. */
const SAID: readonly Said[] = [
  { pattern: /^\/?off\s+/i, says: 'day', read: ofDay('off') },
  { pattern: /^\/?on\s+/i, says: 'day', read: ofDay('on') },
  { pattern: /^\/?extra\s+/i, says: 'day', read: extraIn },
  { pattern: /^\/?first\s+/i, says: 'thing', read: ofOrder('first') },
  { pattern: /^\/?hold\s+/i, says: 'thing', read: ofOrder('hold') },
  { pattern: /^\/?release\s+/i, says: 'thing', read: ofOrder('release') },
  { pattern: /^\/?remake\s+/i, says: 'thing', read: ofLot('remake') },
  { pattern: /^\/?shelve\s+/i, says: 'thing', read: ofLot('shelve') },
  { pattern: /^\/?join\s+/i, says: 'thing', read: ofLot('join') },
  { pattern: /^\/?split\s+/i, says: 'thing', read: splitIn },
];

/** A day in the maker's words, as a buyer's need-by day is read. @example 'friday', '2026-12-05' */
function dayIn({ world, now }: Turn, words: string): Day | undefined {
  return words === '' ? undefined : (world.reader.read(`by ${words}`, now).needBy ?? undefined);
}

function extraIn(turn: Turn, rest: string): Change | undefined {
  const hours = /(\d{1,2}:\d{2})\s*(?:-|–|to)\s*(\d{1,2}:\d{2})\s*$/i.exec(rest);
  const day = hours ? dayIn(turn, rest.slice(0, hours.index).trim()) : undefined;
  const [from = '', to = ''] = (hours?.slice(1) ?? []).map((clock) => clock.padStart(5, '0'));
  return day === undefined ? undefined : parseChange(`extra ${day} ${from} ${to}`);
}

function splitIn(_turn: Turn, rest: string): Change | undefined {
  const [, words = '', heads] = /^(\S+)\s+(\d{1,4})$/.exec(rest) ?? [];
  const lot = lotIn(words);
  return lot === undefined ? undefined : { do: 'split', lot, heads: Number(heads) };
}

/** @example lotIn('k-1001-1B') //=> 'K-1001-1b' */
export const lotIn = (words: string): string | undefined => {
  const [, digits, rest] = /^k[\s-]?(\d{3,7})(-\d{1,2}[a-z]{0,2})[.!]?$/i.exec(words) ?? [];
  return digits === undefined || rest === undefined ? undefined : `K-${digits}${rest.toLowerCase()}`;
};
