import type { Day } from '../craft/time.ts';
import { benchTap, proposeButton } from './benchButtons.ts';
import { lotCards } from './lotCards.ts';
import { wordButton } from './draftButtons.ts';
import type { Card, CardButton } from './card.ts';
import type { Order } from './order.ts';
import { dangersOf } from './coming.ts';
import { orderButton } from './orderButtons.ts';
import { sureDays, withPlan } from './planning.ts';
import type { Desk } from './state.ts';
import { card, toMakers, type Decision, type Turn } from './turn.ts';

type When = Pick<Turn, 'world' | 'now'>;

/** A decision at the bench with what follows for others: buyers hear that work began or is packed, the maker of a promise in danger. */
export function news(turn: When, before: Desk, decision: Decision): Decision {
  const moved = movedOn(turn, before, decision);
  const danger = dangers(turn, moved.desk);
  return {
    ...moved,
    desk: { ...moved.desk, warned: [...moved.desk.warned, ...danger.map(({ key }) => key)] },
    cards: [...moved.cards, ...danger.flatMap(({ cards }) => cards)],
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

/** Promises that the bench as it stands would break, each told once a day that it would slip to. */
export function dangers(
  { world, now }: When,
  desk: Desk,
): readonly Readonly<{ key: string; cards: readonly Card[] }>[] {
  const fresh = dangersOf(world.shop, desk, now)
    .map((danger) => ({ danger, key: `${danger.order}@${danger.ships}` }))
    .filter(({ key }) => !desk.warned.includes(key));
  if (fresh.length === 0) return [];
  const sure = sureDays(world.shop, desk, now);
  return fresh.map(({ danger, key }) => {
    const { order, ships } = danger;
    const first = desk.first.includes(order) ? [] : [[proposeButton({ do: 'first', order })]];
    const rows = [[delayButton(order, sure(order, ships))], ...first, [orderButton(order)]];
    const cards = toMakers(world, { code: 'in-danger', danger }, { kind: 'reminder', key: `danger/${key}`, rows });
    return { key, cards };
  });
}

/** Owns up to a later day before the buyer has to ask: one that holds, so that it is owned up to once. */
export const delayButton = (order: string, day: Day): CardButton => ({
  label: { code: 'delay', day },
  tap: benchTap('delay', order, day),
});
