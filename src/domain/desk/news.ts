import { benchTap } from './benchButtons.ts';
import { lotCards } from './lotCards.ts';
import { wordButton } from './draftButtons.ts';
import type { Card } from './card.ts';
import type { Order } from './order.ts';
import { dangersOf, type Danger } from './coming.ts';
import { dangerRows } from './dangerCard.ts';
import { helpsFor } from './helps.ts';
import { orderButton } from './orderButtons.ts';
import { withPlan } from './planning.ts';
import type { Desk } from './state.ts';
import { card, toMakers, type Decision, type Turn } from './turn.ts';

type When = Pick<Turn, 'world' | 'now'>;

/** A decision at the bench with what follows for others: buyers hear that work began or is packed, the maker of a promise in danger. */
export function news(turn: When, before: Desk, decision: Decision): Decision {
  const moved = movedOn(turn, before, decision);
  const danger = dangers(turn, moved.desk);
  return {
    ...moved,
    desk: { ...moved.desk, warned: [...danger.warned] },
    cards: [...moved.cards, ...danger.cards],
  };
}

/** The same without the promises in danger, of which the clock tells at its own times. */
export function movedOn(turn: When, before: Desk, decision: Decision): Decision {
  const desk = withPlan(turn.world.shop, decision.desk, turn.now);
  const told = Object.values(desk.orders).flatMap((order) => progress(before.orders[order.id], order));
  const packed = Object.values(desk.orders).filter(
    ({ state, id }) => state === 'packed' && before.orders[id]?.state !== 'packed',
  );
  const toPost = packed.flatMap(({ id }) =>
    toMakers(
      turn.world,
      { code: 'ready-to-post', order: id },
      { rows: [[wordButton('posted', benchTap('posted', id))]], key: `post/${id}/${turn.now}` },
    ),
  );
  return { ...decision, desk, cards: [...decision.cards, ...lotCards(turn.world, before, desk), ...told, ...toPost] };
}

/** What a buyer hears when the state of an order moves on; each once, however often a mis-tap is taken back. */
function progress(before: Order | undefined, { id, buyer, state }: Order): readonly Card[] {
  if (before === undefined || before.state === state) return [];
  if (state === 'making') return [card(buyer, { code: 'making', order: id }, { kind: 'news', key: `making/${id}` })];
  if (state === 'packed') return [card(buyer, { code: 'packed', order: id }, { kind: 'news', key: `packed/${id}` })];
  return [];
}

/** Promises that the bench as it stands would break, each told once for each day that it would slip to, and what was told before and
 *  is still so. What the buyer was told of already is not told again. */
export function dangers(
  { world, now }: When,
  desk: Desk,
): Readonly<{ warned: readonly string[]; cards: readonly Card[] }> {
  const { shop } = world;
  const all = dangersOf(shop, desk, now).map((danger) => ({ danger, key: keyOf(danger) }));
  const known = desk.warned.filter((key) => !UNDATED.test(key) || all.some((one) => one.key === key));
  const fresh = all.filter(({ danger, key }) => !known.includes(key) && !isTold(desk, danger));
  const rowsOf = fresh.length === 0 ? undefined : dangerRows(shop, desk, now);
  return {
    warned: [...known, ...fresh.map(({ key }) => key)],
    cards: fresh.flatMap(({ danger, key }) => {
      const helps = helpsFor(shop, desk, danger, now);
      const rows = [...(rowsOf?.(danger, helps) ?? []), [orderButton(danger.order)]];
      const told = { kind: 'reminder', key: `danger/${key}/${now}`, rows } as const;
      return toMakers(world, { code: 'in-danger', danger, helps }, told);
    }),
  };
}

/** What was told of a danger: the day it heads for, that something is missing for it, or what keeps it from having a day of its own. */
function keyOf({ order, ships, waits, packed, missing }: Danger): string {
  const day = ships ?? waits?.for ?? 'never';
  const why = packed ? 'packed' : missing.length > 0 ? `missing/${day}` : day;
  return `${order}@${why}`;
}

/** A danger that comes again after it was over is told again. */
const UNDATED = /@\D/;

const isTold = ({ orders }: Desk, { order, ships }: Danger): boolean =>
  (ships ?? '9999') <= (orders[order]?.slip ?? '');
