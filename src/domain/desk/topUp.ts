import { newLot, type Lot } from '../bench/lot.ts';
import type { Shop } from '../shop/shop.ts';
import { needsOf } from '../stock/needs.ts';
import type { Desk } from './state.ts';

/** A lot that scrap made short keeps what it has; what is missing begins again as a lot of its own. */
export function topUp(shop: Shop, desk: Desk, id: string): Readonly<{ lots: readonly Lot[]; made: Lot }> | undefined {
  const lot = desk.lots[id];
  const missing = lot && lot.steps[0]?.state === 'done' ? lot.heads - lot.good : 0;
  if (lot === undefined || missing <= 0) return undefined;
  const made = newLot(freshLotId(desk, lot), lot.order, lot.spec, missing, {
    ...needsOf(shop, { spec: lot.spec, quantity: missing }),
  });
  // A lot of which nothing is left goes; what it used and scrapped is then told by the lot that stands for it.
  const heir = lot.good === 0 ? { ...made, scrap: lot.scrap, used: lot.used } : made;
  return { lots: [{ ...lot, heads: Math.max(1, lot.good) }, heir], made: heir };
}

/** `K-1001-1`, then `K-1001-1b`, `K-1001-1c`… */
export function freshLotId(desk: Desk, lot: Lot): string {
  const base = lot.id.replace(/[a-z]+$/, '');
  const free = FRESH.find((letters) => desk.lots[base + letters] === undefined);
  return base + (free ?? FRESH.at(-1));
}

/** One letter, then two: more than ever go wrong at a time. */
const LETTERS = [...'bcdefghijklmnopqrstuvwxyz'];
const FRESH = [...LETTERS, ...LETTERS.flatMap((first) => LETTERS.map((second) => first + second))];
