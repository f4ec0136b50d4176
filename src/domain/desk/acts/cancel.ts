import { accountOf, cancelledOrder, settlingWith } from '../account.ts';
import { hasBegun } from '../../bench/lot.ts';
import { backOnShelf } from '../extras.ts';
import { offBench } from '../offBench.ts';
import type { Order } from '../order.ts';
import type { Tap } from '../tap.ts';
import { wordButton } from '../draftButtons.ts';
import { card, nothing, says, toMakers, without, type Decision, type Turn } from '../turn.ts';
import { cancelAnswers, cancelSlot, KEPT, onOrder, orderButton } from '../orderButtons.ts';
import { newButton } from './draft.ts';
import { payButton } from './money.ts';
import { own } from './orders.ts';

/** The maker's question whether to let an order go gives way to the answer. */
const wantsOutSlot = (order: string): string => `wants-out:${order}`;

/** Asks whether the buyer is sure. */
export const cancel = (turn: Turn, tap: Tap): Decision =>
  own(turn, tap, (order) =>
    says(
      turn.desk,
      card(
        turn.by.id,
        { code: 'cancel-sure', order: order.id },
        {
          rows: [
            [
              onOrder('cancel-yes', 'cancel-yes', order.id),
              wordButton('keep-order', { act: 'order', on: order.id, version: 0, arg: KEPT }),
            ],
          ],
          slot: cancelSlot(order.id),
        },
      ),
    ),
  );

/** Cancels before the first pour; after it the wish goes to the maker as a question. */
export const cancelYes = (turn: Turn, tap: Tap): Decision =>
  own(turn, tap, (order) => {
    const begun = Object.values(turn.desk.lots).some((lot) => lot.order === order.id && hasBegun(lot));
    // Whoever is told of a delay may go, however far the work is.
    return begun && order.slip === null ? askToCancel(turn, order) : cancelled(turn, order);
  });

/** The order off the bench, its stock free again, both sides told. */
export function cancelled(turn: Turn, order: Order): Decision {
  const { world, desk, now } = turn;
  const gone = Object.values(desk.lots).filter((lot) => lot.order === order.id);
  const buyer = desk.people[order.buyer]?.name ?? String(order.buyer);
  const closed = cancelledOrder(world.shop, desk, order, now);
  return {
    desk: {
      ...offBench(desk, order.id),
      orders: without(desk.orders, order.id),
      settling: settlingWith(desk, closed),
      shelf: backOnShelf(desk.shelf, gone),
    },
    cards: [
      card(
        order.buyer,
        { code: 'cancelled', order: order.id },
        {
          kind: 'confirmation',
          rows: [[newButton()]],
          slot: cancelSlot(order.id),
          place: order.cancelAskedAt === null ? 'over' : 'below',
          key: `cancelled/${order.id}`,
        },
      ),
      ...toMakers(
        world,
        { code: 'buyer-cancelled', order: order.id, buyer },
        { slot: wantsOutSlot(order.id), key: `gone/${order.id}` },
      ),
      ...moneyBack(world, closed, buyer),
    ],
    toast: 'done',
    closed: [closed],
  };
}

/** What the maker has to give back of a cancelled order, if anything was paid. */
function moneyBack(world: Turn['world'], order: Order, buyer: string): ReturnType<typeof toMakers> {
  const { over } = accountOf(order);
  if (over === 0) return [];
  const say = { code: 'money-back', order: order.id, buyer, cents: over } as const;
  return toMakers(world, say, { rows: [[payButton(order.id)]], key: `back/${order.id}` });
}

export const grantCancel = (turn: Turn, tap: Tap): Decision => {
  const order = turn.desk.orders[tap.on];
  return order?.cancelAskedAt ? cancelled(turn, order) : { ...nothing(turn.desk), toast: 'stale' };
};

export function refuseCancel(turn: Turn, tap: Tap): Decision {
  const { desk } = turn;
  const order = desk.orders[tap.on];
  if (!order?.cancelAskedAt) return { ...nothing(desk), toast: 'stale' };
  const kept = { ...desk, orders: { ...desk.orders, [order.id]: { ...order, cancelAskedAt: null } } };
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
  const asking = { ...order, cancelAskedAt: now };
  return says(
    { ...desk, orders: { ...desk.orders, [order.id]: asking } },
    card(
      by.id,
      { code: 'cancel-asked', order: order.id },
      { kind: 'confirmation', slot: cancelSlot(order.id), place: 'over' },
    ),
    ...toMakers(
      world,
      { code: 'buyer-cancels', order: asking, buyer: by.name },
      { rows: [cancelAnswers(order.id)], slot: wantsOutSlot(order.id), key: `cancel/${order.id}/${now}` },
    ),
  );
}
