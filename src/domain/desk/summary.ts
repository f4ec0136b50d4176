import type { Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import { massOf } from '../order/head.ts';
import type { Shop } from '../shop/shop.ts';
import { SPEC_SLOTS } from '../shop/words.ts';
import type { Card, CardButton } from './card.ts';
import { draftTap, wayRows, wordButton } from './draftButtons.ts';
import { askedOf, type Quoted } from './quoting.ts';
import type { Quote } from './quoted.ts';
import { soonerWays, type Sooner } from './sooner.ts';
import { card, says, type Decision, type Turn } from './turn.ts';

/** The whole order with its quote, for the buyer to check; nothing is ordered by it. What would be there by the day asked for is offered beside it. */
export function summary(
  turn: Turn,
  draft: Draft,
  { quote, notes }: Extract<Quoted, { ok: true }>,
  more: Partial<Card>,
): Decision {
  const { world, desk, by, now } = turn;
  const missed = missedDay(draft, quote);
  const asked = missed === null ? undefined : askedOf(world.shop, draft);
  const sooner = asked && missed !== null ? soonerWays(world, desk, asked, missed, now) : [];
  const say = {
    code: 'summary',
    draft,
    quote,
    madeGrams: quote.lines.map(({ spec }) => massOf(world.shop, spec).totalGrams),
    usual: draft.lines.map(usualSlots),
    notes,
    missed,
    sooner,
  } as const;
  return says(
    { ...desk, quotes: { ...desk.quotes, [draft.id]: quote } },
    card(by.id, say, {
      ...more,
      rows: summaryRows(world.shop, draft, sooner, notes),
      picture: quote.lines[0]?.spec ?? null,
    }),
  );
}

/** Slots that nobody stated. */
const usualSlots = ({ spec }: Draft['lines'][number]): readonly string[] =>
  SPEC_SLOTS.filter((slot) => spec[slot] === undefined);

const missedDay = ({ needBy }: Draft, { promise }: Quote): string | null =>
  needBy !== null && promise.ships > needBy ? needBy : null;

function summaryRows(shop: Shop, draft: Draft, sooner: readonly Sooner[], notes: readonly Finding[]): Card['rows'] {
  const room = draft.lines.length < shop.orders.lines;
  const ways = sooner.map((one): CardButton => ({
    label: { code: 'sooner', sooner: one },
    tap: draftTap(draft, 'sooner', one.way),
  }));
  return [
    ...ways.map((way) => [way]),
    ...wayRows(draft, notes),
    [wordButton('accept', draftTap(draft, 'accept'))],
    [
      wordButton('change-something', draftTap(draft, 'change')),
      ...(room ? [wordButton('add-line', draftTap(draft, 'add-line'))] : []),
    ],
    [wordButton('ask-maker', draftTap(draft, 'ask-maker')), wordButton('start-over', draftTap(draft, 'start-over'))],
  ];
}
