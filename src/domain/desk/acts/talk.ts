import { nextAsk } from '../../order/next.ts';
import { quoting, type Ask, type Draft } from '../../order/draft.ts';
import type { Reading } from '../../order/reader/reading.ts';
import { enquiryIn, wantsHeads, type Enquiry } from '../../order/enquiry.ts';
import { hear, linesTooMany, turned } from '../../order/talk.ts';
import { proceed } from '../ask.ts';
import { draftTap, wordButton } from '../draftButtons.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { acceptTyped } from './accept.ts';
import { draftOf, opened, usual } from './draft.ts';
import { answerEnquiry } from './enquiry.ts';
import { welcome } from './greet.ts';
import { wordsAfter } from './loose.ts';

/** What a message says of an order, heard into the sender's draft; a new one if there is none. */
export const talk = (turn: Turn, text: string): Decision => talkOf(turn, text, (reading) => reading);

/** The same of words that take the place of what was said just before: they change the line at hand instead of adding one. */
export const talkAnew = (turn: Turn, text: string): Decision =>
  talkOf(turn, text, (reading) => ({ ...reading, refers: reading.refers ?? { kind: 'change', which: null } }));

function talkOf(turn: Turn, text: string, asMeant: (reading: Reading) => Reading): Decision {
  const open = draftOf(turn);
  const [at, draft] = open === undefined ? opened(turn) : [turn, open];
  const ask = open && nextAsk(turn.world.shop, draft)?.ask;
  const reading = asMeant(readFor(turn, text, ask));
  const past = turn.by.past[0]?.lines ?? [];
  const after = reading.refers?.kind === 'change' ? wordsAfter(turn, text) : undefined;
  if (after) return after;
  const heard = hear(turn.world.shop, draft, reading, { ask, past, now: turn.now });
  const enquiry = enquiryIn(text, (words) => turn.world.reader.read(words, turn.now));
  if (enquiry && (heard === draft || isAside(enquiry, reading))) return answerEnquiry(turn, enquiry);
  if (heard === draft) return unheard(turn, text);
  const over = linesTooMany(turn.world.shop, draft, reading, past);
  const next = proceed(at, quoting(draft, heard, text), 'below');
  if (over === 0) return next;
  const told = card(turn.by.id, { code: 'too-many-lines', over, most: turn.world.shop.orders.lines });
  return { ...next, cards: [told, ...next.cards] };
}

/** A short answer is read in the light of what was asked; anything else, and what says nothing in that light, for itself. */
function readFor({ world, now }: Turn, text: string, ask: Ask | undefined): Reading {
  if (ask === undefined) return world.reader.read(text, now);
  // Beside the usual fittings the card offers numbers of heads.
  const answer = world.reader.answer(text, ask === 'usual' ? 'quantity' : ask, now);
  return saysNothing(answer) ? world.reader.read(text, now) : answer;
}

/** A question that says something of a head besides, as `which hooks go in a swim head?`, and orders nothing. */
const isAside = ({ on }: Enquiry, { lines }: Reading): boolean =>
  (on === 'range' && lines.every(({ quantity }) => quantity === undefined)) || (on === 'post' && lines.length === 0);

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
  const ask = nextAsk(turn.world.shop, missing)?.ask ?? 'style';
  const again = proceed({ ...turn, desk: stored }, missing, 'below');
  const rows = missing.misses > 2 ? [[wordButton('ask-maker', draftTap(missing, 'ask-maker'))]] : [];
  return {
    ...again,
    cards: [
      card(turn.by.id, { code: 'not-understood', draft: missing, misses: missing.misses, ask }, { rows }),
      ...again.cards,
    ],
  };
}

/** A yes is to what was asked: the rest as usual, or the order itself. To anything else it says nothing. */
export function agreed(turn: Turn): Decision | undefined {
  const draft = draftOf(turn);
  if (draft === undefined) return undefined;
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
  if (turn.desk.quotes[draft.id]?.version !== draft.version) return undefined;
  const rows = [
    [wordButton('accept', draftTap(draft, 'accept'))],
    [wordButton('ask-maker', draftTap(draft, 'ask-maker')), wordButton('keep-on', draftTap(draft, 'keep-on'))],
  ];
  return says(turn.desk, card(turn.by.id, { code: 'yes-to-which' }, { rows }));
}
