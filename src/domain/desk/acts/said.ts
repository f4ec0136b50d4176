import { asksAfter, asksToReaddress } from '../../order/afterwards.ts';
import { isBlank } from '../../order/draft.ts';
import { universalIn, type Universal } from '../../order/universal.ts';
import { benchTap } from '../benchButtons.ts';
import type { Tap } from '../tap.ts';
import { isMaker, type Decision, type Turn } from '../turn.ts';
import { answerAsked, readdressed } from './answers.ts';
import { benchWords } from './benchWords.ts';
import { change, lotIn } from './changes.ts';
import { business } from './business.ts';
import { draftOf } from './draft.ts';
import { closeNow } from './daily.ts';
import { garage } from './garage.ts';
import { makerUnclear } from './greet.ts';
import { hours } from './hours.ts';
import { lot } from './lot.ts';
import { wordsOfOwn } from './loose.ts';
import { minutes } from './minutes.ts';
import { again } from './again.ts';
import { cancel } from './cancel.ts';
import { hasOrders, order, orders, readdressAsked } from './orders.ts';
import { paperAsked } from './papers.ts';
import { ovenAt } from './oven.ts';
import { reckon } from './reckon.ts';
import { trackingSaid } from './ship.ts';
import { talk } from './talk.ts';
import { universal } from './words.ts';

/** Longest name and address, question or answer that is kept, in characters. */
const LONGEST = 1000;

/** Something typed: a word that always works, the answer to what was asked, an order number, or words about heads wanted. */
export function said(turn: Turn, text: string): Decision {
  const own = isMaker(turn.world, turn.by.id)
    ? (makerCommand(turn, text) ?? benchWords(turn, text) ?? change(turn, text.trim()) ?? business(turn, text))
    : undefined;
  if (own) return own;
  const word = wordIn(turn, text);
  if (word !== undefined) return universal(turn, word, text);
  const listed = paperAsked(turn, text);
  if (listed) return listed;
  const named = orderWords(turn, text.trim());
  if (named) return named;
  const number = orderNumberIn(text);
  if (number !== undefined) return order(turn, { act: 'order', on: number, version: 0, arg: '-' });
  const answer = answerAsked(turn, text.trim().slice(0, LONGEST));
  if (answer) return answer;
  if (isMaker(turn.world, turn.by.id) && draftOf(turn) === undefined) return makerUnclear(turn);
  return aboutOwn(turn, text) ?? talk(turn, text);
}

/** A word that always works; yes and thanks are passed on instead, where words for the other side are awaited. */
function wordIn({ by }: Turn, text: string): Universal | undefined {
  const word = universalIn(text);
  const isAwaited = by.asked?.for === 'reply' || by.asked?.for === 'question';
  return isAwaited && (word === 'yes' || word === 'thanks') ? undefined : word;
}

/** Words of somebody who has ordered about what they ordered. */
function aboutOwn(turn: Turn, text: string): Decision | undefined {
  if (!hasOrders(turn)) return undefined;
  const moved = readdressed(turn, text.trim().slice(0, LONGEST));
  if (moved) return moved;
  if (asksToReaddress(text)) return readdressAsked(turn);
  return asksAfterOwn(turn, text) ? orders(turn) : wordsOfOwn(turn, text);
}

/** Whether a buyer asks after what they ordered; “when” is of the order at hand, if one is being put together. */
function asksAfterOwn(turn: Turn, text: string): boolean {
  const asked = asksAfter(text);
  if (asked === undefined) return false;
  const draft = draftOf(turn);
  return asked === 'status' || draft === undefined || isBlank(draft);
}

/** Commands of the maker that carry words of their own. */
const MAKER_COMMANDS: readonly (readonly [RegExp, (turn: Turn, rest: string) => Decision])[] = [
  [/^\/?garage\b/i, garage],
  [/^\/?reckon\b/i, reckon],
  [/^\/?oven\b/i, ovenAt],
  [/^\/?(?:minutes|minutos)[.!]*$/i, minutes],
  [/^\/?(?:hours|horas)[?.!]*$/i, hours],
  [/^\/?(?:close|close down|cerrar|cierre)[.!]*$/i, closeNow],
  [/^\/?(?:tracking|seguimiento)\s+(?=k)/i, trackingSaid],
  [/^\/?(?:lot|lote)\s+(?=k)/i, (turn, rest) => lot(turn, benchTap('lot', lotIn(rest) ?? rest.slice(0, 20)))],
];

function makerCommand(turn: Turn, text: string): Decision | undefined {
  const said = text.trim();
  const found = MAKER_COMMANDS.find(([pattern]) => pattern.test(said));
  return found?.[1](turn, said.replace(found[0], '').trim());
}

/** Words about one order of the sender's. */
const ORDER_WORDS: readonly (readonly [RegExp, (turn: Turn, tap: Tap) => Decision])[] = [
  [/^\/?(?:cancel|cancelar)\s+(?=k)/i, cancel],
  [/^\/?(?:again|reorder|repeat|repetir|otra vez)\s+(?=k)/i, again],
];

/** @example `cancel K-1042`, `again K-1042` */
function orderWords(turn: Turn, said: string): Decision | undefined {
  const [pattern, act] = ORDER_WORDS.find(([words]) => words.test(said)) ?? [];
  const on = pattern && orderNumberIn(said.replace(pattern, ''));
  return act === undefined || !on ? undefined : act(turn, { act: 'order', on, version: 0, arg: '-' });
}

/** An order number that is all a message says. @example orderNumberIn('k 1042') //=> 'K-1042' */
export const orderNumberIn = (text: string): string | undefined => {
  const digits = /^\s*k[\s-]?(\d{3,7})\s*[?.!]?\s*$/i.exec(text)?.[1];
  return digits && `K-${digits}`;
};
