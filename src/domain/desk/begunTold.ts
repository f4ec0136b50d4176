import type { Card } from './card.ts';
import type { Desk } from './state.ts';
import { card } from './turn.ts';

/** The buyer of an order that waited for its money hears that it has its turn, and the day. */
export function begunTold({ orders }: Desk, id: string): readonly Card[] {
  const order = orders[id];
  if (order === undefined) return [];
  const say = { code: 'begun', order: id, ships: order.promise.ships } as const;
  return [card(order.buyer, say, { kind: 'confirmation', key: `begun/${id}/${order.promise.ships}` })];
}
