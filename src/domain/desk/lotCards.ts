import type { Lot } from '../bench/lot.ts';
import { benchTap } from './benchButtons.ts';
import type { Card } from './card.ts';
import { wordButton } from './draftButtons.ts';
import type { Desk } from './state.ts';
import { toMakers, type World } from './turn.ts';

/** The cards of open lots that have moved, written over those that stand there. */
export const lotCards = (world: World, before: Desk, desk: Desk): readonly Card[] =>
  desk.watched.flatMap((id) => {
    const lot = desk.lots[id];
    if (lot === undefined || lot === before.lots[id]) return [];
    return toMakers(world, { code: 'lot-card', lot }, { ...lotLook(lot), place: 'over', kind: 'answer' });
  });

/** How a lot's card stands in the chat: one a lot, whatever step it is at. */
export const lotLook = ({ id, spec }: Lot): Pick<Card, 'slot' | 'rows' | 'picture'> => ({
  slot: `lot:${id}`,
  rows: [[wordButton('bench', benchTap('bench'))]],
  picture: spec,
});
