import type { PersonId } from '../domain/desk/person.ts';
import { HOUR, type Instant } from '../domain/craft/time.ts';
import type { Book, Card } from './book.ts';
import type { Letter, LetterDraft } from './letter.ts';
import { remember } from './memory.ts';
import { CRASHES_MOST, type Outcome, verdict } from './outcome.ts';

/** More waiting letters than this for one chat, and its oldest unsent answers are dropped: newer ones have overtaken them. */
export const WAITING_MOST = 40;
const CARDS_MOST = 1000;
const DEAD_MOST = 100;
const DEAD_HOURS = 7 * 24;

/** The book with `drafts` queued under keys `<source>:<n>`, or their own; a key that was queued before is not queued again.
 *  A letter that finds nothing else waiting goes out at once, so it is marked as going out in this same write. */
export function queue<Desk>(
  book: Book<Desk>,
  drafts: readonly LetterDraft[],
  source: string,
  now: Instant,
): Book<Desk> {
  const letters = drafts
    .map((draft, index) => letterOf(draft, `${source}:${index + 1}`, now))
    .filter(({ key }, index, all) => !isKnown(book, key) && all.findIndex((other) => other.key === key) === index);
  const own = letters.filter(({ key }) => drafts.some((draft) => draft.key === key));
  if (letters.length === 0) return book;
  return {
    ...book,
    said: remember(
      book.said,
      own.map(({ key }) => ({ key, at: now })),
      now,
    ),
    outbox: letters.reduce((outbox, letter) => placed(outbox, letter, now), book.outbox),
  };
}

/** The book once somebody is heard of who could not be written to: what they were told meanwhile goes out after all, but for
 *  answers to what they asked then and reminders of what was due then. */
export function raised<Desk>(book: Book<Desk>, by: PersonId, now: Instant): Book<Desk> {
  const back = book.dead.filter(
    ({ letter, why }) => letter.to === by && why === 'unreachable' && TOLD.has(letter.kind),
  );
  if (back.length === 0) return book;
  const letters = back.map(({ letter }) => ({ ...letter, attempts: 0, notBefore: 0 }));
  return {
    ...book,
    dead: book.dead.filter((row) => !back.includes(row)),
    outbox: letters.reduce((outbox, letter) => placed(outbox, letter, now), book.outbox),
  };
}
const TOLD: ReadonlySet<Letter['kind']> = new Set(['news', 'confirmation']);

/** The first letter of a chat that may go out now. */
export const nextFor = <Desk>(book: Book<Desk>, to: PersonId, now: Instant): Letter | null => {
  const first = book.outbox.find((letter) => letter.to === to);
  return first !== undefined && first.notBefore <= now ? first : null;
};

/** Chats with something waiting, the longest waiting first, and when the first of it may go out. */
export function waitingChats<Desk>(book: Book<Desk>): ReadonlyMap<PersonId, Instant> {
  const chats = new Map<PersonId, Instant>();
  for (const { to, notBefore } of book.outbox) if (!chats.has(to)) chats.set(to, notBefore);
  return chats;
}

/** Marks the letter as going out. */
export const marked = <Desk>(book: Book<Desk>, letter: Letter, now: Instant): Book<Desk> => ({
  ...book,
  outbox: book.outbox.map((row) => (row.key === letter.key ? mark(row, now) : row)),
});

/** After a crash: what was going out is in doubt, and goes out again unless it has been in doubt too often. */
export const recovered = <Desk>(book: Book<Desk>, now: Instant): Book<Desk> => {
  const doubted = book.outbox.filter((letter) => letter.sendingSince !== null);
  if (doubted.length === 0) return book;
  const lost = doubted.filter(({ attempts }) => attempts >= CRASHES_MOST);
  const kept = book.outbox.filter((letter) => !lost.includes(letter));
  return buried({ ...book, outbox: kept.map((row) => ({ ...row, sendingSince: null })) }, lost, 'unknown', now);
};

/** The book after the letter's call came back: sent, put aside, sent anew, or given up. */
export function settled<Desk>(
  book: Book<Desk>,
  letter: Letter,
  call: Call,
  outcome: Outcome,
  now: Instant,
): Book<Desk> {
  const fate = verdict(letter, call.how, outcome, now);
  switch (fate.do) {
    case 'done':
      return kept(without(book, letter), letter, outcome, now);
    case 'again':
      return changed(book, letter, { notBefore: fate.notBefore, attempts: Math.max(0, fate.attempts) });
    case 'anew':
      return changed({ ...book, cards: withoutKey(book.cards, cardKey(letter)) }, letter, { attempts: 0 });
    case 'plain':
      return changed(buried(book, [letter], outcome.is, now), letter, { ...BARE, attempts: 0 });
    case 'give-up':
      return buried(without(book, letter), [letter], outcome.is, now);
    case 'give-up-chat':
      return gone(book, letter.to, outcome, now);
    case 'stop':
      return changed(book, letter, { attempts: Math.max(0, letter.attempts - 1) });
  }
}

export type Call = Readonly<{ how: 'send' | 'edit' }>;

/** The card that shows a letter's slot, if one does. */
export const cardOf = <Desk>(book: Book<Desk>, letter: Letter): Card | null => book.cards[cardKey(letter)] ?? null;

const BARE: Pick<Letter, 'picture' | 'rows'> = { picture: null, rows: [] };

const cardKey = (letter: Letter): string => `${letter.to}/${letter.slot ?? ''}`;

function letterOf({ key, ...draft }: LetterDraft, fallback: string, now: Instant): Letter {
  return { ...draft, key: key ?? fallback, queuedAt: now, notBefore: 0, attempts: 0, sendingSince: null };
}

const isKnown = <Desk>(book: Book<Desk>, key: string): boolean =>
  book.outbox.some((letter) => letter.key === key) || book.said.some((row) => row.key === key);

const mark = (letter: Letter, now: Instant) => ({ ...letter, attempts: letter.attempts + 1, sendingSince: now });

function placed(outbox: Book<unknown>['outbox'], letter: Letter, now: Instant): Book<unknown>['outbox'] {
  const before = outbox.filter(({ to }) => to === letter.to);
  const dropped = before.length >= WAITING_MOST ? before.find(isStaleAnswer) : undefined;
  const room = dropped === undefined ? outbox : outbox.filter((row) => row !== dropped);
  return [...room, outbox.length === 0 ? mark(letter, now) : letter];
}

const isStaleAnswer = (letter: Letter): boolean => letter.kind === 'answer' && letter.sendingSince === null;

const without = <Desk>(book: Book<Desk>, letter: Letter): Book<Desk> => ({
  ...book,
  outbox: book.outbox.filter(({ key }) => key !== letter.key),
});

const changed = <Desk>(book: Book<Desk>, letter: Letter, change: Partial<Letter>): Book<Desk> => ({
  ...book,
  outbox: book.outbox.map((row) => (row.key === letter.key ? { ...row, ...change, sendingSince: null } : row)),
});

/** A message that carries a slot's card is remembered, so that the next card can be written over it. */
function kept<Desk>(book: Book<Desk>, letter: Letter, outcome: Outcome, now: Instant): Book<Desk> {
  if (letter.slot === null || outcome.is !== 'sent') return book;
  const card = { message: outcome.message, picture: outcome.picture, at: now };
  return { ...book, cards: newest({ ...book.cards, [cardKey(letter)]: card }) };
}

const newest = (cards: Book<unknown>['cards']): Book<unknown>['cards'] =>
  Object.keys(cards).length <= CARDS_MOST
    ? cards
    : Object.fromEntries(
        Object.entries(cards)
          .sort(([, a], [, b]) => b.at - a.at)
          .slice(0, CARDS_MOST / 2),
      );

const withoutKey = (cards: Book<unknown>['cards'], key: string): Book<unknown>['cards'] =>
  Object.fromEntries(Object.entries(cards).filter(([name]) => name !== key));

/** Nobody reads what waits for this chat: it is put aside, and its cards are forgotten. */
const gone = <Desk>(book: Book<Desk>, to: PersonId, outcome: Outcome, now: Instant): Book<Desk> =>
  buried(
    { ...book, outbox: book.outbox.filter((letter) => letter.to !== to) },
    book.outbox.filter((letter) => letter.to === to),
    outcome.is,
    now,
  );

function buried<Desk>(book: Book<Desk>, letters: readonly Letter[], why: string, now: Instant): Book<Desk> {
  const rows = letters.map((letter) => ({ letter: laidDown(letter), why, at: now }));
  const young = book.dead.filter(({ at }) => at > now - DEAD_HOURS * HOUR);
  return { ...book, dead: [...young, ...rows].slice(-DEAD_MOST) };
}

/** A letter that nobody gets any more; the file that went along is not kept. */
function laidDown(letter: Letter): Letter {
  const { document: _, ...rest } = letter;
  return { ...rest, sendingSince: null };
}
