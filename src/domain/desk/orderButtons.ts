import { wordButton } from './draftButtons.ts';
import type { CardButton } from './card.ts';
import type { Order } from './order.ts';
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

/** A button that opens a lot's own card. */
export const lotButton = (lot: string): CardButton => ({
  label: { code: 'lot', lot },
  tap: { act: 'lot', on: lot, version: 0, arg: '-' },
});

/** A button for each line that the buyer sent photos of. */
export const photoButtons = ({ id, photos }: Order): readonly CardButton[] =>
  photos.flatMap((sent, at): CardButton[] =>
    sent.length === 0
      ? []
      : [
          {
            label: { code: 'photos', line: at + 1, photos: sent.length },
            tap: { act: 'photos', on: id, version: 0, arg: String(at) },
          },
        ],
  );
