import { currentStep, type Lot } from '../../domain/bench/lot.ts';
import { balanceOf, mayBegin } from '../../domain/quote/payment.ts';
import { accountOf } from '../../domain/desk/account.ts';
import { elsewhere } from '../../domain/desk/elsewhere.ts';
import type { OrderFacts } from '../../domain/desk/facts.ts';
import type { Order } from '../../domain/desk/order.ts';
import { lines, paragraphs } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { DraftWords } from '../draftWords.ts';
import type { OrderWords, Phrases, SayingOf } from '../words.ts';
import { known } from './draft.ts';
import { fullLine, moneyLines } from './summary.ts';
import { costLines } from './cost.ts';
import { accountLines, beginsWhen } from './pay.ts';
import { buyerSaid } from './buyerSaid.ts';
import { waitsOn } from './danger.ts';
import { lotName } from './spec.ts';

/** The lasting copy of an order: number, heads, money, day, how to pay, and what is still needed. */
export function accepted(
  { order }: SayingOf<'accepted'>,
  voice: Voice,
  { order: words, quote, business }: Phrases,
): string {
  const { payment, texts } = voice.shop;
  return paragraphs(
    words.placed(order.id),
    orderLines(order, voice),
    moneyLines(order.money, order.shipTo, voice, quote),
    agreedDay(order, voice, words),
    lines(words.pay(voice.own(payment.words), payment.dueDays, voice), beginsWhen(voice.shop, order, voice, business)),
    voice.own(texts.thanks),
    words.askAddress,
  );
}

export const orders = (say: SayingOf<'orders'>, voice: Voice, { order: words }: Phrases): string =>
  paragraphs(
    words.yours,
    ...say.orders.map((facts) => lines(heading(facts, voice, words), daySaid(facts, voice, words, words.slipYours))),
  );

/** One order for its buyer: its state, each line with the step it is at, the day, and what was agreed. */
export function order({ facts }: SayingOf<'order'>, voice: Voice, { order: words, quote, business }: Phrases): string {
  const { order } = facts;
  return paragraphs(
    heading(facts, voice, words),
    progress(facts, voice, words),
    daySaid(facts, voice, words, words.slipYours),
    gone(order, voice, words),
    lines(moneyLines(order.money, order.shipTo, voice, quote), accountLines(order, voice, business)),
    accountOf(order).due > 0 ? voice.own(voice.shop.payment.words) : null,
    addressSaid(order, words),
    order.cancelAskedAt === null ? null : words.cancelAsked,
  );
}

export function newOrder(
  { order, buyer, shelf, cost }: SayingOf<'new-order'>,
  voice: Voice,
  { order: words, quote, business }: Phrases,
): string {
  return paragraphs(
    words.fresh(order.id, buyer),
    lines(orderLines(order, voice), shelf === 0 ? null : words.offShelf(voice.count(shelf, voice.terms.heads))),
    moneyLines(order.money, order.shipTo, voice, quote),
    lines(agreedDay(order, voice, words), neededBy(order, voice, quote.neededBy)),
    costLines(cost, voice, business),
  );
}

export const orderAddress = (
  { order, buyer }: SayingOf<'order-address'>,
  voice: Voice,
  { order: words }: Phrases,
): string => paragraphs(lines(words.addressOf(order.id, buyer), order.address), elsewhereSaid(order, voice, words));

const elsewhereSaid = (order: Order, voice: Voice, words: OrderWords): string | null => {
  const place = elsewhere(order);
  return place === undefined ? null : words.elsewhere(voice.place(place), voice.place(order.shipTo));
};

/** One order for the maker: who, what, where it stands, where it goes. */
export function orderSheet(
  { facts, buyer, danger, leaving }: SayingOf<'order-sheet'>,
  voice: Voice,
  phrases: Phrases,
): string {
  const { order } = facts;
  const { order: words, quote, business } = phrases;
  return paragraphs(
    lines(heading(facts, voice, words), words.buyer(buyer)),
    progress(facts, voice, words),
    lines(daySaid(facts, voice, words, words.slip), neededBy(order, voice, quote.neededBy)),
    gone(order, voice, words),
    danger === null ? null : waitsOn(danger, voice, phrases),
    saidLines(order, voice, phrases),
    lines(moneyLines(order.money, order.shipTo, voice, quote), accountLines(order, voice, business)),
    addressSaid(order, words),
    elsewhereSaid(order, voice, words),
    leaving === null ? null : lines(words.cancelAsked, words.leaving(leaving, voice)),
  );
}

export function queue(say: SayingOf<'queue'>, voice: Voice, { order: words }: Phrases): string {
  if (say.orders.length === 0) return words.emptyQueue;
  const rows = say.orders.map((facts) =>
    lines(heading(facts, voice, words), orderLines(facts.order, voice), daySaid(facts, voice, words, words.slip)),
  );
  return paragraphs(words.queue(say.orders.length, voice), ...rows);
}

export function buyerAsks({ question, buyer, draft }: SayingOf<'buyer-asks'>, voice: Voice, phrases: Phrases): string {
  const { order: words, draft: draftWords } = phrases;
  return paragraphs(
    words.asks(buyer, question.order),
    voice.terms.quote(question.said),
    draft && drafted(draft, voice, words, draftWords),
  );
}

export const askReply = ({ question, buyer }: SayingOf<'ask-reply'>, voice: Voice, { order: words }: Phrases): string =>
  paragraphs(voice.terms.quote(question.said), words.reply(buyer));

export const buyerCancels = (
  { order, buyer, ...leaving }: SayingOf<'buyer-cancels'>,
  voice: Voice,
  { order: words }: Phrases,
): string =>
  paragraphs(
    words.wantsOut(buyer, order.id),
    orderLines(order, voice),
    words.leaving(leaving, voice),
    words.wantsOutHow,
  );

function drafted(
  draft: Parameters<typeof known>[0],
  voice: Voice,
  words: OrderWords,
  draftWords: DraftWords,
): string | null {
  const said = known(draft, voice, draftWords);
  return said && lines(words.drafting, said);
}

/** Room for the buyer's words of each line. */
const SAID_MOST = 300;

const saidLines = ({ said }: Order, voice: Voice, { evening }: Phrases): string =>
  lines(...said.map((line) => buyerSaid(line, SAID_MOST, voice, evening)));

const orderLines = ({ lines: ordered, money }: Order, voice: Voice): string =>
  lines(
    ...ordered.map((line, at) => {
      const price = money.lines[at]?.total;
      return price === undefined ? fullLine(line, voice) : `${fullLine(line, voice)}: ${voice.money(price)}`;
    }),
  );

function heading({ order, waits }: OrderFacts, voice: Voice, words: OrderWords): string {
  if (waits?.for === 'money') return words.heading(order.id, words.waitsForMoney(voice.money(waits.cents)));
  return words.heading(order.id, waits === null ? voice.terms.states[order.state] : words.onHold);
}

/** The day as it was agreed: where money has to come first, only if it comes today. */
function agreedDay({ money, ledger, promise }: Order, voice: Voice, words: OrderWords): string {
  const begins = mayBegin(voice.shop, balanceOf(money.total, ledger));
  return (begins ? words.promised : words.paidToday)(voice.day(promise.ships));
}

/** The promised day, and the likely one where it is another; what stands in the way where there is none. */
function daySaid(
  { order, ships, waits }: OrderFacts,
  voice: Voice,
  words: OrderWords,
  told: OrderWords['slip'],
): string | null {
  const promised = voice.day(order.promise.ships);
  if (order.state === 'shipped' || order.state === 'cancelled') return null;
  if (waits !== null) return waits.for === 'hold' ? words.held(promised) : words.dayWithMoney;
  if (order.slip !== null) return told(promised, voice.day(order.slip));
  if (ships === null) return words.noDay(promised);
  if (ships === order.promise.ships) return words.promised(promised);
  if (ships > order.promise.ships) return words.late(promised, voice.day(ships));
  return lines(words.promised(promised), words.likely(voice.day(ships)));
}

/** When its parcel went, and the number that it is followed by. */
function gone({ state, shippedAt, tracking }: Order, voice: Voice, words: OrderWords): string | null {
  if (state !== 'shipped' || shippedAt === null) return null;
  return lines(words.gone(voice.time(shippedAt)), tracking === null ? null : words.tracking(tracking));
}

const neededBy = ({ needBy }: Order, voice: Voice, sentence: (day: string) => string): string | null =>
  needBy === null ? null : sentence(voice.day(needBy));

/** One that is no longer kept of an order that has left is not said to be missing. */
function addressSaid({ address, state }: Order, words: OrderWords): string | null {
  if (address !== null) return lines(words.address, address);
  return state === 'shipped' || state === 'cancelled' ? null : words.noAddress;
}

/** Each lot with where it is; the lines as ordered where no lot is on the bench. */
const progress = ({ order, lots }: OrderFacts, voice: Voice, words: OrderWords): string =>
  lots.length === 0 ? orderLines(order, voice) : paragraphs(...lots.map((lot) => lotProgress(lot, voice, words)));

const lotProgress = (lot: Lot, voice: Voice, words: OrderWords): string =>
  lines(fullLine({ spec: lot.spec, quantity: lot.heads }, voice), whereIs(lot, voice, words));

/** "Step 5 of 9: in the oven". */
function whereIs(lot: Lot, voice: Voice, words: OrderWords): string {
  const at = currentStep(lot);
  if (at === undefined) return words.done;
  const step = lot.steps.indexOf(at) + 1;
  const { doing, steps } = voice.terms;
  if (at.state === 'running') return words.step(step, lot.steps.length, doing[at.step]);
  return words.next(step, lot.steps.length, steps[at.step]);
}

/** Lots by name, one a line: "K-1001-1: 24 × 3/8 oz football head". */
export const lotLines = (lots: readonly Pick<Lot, 'id' | 'spec' | 'heads'>[], voice: Voice): string =>
  lines(...lots.map((lot) => `${lot.id}: ${lotName(voice, lot)}`));
