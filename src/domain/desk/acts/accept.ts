import type { Lot } from '../../bench/lot.ts';
import type { Draft } from '../../order/draft.ts';
import { costOrder } from '../../quote/cost.ts';
import { mayBegin } from '../../quote/payment.ts';
import { accountOf } from '../account.ts';
import { renamed, type Prospect } from '../planning.ts';
import { askedOf, quoteLines } from '../quoting.ts';
import { proceed } from '../ask.ts';
import { draftSlot } from '../draftButtons.ts';
import { partLot, partsOf, takenOff } from '../extras.ts';
import type { Order } from '../order.ts';
import { PAST_ORDERS } from '../person.ts';
import type { Quote } from '../quoted.ts';
import type { Desk } from '../state.ts';
import type { Tap } from '../tap.ts';
import { card, says, toMakers, without, withPerson, type Decision, type Turn } from '../turn.ts';
import { draftOf, isQuoted, onDraft } from './draft.ts';
import { sameAddressRows } from './answers.ts';
import { payHereRows } from './payHere.ts';
import { orderButton } from '../orderButtons.ts';

/** Makes an order of the draft that was quoted. A second press finds the order and changes nothing. */
export function accept(turn: Turn, tap: Tap): Decision {
  const made = Object.values(turn.desk.orders).find(({ draft, buyer }) => draft === tap.on && buyer === turn.by.id);
  if (made)
    return {
      ...says(
        turn.desk,
        card(turn.by.id, { code: 'already-accepted', order: made.id }, { rows: [[orderButton(made.id)]] }),
      ),
      toast: 'already',
    };
  return onDraft(acceptDraft)(turn, tap);
}

/** Accepts the sender's draft as it stands, for someone who types it. */
export function acceptTyped(turn: Turn): Decision | undefined {
  const draft = draftOf(turn);
  return draft && isQuoted(turn, draft) ? acceptDraft(turn, draft) : undefined;
}

function acceptDraft(turn: Turn, draft: Draft): Decision {
  const { world, desk, by } = turn;
  const shown = desk.quotes[draft.id];
  const open = Object.values(desk.orders).filter(({ buyer }) => buyer === by.id).length;
  if (open >= world.shop.orders.openEach)
    return says(desk, card(by.id, { code: 'too-many-open', most: world.shop.orders.openEach }));
  if (shown === undefined || shown.version !== draft.version) return proceed(turn, draft, 'over');
  const prospect = standing(turn, draft, shown);
  return prospect === undefined ? quoteOver(turn, draft) : makeOrder(turn, draft, shown, prospect);
}

/** How the quote that was shown can still be kept: in time, and the bench and the stock allow no less than it promised. */
function standing(turn: Turn, draft: Draft, shown: Quote): Prospect | undefined {
  const asked = askedOf(turn.world.shop, draft);
  const now = asked && quoteLines(turn.world, turn.desk, asked, turn.now);
  if (!now?.ok || turn.now > shown.goodUntil) return undefined;
  return now.quote.promise.ships <= shown.promise.ships && now.quote.money.total <= shown.money.total
    ? now.prospect
    : undefined;
}

/** Says that the quote no longer stands and shows the new one. */
function quoteOver(turn: Turn, draft: Draft): Decision {
  const again = proceed(turn, draft, 'below');
  return {
    ...again,
    cards: [
      card(turn.by.id, { code: 'quote-over', draft }, { slot: draftSlot(draft.id), place: 'over' }),
      ...again.cards,
    ],
  };
}

function makeOrder(turn: Turn, draft: Draft, quote: Quote, prospect: Prospect): Decision {
  const { world, desk, by } = turn;
  const order = orderOf(turn, draft, quote);
  const { lots, planOrder, shelf } = putOnBench(turn, order, prospect);
  const next: Desk = {
    ...withPerson(desk, {
      ...by,
      place: order.shipTo,
      asked: { for: 'address', order: order.id },
      past: [{ order: order.id, lines: order.lines }, ...by.past].slice(0, PAST_ORDERS),
    }),
    drafts: without(desk.drafts, String(by.id)),
    quotes: without(desk.quotes, draft.id),
    orders: { ...desk.orders, [order.id]: order },
    lots: { ...desk.lots, ...Object.fromEntries(lots.map((lot) => [lot.id, lot])) },
    next: { ...desk.next, order: desk.next.order + 1 },
    planOrder,
    shelf,
    // By the shop's rule the bench may wait for the money.
    held: mayBegin(world.shop, accountOf(order)) ? desk.held : [...desk.held, order.id],
  };
  const told = card(
    by.id,
    { code: 'accepted', order },
    {
      kind: 'confirmation',
      slot: draftSlot(draft.id),
      place: 'over',
      rows: [...sameAddressRows(turn, order.id), ...payHereRows(world, order), [orderButton(order.id)]],
    },
  );
  return {
    desk: next,
    cards: [told, ...newOrderCards(turn, order, lots)],
    toast: 'done',
    closed: [],
  };
}

/** The lots of an accepted order, and the order of work with them in the place that their promise was made for. */
function putOnBench(
  { world, desk }: Turn,
  order: Order,
  prospect: Prospect,
): Readonly<{ lots: readonly Lot[] }> & Pick<Desk, 'planOrder' | 'shelf'> {
  const parts = partsOf(desk.shelf, order.lines);
  const lots = parts.map((part): Lot => ({
    ...partLot(world.shop, order.id, part, parts),
    from: part.from === 'shelf' ? null : prospect.from,
  }));
  const ids = lots.map(({ id }) => id);
  return {
    lots,
    planOrder: renamed(prospect.order, ids),
    shelf: takenOff(desk.shelf, parts),
  };
}

/** What the makers hear: the order, what it costs them and what of it is made already. */
function newOrderCards({ world, by }: Turn, order: Order, lots: readonly Lot[]): Decision['cards'] {
  const cost = costOrder(world.shop, order.lines, order.money);
  const shelf = lots.reduce((sum, lot) => sum + lot.shelf, 0);
  return toMakers(
    world,
    { code: 'new-order', order, buyer: by.name, cost, shelf },
    { key: `new/${order.id}`, rows: [[orderButton(order.id)]], picture: order.lines[0]?.spec ?? null },
  );
}

function orderOf({ desk, by, now }: Turn, draft: Draft, quote: Quote): Order {
  return {
    id: `K-${desk.next.order}`,
    draft: draft.id,
    buyer: by.id,
    state: 'accepted',
    lines: quote.lines,
    photos: draft.lines.map(({ photos }) => [...photos]),
    said: draft.lines.map(({ said }) => [...said]),
    needBy: draft.needBy,
    shipTo: quote.shipTo,
    address: null,
    money: quote.money,
    promise: quote.promise,
    slip: null,
    acceptedAt: now,
    cancelAskedAt: null,
    cancelKeeps: null,
    packedAt: null,
    shippedAt: null,
    tracking: null,
    ledger: [],
    used: {},
    lots: [],
    made: [],
  };
}
