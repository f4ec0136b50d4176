import type { Day, Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { benchTap, proposeButton } from './benchButtons.ts';
import type { CardButton } from './card.ts';
import type { Danger } from './coming.ts';
import { wordButton } from './draftButtons.ts';
import type { Help } from './helps.ts';
import { onOrder } from './orderButtons.ts';
import { sureDays } from './planning.ts';
import type { Desk } from './state.ts';

/** What can be done about promises in danger, a row each: a word to the buyer, and what really helps. */
export function dangerRows(
  shop: Shop,
  desk: Desk,
  now: Instant,
): (danger: Danger, helps: readonly Help[]) => readonly (readonly CardButton[])[] {
  const tells = tellDays(shop, desk, now);
  return (danger, helps) => {
    const { order } = danger;
    const day = tells(danger);
    const tell = day === null || day <= (desk.orders[order]?.slip ?? '') ? [] : [[delayButton(order, day)]];
    return [...tell, ...helps.map((help) => [helpButton(help, order)])];
  };
}

/** The day that may be told to the buyer of a promise in danger: one that holds, so that it is owned up to once; null where nobody can tell one. */
export function tellDays(shop: Shop, desk: Desk, now: Instant): (danger: Danger) => Day | null {
  const sure = sureDays(shop, desk, now);
  return ({ order, ships }) => (ships === null ? null : sure(order, ships));
}

function helpButton(help: Help, order: string): CardButton {
  if (help.do === 'buy') return wordButton('buy', benchTap('buy'));
  return help.do === 'post' ? onOrder('posted', 'posted', order) : proposeButton(help.change);
}

/** Owns up to a later day before the buyer has to ask. */
export const delayButton = (order: string, day: Day): CardButton => ({
  label: { code: 'delay', day },
  tap: benchTap('delay', order, day),
});
