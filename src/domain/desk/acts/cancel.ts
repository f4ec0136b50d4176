import { settlingWith } from '../account.ts';
import { cancelledOrder, fateOf, partingOf } from '../parting.ts';
import type { Desk } from '../state.ts';
import { payHereRows } from './payHere.ts';
import { hasBegun } from '../../bench/lot.ts';
import { backOnShelf } from '../extras.ts';
import { offBench } from '../offBench.ts';
import { fateNow, workedOff } from '../workedOff.ts';
import type { Order } from '../order.ts';
import type { Tap } from '../tap.ts';
import { wordButton } from '../draftButtons.ts';
import { card, nothing, says, toMakers, without, type Decision, type Turn } from '../turn.ts';
import { cancelAnswers, cancelSlot, KEPT, orderButton } from '../orderButtons.ts';
import { newButton } from './draft.ts';
import { payButton } from '../payButtons.ts';
import { own } from './orders.ts';

/** The maker's question whether to let an order go gives way to the answer. */
const wantsOutSlot = (order: string): string => `wants-out:${order}`;

/** Asks whether the buyer is sure, with what they get back and why; the button carries what would be kept, as it was told. */
export const cancel = (turn: Turn, tap: Tap): Decision =>
  own(turn, tap, (order) => {
    const parting = partingOf(turn.world.shop, turn.desk, order);
    const yes: Tap = { act: 'cancel-yes', on: order.id, version: 0, arg: String(parting.keeps) };
    const no: Tap = { act: 'order', on: order.id, version: 0, arg: KEPT };
    const say = { code: 'cancel-sure', parting, asks: asksMaker(turn.desk, order) } as const;
    const rows = [[wordButton('cancel-yes', yes), wordButton('keep-order', no)]];
    return says(turn.desk, card(turn.by.id, say, { rows, slot: cancelSlot(order.id) }));
  });

/** Cancels before the first pour; after it the wish goes to the maker as a question. Where more is kept than was told, it is told first. */
export const cancelYes = (turn: Turn, tap: Tap): Decision =>
  own(turn, tap, (order) => {
    const { keeps } = partingOf(turn.world.shop, turn.desk, order);
    if (keeps > 0 && !(Number(tap.arg) >= keeps)) return cancel(turn, tap);
    return asksMaker(turn.desk, order) ? askToCancel(turn, order) : cancelled(turn, order);
  });

/** Whoever is told of a delay may go, however far the work is. */
const asksMaker = ({ lots }: Desk, { id, slip }: Order): boolean =>
  slip === null && Object.values(lots).some((lot) => lot.order === id && hasBegun(lot));

/** The order off the bench, what it had not used free again, its heads on the shelf or written off, both sides told. */
export function cancelled(turn: Turn, order: Order): Decision {
  const { world, now } = turn;
  const desk = workedOff(world.shop, turn.desk, order.id, now);
  const gone = Object.values(desk.lots).filter((lot) => lot.order === order.id);
  const closed = cancelledOrder(world.shop, desk, order, now);
  const over = {
    ...offBench(desk, order.id),
    orders: without(desk.orders, order.id),
    settling: settlingWith(desk, closed),
    shelf: backOnShelf(desk.shelf, gone),
  };
  return { desk: over, cards: cancelledCards({ ...turn, desk }, order, closed), toast: 'done', closed: [closed] };
}

/** What both sides hear: the money, and the maker what became of the heads. */
function cancelledCards({ world, desk }: Turn, order: Order, closed: Order): Decision['cards'] {
  const parting = partingOf(world.shop, desk, order);
  const buyer = desk.people[order.buyer]?.name ?? String(order.buyer);
  const fate = fateOf(desk, order.id);
  const told = card(
    order.buyer,
    { code: 'cancelled', parting },
    {
      kind: 'confirmation',
      rows: [...payHereRows(world, closed), [newButton()]],
      slot: cancelSlot(order.id),
      place: order.cancelAskedAt === null ? 'over' : 'below',
      key: `cancelled/${order.id}`,
    },
  );
  const rows = parting.back + parting.owed === 0 ? [] : [[payButton(order.id)]];
  const say = { code: 'buyer-cancelled', buyer, parting, fate } as const;
  return [told, ...toMakers(world, say, { slot: wantsOutSlot(order.id), key: `gone/${order.id}`, rows })];
}

export const grantCancel = (turn: Turn, tap: Tap): Decision => {
  const order = turn.desk.orders[tap.on];
  return order?.cancelAskedAt ? cancelled(turn, order) : { ...nothing(turn.desk), toast: 'stale' };
};

export function refuseCancel(turn: Turn, tap: Tap): Decision {
  const { desk } = turn;
  const order = desk.orders[tap.on];
  if (!order?.cancelAskedAt) return { ...nothing(desk), toast: 'stale' };
  const kept = {
    ...desk,
    orders: { ...desk.orders, [order.id]: { ...order, cancelAskedAt: null, cancelKeeps: null } },
  };
  return {
    ...says(
      kept,
      card(
        order.buyer,
        { code: 'cancel-refused', order: order.id },
        { kind: 'confirmation', slot: cancelSlot(order.id) },
      ),
      card(
        turn.by.id,
        { code: 'goes-on', order: order.id },
        { rows: [[orderButton(order.id)]], slot: wantsOutSlot(order.id), place: 'over' },
      ),
    ),
    toast: 'done',
  };
}

function askToCancel(turn: Turn, order: Order): Decision {
  const { world, desk, by, now } = turn;
  const parting = partingOf(world.shop, desk, order);
  const fate = fateNow(world.shop, desk, order.id, now);
  const asking = { ...order, cancelAskedAt: now, cancelKeeps: parting.keeps };
  return says(
    { ...desk, orders: { ...desk.orders, [order.id]: asking } },
    card(by.id, { code: 'cancel-asked', parting }, { kind: 'confirmation', slot: cancelSlot(order.id), place: 'over' }),
    ...toMakers(
      world,
      { code: 'buyer-cancels', order: asking, buyer: by.name, parting, fate },
      { rows: [cancelAnswers(order.id)], slot: wantsOutSlot(order.id), key: `cancel/${order.id}/${now}` },
    ),
  );
}
