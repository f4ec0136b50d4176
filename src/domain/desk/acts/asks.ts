import { draftOf } from './draft.ts';
import { benchTap } from '../benchButtons.ts';
import type { Draft } from '../../order/draft.ts';
import { turned } from '../../order/talk.ts';
import { LINE_SLOTS } from '../../shop/words.ts';
import type { Card, CardButton } from '../card.ts';
import { draftTap, wordButton } from '../draftButtons.ts';
import type { PersonId } from '../person.ts';
import type { Question, Wish } from '../state.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, withPerson, type Decision, type Turn } from '../turn.ts';

/** Questions of one person that may wait for the maker at a time. */
const WAITING_MOST = 5;

export const hasAskedEnough = ({ desk, by }: Turn): boolean =>
  Object.values(desk.questions).filter(({ from, answeredAt }) => from === by.id && answeredAt === null).length >=
  WAITING_MOST;

/** What is not passed on, because as much waits for the maker already. */
export const askedEnough = ({ desk, by }: Turn): Decision =>
  says(withPerson(desk, { ...by, asked: null }), card(by.id, { code: 'too-many-questions', most: WAITING_MOST }));

/** The next thing this person types goes to the maker, under the heading of an order where it is about one. */
export const askMaker = (turn: Turn, order: string | null = null): Decision =>
  hasAskedEnough(turn)
    ? askedEnough(turn)
    : says(
        withPerson(turn.desk, { ...turn.by, asked: { for: 'question', order } }),
        card(turn.by.id, { code: 'ask-question' }),
      );

/** Passes a buyer's words on to the makers, under a heading that says what they are about. */
export function relay(turn: Turn, said: string, about: string | null): Decision {
  if (hasAskedEnough(turn)) return askedEnough(turn);
  const { world, desk, by, now } = turn;
  const latest = Object.values(desk.orders).findLast(({ buyer }) => buyer === by.id);
  const question: Question = {
    id: `Q${desk.next.question}`,
    from: by.id,
    order: about ?? (draftOf(turn) === undefined ? (latest?.id ?? null) : null),
    said,
    askedAt: now,
    answeredAt: null,
    wish: null,
  };
  const kept = {
    ...withPerson(desk, { ...by, asked: null }),
    questions: { ...desk.questions, [question.id]: question },
    next: { ...desk.next, question: desk.next.question + 1 },
  };
  const rows = [[wordButton('reply', benchTap('reply', question.id))]];
  return says(
    kept,
    card(by.id, { code: 'question-sent', question: question.id }),
    ...toMakers(
      world,
      { code: 'buyer-asks', question, buyer: by.name, draft: draftOf(turn) ?? null },
      { rows, key: `asks/${question.id}` },
    ),
  );
}

/** The next thing the maker types is the answer. */
export function reply(turn: Turn, tap: Tap): Decision {
  const { desk, by } = turn;
  const question = desk.questions[tap.on];
  if (question === undefined) return { ...nothing(desk), toast: 'stale' };
  const buyer = desk.people[question.from]?.name ?? String(question.from);
  return says(
    withPerson(desk, { ...by, asked: { for: 'reply', question: question.id } }),
    card(by.id, { code: 'ask-reply', question, buyer }),
  );
}

/** The maker's words, or a photo with words under it, to the buyer who asked. */
export function answerQuestion(turn: Turn, id: string, text: string, photo: string | null = null): Decision {
  const { desk, by, now } = turn;
  const question = desk.questions[id];
  const free = withPerson(desk, { ...by, asked: null });
  if (question === undefined) return nothing(free);
  const buyer = desk.people[question.from]?.name ?? String(question.from);
  const answered = { ...free, questions: { ...desk.questions, [id]: { ...question, answeredAt: now } } };
  const draft = question.wish === null ? desk.drafts[question.from] : wordedAnew(turn, question.wish, question.from);
  const rows = draft
    ? [...offeredIn(turn, draft, question.wish, text), [wordButton('keep-on', draftTap(draft, 'keep-on'))]]
    : [];
  return says(
    draft ? { ...answered, drafts: { ...answered.drafts, [question.from]: draft } } : answered,
    card(by.id, { code: 'reply-sent', buyer }),
    card(
      question.from,
      { code: 'maker-says', text, about: question.said },
      {
        kind: 'news',
        rows,
        picture: photo === null ? null : { photo },
        key: `reply/${id}/${now}${photo === null ? '' : `/${photo}`}`,
      },
    ),
  );
}

/** The buyer's draft without the wish that words have answered: what was wished is open again. */
function wordedAnew({ desk, now }: Turn, wish: Wish, from: PersonId): Draft | undefined {
  const draft = desk.drafts[from];
  if (draft?.id !== wish.draft || wish.pass !== null) return draft;
  const unclear = draft.unclear.filter(({ slot, said }) => slot !== wish.slot || said !== wish.said);
  return unclear.length === draft.unclear.length ? draft : turned({ ...draft, unclear }, now);
}

/** What is to cost more is granted with the button for it, or the price would be lost. */
const PRICED = /[$€£¢]|(?<!\p{L})(?:cents?|bucks|dollars?|extra|more each|centavos|d[oó]lares)(?!\p{L})/iu;

/** What the maker's words offer instead of the wish, as a button: No glow, but chartreuse comes close. */
function offeredIn({ world, now }: Turn, draft: Draft, wish: Wish | null, text: string): Card['rows'] {
  const slot = LINE_SLOTS.find((name) => name === wish?.slot);
  if (slot === undefined || wish?.line !== draft.current || PRICED.test(text)) return [];
  const offers = new Set(world.reader.read(text, now).lines.flatMap((line) => line[slot] ?? []));
  const choice = (value: string): CardButton => ({
    label: { code: 'choice', ask: slot, value },
    tap: draftTap(draft, 'offered', `${slot}=${value}`),
  });
  return [...offers].map((value) => [choice(String(value))]);
}
