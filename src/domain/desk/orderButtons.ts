import { wordButton } from './draftButtons.ts';
import type { CardButton } from './card.ts';
import type { Line } from '../order/spec.ts';
import type { Order } from './order.ts';
import type { Tap } from './tap.ts';

/** A button that opens an order; who may see it is asked when it is tapped. */
export const orderButton = (order: string): CardButton => ({
  label: { code: 'order', order },
  tap: { act: 'order', on: order, version: 0, arg: '-' },
});

/** A button that orders the same again; `SURE` also where that drops an open draft. */
export const againButton = (order: string, arg: '-' | typeof SURE = '-'): CardButton => ({
  label: { code: 'again', order },
  tap: { act: 'again', on: order, version: 0, arg },
});
export const SURE = 'sure';

/** A button that says that photos are of one line of an order, counted from 0. */
export const onLine = (order: string, line: Line, at: number): CardButton => ({
  label: { code: 'photo-of', order, line },
  tap: { act: 'to-order', on: order, version: 0, arg: String(at) },
});

/** A button that passes words on to the maker under an order's heading. */
export const passOnButton = (order: string): CardButton => ({
  label: { code: 'pass-on', order },
  tap: { act: 'to-order', on: order, version: 0, arg: '-' },
});

/** A button that does something to an order. */
export const onOrder = (word: Parameters<typeof wordButton>[0], act: Tap['act'], order: string): CardButton =>
  wordButton(word, { act, on: order, version: 0, arg: '-' });

/** The maker's two answers to a buyer who wants to cancel. */
export const cancelAnswers = (order: string): readonly CardButton[] => [
  onOrder('grant-cancel', 'grant-cancel', order),
  onOrder('refuse-cancel', 'refuse-cancel', order),
];

/** A button that opens a lot's own card. */
export const lotButton = (lot: string): CardButton => ({
  label: { code: 'lot', lot },
  tap: { act: 'lot', on: lot, version: 0, arg: '-' },
});

/** A button for each line that the buyer sent photos of. */
export const photoButtons = (order: Order): readonly CardButton[] =>
  order.photos.flatMap((_, at) => photosButton(order, at));

/** The button for the photos of one line, counted from 0; none where there are none. */
export function photosButton(order: Order | undefined, line: number): readonly CardButton[] {
  const photos = order?.photos[line]?.length ?? 0;
  if (order === undefined || photos === 0) return [];
  return [
    {
      label: { code: 'photos', order: order.id, line: line + 1, photos },
      tap: { act: 'photos', on: order.id, version: 0, arg: String(line) },
    },
  ];
}

/** The question whether to cancel gives way to what came of it. */
export const cancelSlot = (order: string): string => `cancel:${order}`;

/** What the button that says no to it carries. */
export const KEPT = 'kept';
