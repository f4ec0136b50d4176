import { hasBegun, isFinished } from '../bench/lot.ts';
import type { Order, OrderState } from './order.ts';
import type { Desk } from './state.ts';

/** The desk with each order's state as its lots say it. */
export function withStates(desk: Desk): Desk {
  const orders = Object.values(desk.orders).map((order) => [order.id, inState(desk, order)] as const);
  return { ...desk, orders: Object.fromEntries(orders) };
}

function inState(desk: Desk, order: Order): Order {
  const state = stateOf(desk, order);
  return state === order.state ? order : { ...order, state };
}

function stateOf(desk: Desk, order: Order): OrderState {
  const lots = Object.values(desk.lots).filter((lot) => lot.order === order.id);
  if (lots.length > 0 && lots.every(isFinished)) return 'packed';
  return lots.some(hasBegun) ? 'making' : 'accepted';
}
