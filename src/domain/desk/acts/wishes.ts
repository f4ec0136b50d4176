import { putSlot, withLine, type Draft } from '../../order/draft.ts';
import type { Finding } from '../../order/finding.ts';
import { turned } from '../../order/talk.ts';
import { agreedValue } from '../../order/agreed.ts';
import { isWishSlot, mayPass, passKey } from '../../order/wish.ts';
import { standsAgainst } from '../ask.ts';
import { draftTap, inRows, wordButton } from '../draftButtons.ts';
import { benchTap } from '../benchButtons.ts';
import type { Card, CardButton } from '../card.ts';
import type { Question, Wish } from '../state.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, type Decision, type Turn } from '../turn.ts';
import { askedEnough, askMaker, hasAskedEnough } from './asks.ts';
import { draftOf } from './draft.ts';

/** What the maker may ask for a wish, cents a head. */
const EXTRAS = [0, 25, 50, 100] as const;

/** Asks the maker. What of the draft was not understood, or needs the maker's word, goes at once, each as a question with answers to tap;
 *  when there is nothing of the kind, the next thing typed goes. */
export function askAbout(turn: Turn, tap: Tap): Decision {
  if (hasAskedEnough(turn)) return askedEnough(turn);
  const draft = draftOf(turn);
  const wishes = draft !== undefined && draft.id === tap.on ? wishesOf(turn, draft) : [];
  return wishes.length === 0
    ? askMaker(turn, turn.desk.orders[tap.on]?.buyer === turn.by.id ? tap.on : null)
    : wishes.reduce<Decision>((said, wish) => more({ ...turn, desk: said.desk }, said, wish), nothing(turn.desk));
}

const more = (turn: Turn, said: Decision, wish: Wish): Decision =>
  hasAskedEnough(turn) ? said : joined(said, passedOn(turn, wish));

/** The maker can do it, for so many cents a head more: it goes into the buyer's draft. */
export function grant(turn: Turn, tap: Tap): Decision {
  const cents = EXTRAS.find((extra) => String(extra) === tap.arg);
  return cents === undefined ? { ...nothing(turn.desk), toast: 'unreadable' } : answered(turn, tap.on, cents);
}

/** The maker cannot do it: the buyer is asked for something else. */
export const deny = (turn: Turn, tap: Tap): Decision => answered(turn, tap.on, null);

function wishesOf(turn: Turn, draft: Draft): readonly Wish[] {
  const unclear = draft.unclear.map(({ slot, said }): Wish => ({
    draft: draft.id,
    line: draft.current,
    slot,
    said,
    pass: null,
  }));
  const asks = standsAgainst(turn, draft)
    .filter(mayPass)
    .map((found): Wish => passWish(draft, found));
  return [...unclear, ...asks];
}

const passWish = (draft: Draft, found: Finding): Wish => ({
  draft: draft.id,
  line: found.line,
  slot: found.why.code,
  said: '',
  pass: passKey(found),
});

function passedOn(turn: Turn, wish: Wish): Decision {
  const { world, desk, by, now } = turn;
  const id = `Q${desk.next.question}`;
  const question: Question = {
    id,
    from: by.id,
    order: null,
    said: wish.said || wish.slot,
    askedAt: now,
    answeredAt: null,
    wish,
  };
  const draft = draftOf(turn) ?? null;
  const found =
    draft && wish.pass !== null ? standsAgainst(turn, draft).find((one) => passKey(one) === wish.pass) : undefined;
  const kept = {
    ...desk,
    questions: { ...desk.questions, [id]: question },
    next: { ...desk.next, question: desk.next.question + 1 },
  };
  const say = { code: 'buyer-wishes', question, buyer: by.name, draft, finding: found ?? null } as const;
  return says(
    kept,
    card(by.id, { code: 'wish-sent', said: question.said, finding: found ?? null }),
    ...toMakers(world, say, { rows: wishRows(question, wish), key: `asks/${id}` }),
  );
}

/** Can do, at no or some extra; cannot; or in words what is offered instead. A style or a weight that no mold casts cannot be granted by a tap. */
function wishRows({ id }: Question, wish: Wish): Card['rows'] {
  const extras = EXTRAS.map((cents): CardButton => ({
    label: { code: 'grant', cents },
    tap: benchTap('grant', id, String(cents)),
  }));
  const can = wish.pass !== null ? extras.slice(0, 1) : isWishSlot(wish.slot) ? extras : [];
  return [...inRows(can, 2), [wordButton('cannot', benchTap('deny', id)), wordButton('reply', benchTap('reply', id))]];
}

function answered(turn: Turn, id: string, cents: number | null): Decision {
  const { desk, by, now } = turn;
  const question = desk.questions[id];
  if (!question?.wish || question.answeredAt !== null) return { ...nothing(desk), toast: 'already' };
  const buyer = desk.people[question.from]?.name ?? String(question.from);
  const draft = desk.drafts[question.from];
  const closed = { ...desk, questions: { ...desk.questions, [id]: { ...question, answeredAt: now } } };
  const known = draft?.id === question.wish.draft;
  const next = known && draft ? turned(settled(draft, question.wish, cents), now) : undefined;
  const rows = next ? [[wordButton('keep-on', draftTap(next, 'keep-on'))]] : [];
  const say = { code: 'wish-answered', said: question.said, slot: question.wish.slot, cents } as const;
  return says(
    next ? { ...closed, drafts: { ...closed.drafts, [question.from]: next } } : closed,
    card(by.id, { code: 'reply-sent', buyer }),
    card(question.from, say, { kind: 'news', rows, key: `wish/${id}` }),
  );
}

/** The draft with a wish granted for so many cents a head, or without it. */
function settled(draft: Draft, wish: Wish, cents: number | null): Draft {
  const unclear = draft.unclear.filter(({ slot, said }) => slot !== wish.slot || said !== wish.said);
  if (cents === null) return { ...draft, unclear };
  if (wish.pass !== null) return { ...draft, passed: [...draft.passed, wish.pass] };
  const line = draft.lines[wish.line];
  // What was chosen meanwhile stands.
  if (line === undefined || !isWishSlot(wish.slot) || line.spec[wish.slot] !== undefined) return { ...draft, unclear };
  const put = putSlot(line, wish.slot, agreedValue(wish.said));
  return { ...withLine(draft, wish.line, { ...put, extra: line.extra + cents }), unclear };
}

const joined = (before: Decision, next: Decision): Decision => ({ ...next, cards: [...before.cards, ...next.cards] });
