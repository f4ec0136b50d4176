import type { Lot } from '../bench/lot.ts';
import type { CardButton } from './card.ts';
import { photosButton } from './orderButtons.ts';
import type { Desk } from './state.ts';

/** Which line of its order a lot is of, from 0. @example lineAt('K-1001-2b') //=> 1 */
export const lineAt = (lot: string): number => Math.max(0, Number(/-(\d+)[a-z]*$/.exec(lot)?.[1] ?? 1) - 1);

/** What the buyer typed of a lot's line, in their own words. */
export const saidOf = (desk: Desk, { id, order }: Pick<Lot, 'id' | 'order'>): readonly string[] =>
  desk.orders[order]?.said[lineAt(id)] ?? [];

/** A button for the buyer's photos of each line that these lots are of. */
export function lotPhotos(desk: Desk, lots: readonly Pick<Lot, 'id' | 'order'>[]): readonly CardButton[] {
  const buttons = lots.flatMap(({ id, order }) => photosButton(desk.orders[order], lineAt(id)));
  const names = buttons.map(({ tap }) => `${tap.on} ${tap.arg}`);
  return buttons.filter((_, at) => names.indexOf(names[at] ?? '') === at);
}
