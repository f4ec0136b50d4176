import type { Lot } from '../bench/lot.ts';
import type { Desk } from './state.ts';

/** All lots in working order: what was put first, then by the promised day, then by order. */
export const inOrder = (desk: Desk): readonly Lot[] =>
  Object.values(desk.lots).sort((a, b) => key(desk, a).localeCompare(key(desk, b)));

/** Those of them that may be worked on: what is on hold is left out. */
export const inWorkingOrder = (desk: Desk): readonly Lot[] =>
  inOrder(desk).filter(({ order }) => !desk.held.includes(order));

const key = (desk: Desk, { id, order }: Lot): string =>
  `${desk.first.includes(order) ? 0 : 1} ${desk.orders[order]?.promise.ships ?? '9999'} ${id}`;
