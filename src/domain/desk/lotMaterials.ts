import { currentStep, type Lot } from '../bench/lot.ts';
import type { Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { setAside } from '../stock/check.ts';
import { materialsFor, type Materials } from '../stock/materials.ts';
import type { Amounts } from '../stock/needs.ts';
import { usedAt } from '../stock/use.ts';
import { inOrder } from './inOrder.ts';
import { shelfOf } from './shelves.ts';
import type { Desk } from './state.ts';

/** What each lot still waits for, by its id: what is there and what comes is given out in working order, to those on hold as well. */
export function lotMaterials(shop: Shop, desk: Desk, now: Instant): Readonly<Record<string, Materials>> {
  let shelf = { ...shelfOf(shop, desk, now), reserved: {} };
  const materials: Record<string, Materials> = {};
  for (const lot of inOrder(desk)) {
    materials[lot.id] = materialsFor(shop, shelf, stillWanted(lot));
    shelf = setAside(shelf, lot.reserved);
  }
  return materials;
}

/** What a lot needs from now on: a step that runs has its material in hand. */
function stillWanted(lot: Lot): Amounts {
  const at = currentStep(lot);
  return at?.state === 'running' ? usedAt(at.step, lot.reserved).left : lot.reserved;
}
