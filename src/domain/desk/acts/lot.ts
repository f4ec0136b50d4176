import { lotLook, lotSaying } from '../lotCards.ts';
import type { Tap } from '../tap.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { noSuchOrder } from './orders.ts';

/** A lot's own card: the head big, and its history. From now on it is kept up to date where it stands. */
export function lot(turn: Turn, tap: Tap): Decision {
  const { world, desk, by } = turn;
  const found = desk.lots[tap.on];
  if (found === undefined) return noSuchOrder(turn, tap.on);
  const watched = [...desk.watched.filter((id) => id !== found.id && desk.lots[id] !== undefined), found.id];
  return says({ ...desk, watched }, card(by.id, lotSaying(desk, found), lotLook(world.shop, desk, found)));
}
