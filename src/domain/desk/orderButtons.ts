import { wordButton } from './draftButtons.ts';
import type { CardButton } from './card.ts';
import type { Tap } from './tap.ts';

/** A button that opens an order; who may see it is asked when it is tapped. */
export const orderButton = (order: string): CardButton => ({
  label: { code: 'order', order },
  tap: { act: 'order', on: order, version: 0, arg: '-' },
});

/** A button that orders the same again. */
export const againButton = (order: string): CardButton => ({
  label: { code: 'again', order },
  tap: { act: 'again', on: order, version: 0, arg: '-' },
});

/** A button that does something to an order. */
export const onOrder = (word: Parameters<typeof wordButton>[0], act: Tap['act'], order: string): CardButton =>
  wordButton(word, { act, on: order, version: 0, arg: '-' });
