import type { Lot } from '../bench/lot.ts';
import type { Shop } from '../shop/shop.ts';
import { benchTap, proposeButton } from './benchButtons.ts';
import { lotPhotos, saidOf } from './buyersLine.ts';
import type { Card } from './card.ts';
import { changesOf } from './lotChanges.ts';
import { inRows, wordButton } from './draftButtons.ts';
import type { Desk } from './state.ts';
import { toMakers, type World } from './turn.ts';

/** The cards of open lots that have moved, written over those that stand there. */
export const lotCards = (world: World, before: Desk, desk: Desk): readonly Card[] =>
  desk.watched.flatMap((id) => {
    const lot = desk.lots[id];
    if (lot === undefined || lot === before.lots[id]) return [];
    return toMakers(world, lotSaying(desk, lot), { ...lotLook(world.shop, desk, lot), place: 'over', kind: 'answer' });
  });

/** What a lot's card tells. */
export const lotSaying = (desk: Desk, lot: Lot): Card['say'] => ({ code: 'lot-card', lot, said: saidOf(desk, lot) });

/** How a lot's card stands in the chat: one a lot, whatever step it is at, with what can become of it and the buyer's photos. */
export const lotLook = (shop: Shop, desk: Desk, lot: Lot): Pick<Card, 'slot' | 'rows' | 'picture'> => ({
  slot: `lot:${lot.id}`,
  rows: [
    ...inRows([...lotPhotos(desk, [lot]), ...changesOf(shop, desk, lot).map(proposeButton)], 2),
    [wordButton('bench', benchTap('bench'))],
  ],
  picture: lot.spec,
});
