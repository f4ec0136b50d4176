import type { Day } from '../../craft/time.ts';
import { benchTap } from '../benchButtons.ts';
import { dangersOf } from '../coming.ts';
import { delayButton, tellDays } from '../dangerCard.ts';
import { wordButton } from '../draftButtons.ts';
import type { Order } from '../order.ts';
import { onOrder, orderButton } from '../orderButtons.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, type Decision, type Turn } from '../turn.ts';

/** The maker owns up to a later day, if it is still the one that holds: the day of an old button is never told. */
export function delay(turn: Turn, tap: Tap): Decision {
  const { world, desk, by, now } = turn;
  const order = desk.orders[tap.on];
  if (order === undefined) return { ...nothing(desk), toast: 'stale' };
  const danger = dangersOf(world.shop, desk, now).find((one) => one.order === order.id);
  if (danger === undefined) {
    const over = card(by.id, { code: 'delay-over', order: order.id }, { rows: [[orderButton(order.id)]] });
    return { ...says(desk, over), toast: 'stale' };
  }
  const day = tellDays(world.shop, desk, now)(danger);
  if (day !== null && day <= (order.slip ?? '')) return { ...nothing(desk), toast: 'already' };
  if (day === tap.arg) return owned(turn, order, day);
  const rows = [...(day === null ? [] : [[delayButton(order.id, day)]]), [orderButton(order.id)]];
  return { ...says(desk, card(by.id, { code: 'delay-moved', order: order.id, ships: day }, { rows })), toast: 'stale' };
}

/** The buyer hears it now, and chooses to wait, to talk about it, or to cancel. */
function owned({ desk, by }: Turn, order: Order, day: Day): Decision {
  const told = { ...desk, orders: { ...desk.orders, [order.id]: { ...order, slip: day } } };
  const rows = [
    [onOrder('wait', 'wait', order.id)],
    [wordButton('ask-maker', { act: 'ask-maker', on: order.id, version: 0, arg: '-' })],
    [onOrder('cancel-order', 'cancel', order.id)],
  ];
  return {
    ...says(
      told,
      card(
        by.id,
        { code: 'delay-told', order: order.id, ships: day },
        { rows: [[wordButton('bench', benchTap('bench'))]] },
      ),
      card(
        order.buyer,
        { code: 'delayed', order: order.id, promised: order.promise.ships, ships: day },
        { kind: 'confirmation', rows, key: `delayed/${order.id}/${day}` },
      ),
    ),
    toast: 'done',
  };
}

/** The buyer waits: the new day is the promise from now on. */
export function wait(turn: Turn, tap: Tap): Decision {
  const { world, desk, by } = turn;
  const order = desk.orders[tap.on];
  if (order === undefined || order.buyer !== by.id) return { ...nothing(desk), toast: 'not-yours' };
  const { slip } = order;
  if (slip === null) return { ...nothing(desk), toast: 'already' };
  const waiting = { ...order, promise: { ...order.promise, ships: slip }, slip: null };
  const kept = {
    ...desk,
    orders: { ...desk.orders, [order.id]: waiting },
    warned: desk.warned.filter((key) => !key.startsWith(`${order.id}@`)),
  };
  return {
    ...says(
      kept,
      card(by.id, { code: 'waits', order: order.id, ships: slip }, { kind: 'confirmation' }),
      ...toMakers(
        world,
        { code: 'buyer-waits', order: order.id, ships: slip, buyer: by.name },
        { key: `waits/${order.id}/${slip}` },
      ),
    ),
    toast: 'done',
  };
}
