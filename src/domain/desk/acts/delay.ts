import { calendarDay, type Instant } from '../../craft/time.ts';
import type { Shop } from '../../shop/shop.ts';
import { benchTap } from '../benchButtons.ts';
import { wordButton } from '../draftButtons.ts';
import type { Order } from '../order.ts';
import { onOrder } from '../orderButtons.ts';
import { cutOffOn } from '../post.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, type Decision, type Turn } from '../turn.ts';

/** The maker owns up to a later day: the buyer hears it now, and chooses to wait, to talk about it, or to cancel. */
export function delay(turn: Turn, tap: Tap): Decision {
  const { world, desk, by, now } = turn;
  const order = desk.orders[tap.on];
  const day = tap.arg;
  if (order === undefined || !isLaterPost(world.shop, day, order, now)) return { ...nothing(desk), toast: 'stale' };
  if (order.slip === day) return { ...nothing(desk), toast: 'already' };
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

/** Whether it is a day later than the promised one on which post still leaves. */
const isLaterPost = (shop: Shop, day: string, { promise }: Order, now: Instant): boolean =>
  calendarDay(day) !== undefined && day > promise.ships && (cutOffOn(shop, day) ?? 0) > now;

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
