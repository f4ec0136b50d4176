import type { Tap } from '../tap.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** The buyer's photos of one line of an order, as they were sent. `arg` is the line's place, from 0. */
export function photos({ desk, by }: Turn, tap: Tap): Decision {
  const order = desk.orders[tap.on];
  const line = order?.lines[Number(tap.arg)];
  const sent = order?.photos[Number(tap.arg)] ?? [];
  if (order === undefined || line === undefined || sent.length === 0) return { ...nothing(desk), toast: 'stale' };
  const cards = sent.map((photo, at) =>
    card(
      by.id,
      { code: 'buyer-photo', order: order.id, number: at + 1, photos: sent.length, line },
      { picture: { photo } },
    ),
  );
  return says(desk, ...cards);
}
