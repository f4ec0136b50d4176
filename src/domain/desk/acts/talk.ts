import { nextAsk } from '../../order/next.ts';
import { isBlank, quoting, type Ask, type Draft } from '../../order/draft.ts';
import type { Reading } from '../../order/reader/reading.ts';
import { enquiryIn, wantsHeads, type Enquiry } from '../../order/enquiry.ts';
import { isAnyDay } from '../../order/needBy.ts';
import { ANY_DAY, answered, hear, linesTooMany, turned } from '../../order/talk.ts';
import { findingsOf, proceed } from '../ask.ts';
import type { Hint } from '../buyerSaying.ts';
import { draftTap, wordButton } from '../draftButtons.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { acceptTyped } from './accept.ts';
import { draftOf, isQuoted, opened, usual } from './draft.ts';
import { answerEnquiry } from './enquiry.ts';
import { welcome } from './greet.ts';
import { wordsAfter } from './loose.ts';

/** What a message says of an order, heard into the sender's draft; a new one if there is none. */
export const talk = (turn: Turn, text: string): Decision =>
  anyDay(turn, text) ?? talkOf(turn, text, (reading) => reading);

/** No day in particular, where a day was asked for. */
function anyDay(turn: Turn, text: string): Decision | undefined {
  const draft = draftOf(turn);
  const isAsked = draft !== undefined && nextAsk(turn.world.shop, draft)?.ask === 'needBy';
  return isAsked && isAnyDay(text) ? proceed(turn, answered(draft, 'needBy', ANY_DAY, turn.now), 'below') : undefined;
}

/** The same of words that take the place of what was said just before: they change the line at hand instead of adding one. */
export const talkAnew = (turn: Turn, text: string): Decision =>
  talkOf(turn, text, (reading) => ({ ...reading, refers: reading.refers ?? { kind: 'change', which: null } }));

function talkOf(turn: Turn, text: string, asMeant: (reading: Reading) => Reading): Decision {
  const open = draftOf(turn);
  const [at, begun] = open === undefined ? opened(turn) : [turn, open];
  const ask = open && nextAsk(turn.world.shop, open)?.ask;
  const reading = asMeant(readFor(turn, text, ask));
  const past = turn.by.past[0]?.lines ?? [];
  const after = reading.refers?.kind === 'change' ? wordsAfter(turn, text) : undefined;
  if (after) return after;
  const draft = withPlace(turn, begun, reading);
  const heard = hear(turn.world.shop, draft, reading, { ask, past, now: turn.now });
  const enquiry = enquiryIn(text, (words) => turn.world.reader.read(words, turn.now, turn.by.language));
  if (enquiry && (heard === draft || isAside(enquiry, reading, draft))) return answerEnquiry(turn, enquiry);
  if (heard === draft) return unheard(turn, text);
  const next = proceed(at, quoting(draft, heard, text), 'below');
  return { ...next, cards: [...leftOut(turn, linesTooMany(turn.world.shop, draft, reading, past)), ...next.cards] };
}

/** Says that lines found no room, if some did not. */
const leftOut = ({ world, by }: Turn, over: number): Decision['cards'] =>
  over === 0 ? [] : [card(by.id, { code: 'too-many-lines', over, most: world.shop.orders.lines })];

/** What is like last time goes where the last parcel went, unless it is said otherwise. */
const withPlace = ({ by }: Turn, draft: Draft, { refers }: Reading): Draft =>
  refers !== null && PAST.has(refers.kind) && isBlank(draft) ? { ...draft, shipTo: draft.shipTo ?? by.place } : draft;
const PAST: ReadonlySet<string> = new Set(['last-time', 'same', 'another']);

/** A short answer is read in the light of what was asked; anything else, and what says nothing in that light, for itself. */
function readFor({ world, now, by }: Turn, text: string, ask: Ask | undefined): Reading {
  const plain = world.reader.read(text, now, by.language);
  // Words that name a line are of that line, not of the one asked about.
  if (ask === undefined || typeof plain.refers?.which === 'number') return plain;
  // Beside the usual fittings the card offers numbers of heads.
  const answer = world.reader.answer(text, ask === 'usual' ? 'quantity' : ask, now, by.language);
  return saysNothing(answer) ? plain : answer;
}

/** A question that says something of a head besides, as `which hooks go in a swim head?` or `how much for 50?`, and orders nothing. */
const isAside = ({ on }: Enquiry, { lines }: Reading, draft: Draft): boolean =>
  (on === 'range' && lines.every(({ quantity }) => quantity === undefined)) ||
  (on === 'post' && lines.length === 0) ||
  (on === 'quote' && !isBlank(draft) && lines.every((words) => Object.keys(words).join() === 'quantity'));

const saysNothing = ({ lines, needBy, shipTo, unclear }: Reading): boolean =>
  lines.length === 0 && needBy === null && shipTo === null && unclear.length === 0;

/** Words that say nothing of a head: the wish to order is welcome; of someone who has ordered they may be for the maker; anything else was not understood. */
function unheard(turn: Turn, text: string): Decision {
  const draft = draftOf(turn);
  const after = wantsHeads(text) ? undefined : wordsAfter(turn, text);
  if (after) return after;
  if (draft === undefined) return welcome(turn);
  if (draft.version > 0 || !wantsHeads(text)) return missed(turn, draft);
  const next = proceed(turn, draft, 'below');
  return { ...next, cards: [card(turn.by.id, { code: 'gladly' }), ...next.cards] };
}

/** Not understood: a hint, then an example, then a person; never the same words three times. */
function missed(turn: Turn, draft: Draft): Decision {
  const missing: Draft = { ...turned(draft, turn.now), misses: draft.misses + 1 };
  const stored = { ...turn.desk, drafts: { ...turn.desk.drafts, [turn.by.id]: missing } };
  const again = proceed({ ...turn, desk: stored }, missing, 'below');
  const rows = missing.misses > 2 ? [[wordButton('ask-maker', draftTap(missing, 'ask-maker'))]] : [];
  return {
    ...again,
    cards: [
      card(
        turn.by.id,
        { code: 'not-understood', draft: missing, misses: missing.misses, hint: hintFor(turn, missing) },
        { rows },
      ),
      ...again.cards,
    ],
  };
}

const hintFor = ({ world }: Turn, draft: Draft): Hint =>
  findingsOf(world, draft).length > 0 ? 'stuck' : (nextAsk(world.shop, draft)?.ask ?? 'whole');

/** A yes is to what was asked: the rest as usual, or the order itself. To anything else it says nothing. */
export function agreed(turn: Turn): Decision | undefined {
  const draft = draftOf(turn);
  if (draft === undefined || findingsOf(turn.world, draft).length > 0) return undefined;
  if (nextAsk(turn.world.shop, draft)?.ask === 'usual') return usual(turn, draft, '-');
  return hasTalkedSince(turn, draft) ? yesToWhich(turn, draft) : acceptTyped(turn);
}

/** Whether buyer or maker wrote to the other after the draft was last changed: a yes may be meant for either. */
const hasTalkedSince = ({ desk, by }: Turn, { touchedAt }: Draft): boolean =>
  Object.values(desk.questions).some(
    ({ from, askedAt, answeredAt }) => from === by.id && Math.max(askedAt, answeredAt ?? 0) >= touchedAt,
  );

/** Nothing is ordered by a word that may have been meant for the maker. */
function yesToWhich(turn: Turn, draft: Draft): Decision | undefined {
  if (!isQuoted(turn, draft)) return undefined;
  const rows = [
    [wordButton('accept', draftTap(draft, 'accept'))],
    [wordButton('ask-maker', draftTap(draft, 'ask-maker')), wordButton('keep-on', draftTap(draft, 'keep-on'))],
  ];
  return says(turn.desk, card(turn.by.id, { code: 'yes-to-which' }, { rows }));
}
