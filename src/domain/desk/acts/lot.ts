import { lineAt } from '../buyersLine.ts';
import { anyOrder } from '../finished.ts';
import { lotLook, lotSaying } from '../lotCards.ts';
import { orderButton } from '../orderButtons.ts';
import type { Tap } from '../tap.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { noSuchOrder } from './orders.ts';

/** A lot's own card: the head big, and its history. From now on it is kept up to date where it stands. */
export function lot(turn: Turn, tap: Tap): Decision {
  const { world, desk, by } = turn;
  const found = desk.lots[tap.on];
  if (found === undefined) return finishedLot(turn, tap.on);
  const watched = [...desk.watched.filter((id) => id !== found.id && desk.lots[id] !== undefined), found.id];
  return says({ ...desk, watched }, card(by.id, lotSaying(desk, found), lotLook(world.shop, desk, found)));
}

/** A lot that has left the bench, with the history that it left with. */
function finishedLot(turn: Turn, id: string): Decision {
  const order = anyOrder(turn, /^K-\d+/.exec(id)?.[0] ?? '');
  const found = order?.lots.find((one) => one.id === id);
  if (order === undefined || found === undefined) return noSuchOrder(turn, id);
  const say = { code: 'lot-card', lot: found, said: order.said[lineAt(id)] ?? [] } as const;
  return says(turn.desk, card(turn.by.id, say, { rows: [[orderButton(order.id)]], picture: found.spec }));
}
