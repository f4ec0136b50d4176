import { proposeButton } from '../benchButtons.ts';
import type { CardButton } from '../card.ts';
import { dangersOf } from '../coming.ts';
import { dangerRows } from '../dangerCard.ts';
import { anyOrder } from '../finished.ts';
import type { OrderFacts } from '../facts.ts';
import { headingsOf } from '../heading.ts';
import type { Order } from '../order.ts';
import { partingOf } from '../parting.ts';
import { fateNow } from '../workedOff.ts';
import type { Desk } from '../state.ts';
import type { Tap } from '../tap.ts';
import { inRows, wordButton } from '../draftButtons.ts';
import { card, isMaker, says, withPerson, type Decision, type Turn } from '../turn.ts';
import {
  againButton,
  cancelAnswers,
  cancelSlot,
  KEPT,
  lotButton,
  onOrder,
  orderButton,
  photoButtons,
} from '../orderButtons.ts';
import { newButton } from './draft.ts';
import { payButton } from '../payButtons.ts';
import { payHereRows } from './payHere.ts';
import { paperButtons, receiptRows } from './papers.ts';
import { trackingButton } from './ship.ts';

/** All open orders of the sender. */
export function orders(turn: Turn): Decision {
  const { desk, by } = turn;
  const own = Object.values(desk.orders).filter(({ buyer }) => buyer === by.id);
  const gone = by.past
    .filter(({ order: id }) => desk.orders[id] === undefined)
    .map(({ order: id }) => [orderButton(id), againButton(id)]);
  if (own.length === 0) return says(desk, card(by.id, { code: 'no-orders' }, { rows: [...gone, [newButton()]] }));
  const facts = factsIn(turn);
  const say = { code: 'orders', orders: own.map(facts) } as const;
  return says(desk, card(by.id, say, { rows: [...own.map(({ id }) => [orderButton(id)]), ...gone] }));
}

export const hasOrders = ({ desk, by }: Turn): boolean =>
  Object.values(desk.orders).some(({ buyer }) => buyer === by.id);

/** One order, to its buyer or to a maker. To anybody else there is no such order. */
export function order(turn: Turn, tap: Tap): Decision {
  const found = turn.desk.orders[tap.on];
  if (found === undefined) return finishedOrder(turn, tap.on);
  if (!maySee(turn, found)) return noSuchOrder(turn, tap.on);
  const facts = factsIn(turn)(found);
  if (isMaker(turn.world, turn.by.id)) return says(turn.desk, makerSheet(turn, facts));
  return says(
    turn.desk,
    card(
      turn.by.id,
      { code: 'order', facts },
      {
        rows: [...payHereRows(turn.world, found), ...receiptRows(found), ...buyerRows(found)],
        picture: found.lines[0]?.spec ?? null,
        slot: tap.arg === KEPT ? cancelSlot(found.id) : null,
      },
    ),
  );
}

/** An order that has left the bench, as it was and with what became of its parcel. */
function finishedOrder(turn: Turn, id: string): Decision {
  const { desk, by, world } = turn;
  const order = anyOrder(turn, id);
  if (order === undefined || !maySee(turn, order)) return noSuchOrder(turn, id);
  const facts: OrderFacts = { order, lots: [], ships: null, waits: null };
  const picture = order.lines[0]?.spec ?? null;
  if (!isMaker(world, by.id))
    return says(
      desk,
      card(by.id, { code: 'order', facts }, { rows: [...receiptRows(order), [againButton(id)]], picture }),
    );
  const buyer = desk.people[order.buyer]?.name ?? String(order.buyer);
  const rows = [
    ...(order.state === 'shipped' && order.tracking === null ? [[trackingButton(id)]] : []),
    ...inRows(
      order.lots.map((lot) => lotButton(lot.id)),
      2,
    ),
    [payButton(id)],
    paperButtons(order),
  ];
  return says(desk, card(by.id, { code: 'order-sheet', facts, buyer, danger: null, leaving: null }, { rows, picture }));
}

export const noSuchOrder = ({ desk, by }: Turn, said: string): Decision => ({
  ...says(desk, card(by.id, { code: 'no-such-order', said })),
  toast: 'not-yours',
});

/** Where orders stand, and where they head. */
export function factsIn({ world: { shop }, desk, now }: Turn): (order: Order) => OrderFacts {
  const headingOf = headingsOf(shop, desk, now);
  return (order) => {
    const { ships, waits } = headingOf(order);
    const lots = Object.values(desk.lots).filter((lot) => lot.order === order.id);
    return { order, lots, ships, waits };
  };
}

export const readdress = (turn: Turn, tap: Tap): Decision =>
  own(turn, tap, (order) =>
    says(
      withPerson(turn.desk, { ...turn.by, asked: { for: 'address', order: order.id } }),
      card(turn.by.id, { code: 'ask-address', order: order.id, before: order.address }),
    ),
  );

/** Asks for another address: of the one order that it can still change, else which order is shown first. */
export function readdressAsked(turn: Turn): Decision {
  const [only, ...others] = Object.values(turn.desk.orders).filter(
    ({ buyer, state }) => buyer === turn.by.id && state !== 'packed',
  );
  return only === undefined || others.length > 0
    ? orders(turn)
    : readdress(turn, { act: 'readdress', on: only.id, version: 0, arg: '-' });
}

/** Runs an act on the sender's own order. */
export function own(turn: Turn, tap: Tap, act: (order: Order) => Decision): Decision {
  const order = turn.desk.orders[tap.on];
  return order !== undefined && order.buyer === turn.by.id ? act(order) : noSuchOrder(turn, tap.on);
}

const maySee = ({ world, by }: Turn, { buyer }: Order): boolean => buyer === by.id || isMaker(world, by.id);

const buyerRows = (order: Order): readonly (readonly CardButton[])[] => [
  ...(order.slip === null ? [] : [[onOrder('wait', 'wait', order.id)]]),
  ...usualRows(order),
];

const usualRows = ({ id, state }: Order): readonly (readonly CardButton[])[] =>
  state === 'packed'
    ? [[wordButton('ask-maker', { act: 'ask-maker', on: id, version: 0, arg: '-' })]]
    : [
        [againButton(id)],
        [onOrder('readdress', 'readdress', id), onOrder('cancel-order', 'cancel', id)],
        [wordButton('ask-maker', { act: 'ask-maker', on: id, version: 0, arg: '-' })],
      ];

/** The maker's view of an order. */
export function makerSheet(turn: Turn, facts: OrderFacts): ReturnType<typeof card> {
  const { order } = facts;
  const buyer = turn.desk.people[order.buyer]?.name ?? String(order.buyer);
  const danger = dangersOf(turn.world.shop, turn.desk, turn.now).find((one) => one.order === order.id) ?? null;
  const packed = order.state === 'packed' ? [[onOrder('posted', 'posted', order.id)]] : [];
  const tell = danger === null ? [] : dangerRows(turn.world.shop, turn.desk, turn.now)(danger, []);
  const rows = [
    ...packed,
    ...tell,
    ...(order.cancelAskedAt === null ? [] : [cancelAnswers(order.id)]),
    ...inRows([...photoButtons(order), ...facts.lots.map(({ id }) => lotButton(id))], 2),
    [payButton(order.id)],
    paperButtons(order),
    turnButtons(turn.desk, order),
    [wordButton('bench', { act: 'bench', on: '-', version: 0, arg: '-' })],
  ];
  const { world, desk, now } = turn;
  const leaving =
    order.cancelAskedAt === null
      ? null
      : { parting: partingOf(world.shop, desk, order), fate: fateNow(world.shop, desk, order.id, now) };
  return card(
    turn.by.id,
    { code: 'order-sheet', facts, buyer, danger, leaving },
    { rows, picture: order.lines[0]?.spec ?? null },
  );
}

/** What can become of its turn at the bench, each shown before it is made. */
function turnButtons({ held, first }: Desk, { id, state }: Order): readonly CardButton[] {
  if (state === 'packed') return [];
  if (held.includes(id)) return [proposeButton({ do: 'release', order: id })];
  const ahead = proposeButton({ do: first.includes(id) ? 'release' : 'first', order: id });
  return [ahead, proposeButton({ do: 'hold', order: id })];
}
