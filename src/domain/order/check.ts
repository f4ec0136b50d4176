import type { Shop } from '../shop/shop.ts';
import type { DraftLine } from './draft.ts';
import { KIND, type Finding, type Remark, type WayOut } from './finding.ts';
import { guardColours } from './next.ts';
import { conflicts } from './rules.ts';
import type { PartialSpec } from './spec.ts';
import { waysOut } from './ways.ts';

/** What keeps a line, as far as it is stated, from being made: molds first, then the number of heads. */
export function checkLine(shop: Shop, spec: PartialSpec, quantity: number | undefined, line = 0): readonly Finding[] {
  const found = conflicts(shop, spec).map((why) => finding(line, why, waysOut(shop, spec, why)));
  return quantity === undefined ? found : [...found, ...checkQuantity(shop, quantity, line)];
}

/** The same of a line that is still being talked about; a guard that is wanted, colour not said yet, is checked as any guard would be. */
export function checkDraftLine(
  shop: Shop,
  { spec, quantity, wantsGuard }: DraftLine,
  line: number,
): readonly Finding[] {
  const unsaid = wantsGuard && spec.guard === undefined && guardColours(shop, spec).length === 0;
  return checkLine(shop, unsaid ? { ...spec, guard: shop.guards[0]?.id } : spec, quantity ?? undefined, line);
}

/** A finding of the kind that its remark always has. */
export const finding = (line: number, why: Remark, ways: readonly WayOut[] = []): Finding => ({
  kind: KIND[why.code],
  line,
  why,
  ways,
});

function checkQuantity({ orders }: Shop, quantity: number, line: number): readonly Finding[] {
  if (quantity < orders.least) {
    const why = { code: 'too-few', slots: ['quantity'], quantity, least: orders.least } as const;
    return [finding(line, why, [{ put: { quantity: orders.least } }])];
  }
  if (quantity > orders.most) {
    const why = { code: 'too-many', slots: ['quantity'], quantity, most: orders.most } as const;
    return [finding(line, why, [{ put: { quantity: orders.most } }])];
  }
  return [];
}
