import { isMade, newLot, stepOf, type Lot } from '../bench/lot.ts';
import { lineInPlan, madeInPlan } from '../bench/inPlan.ts';
import type { Celsius } from '../craft/temperature.ts';
import type { Day } from '../craft/time.ts';
import type { Line, Spec } from '../order/spec.ts';
import { specSchema } from '../order/spec.ts';
import type { PlanLot } from '../plan/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { SPEC_SLOTS } from '../shop/words.ts';
import { needsOf, type Amounts } from '../stock/needs.ts';
import { usedAt } from '../stock/use.ts';
import type { Desk } from './state.ts';

/** Good heads made over: put on the shelf when their lot is packed, taken first when the same head is ordered again. */

/** Part of an ordered line: heads still to be made, or finished ones off the shelf. */
export type Part = Readonly<{ from: 'bench' | 'shelf'; at: number; line: Line }>;

/** A spec as one line of words, the same for the same head. */
export const shelfKey = (spec: Spec): string => JSON.stringify(SPEC_SLOTS.map((slot) => spec[slot]));

/** The spec that a shelf's key was made of; undefined for a key of another make. */
export function shelfSpec(key: string): Spec | undefined {
  const values: unknown = key.startsWith('[') ? JSON.parse(key) : [];
  if (!Array.isArray(values)) return undefined;
  return specSchema.safeParse(Object.fromEntries(SPEC_SLOTS.map((slot, at) => [slot, values[at]]))).data;
}

/** Finished heads on the shelf; a key of another make is passed over. */
export const shelvedOf = ({ shelf }: Desk): readonly Readonly<{ spec: Spec; count: number }>[] =>
  Object.entries(shelf).flatMap(([key, count]) => {
    const spec = shelfSpec(key);
    return spec === undefined ? [] : [{ spec, count }];
  });

/** The shelf with so many heads more, or fewer where `extra` is below nothing. Nothing stands on it with a count of nothing. */
export const putBy = (shelf: Desk['shelf'], spec: Spec, extra: number): Desk['shelf'] =>
  putUnder(shelf, shelfKey(spec), extra);

/** The same for a spec that is written as one line already. */
export function putUnder(shelf: Desk['shelf'], key: string, extra: number): Desk['shelf'] {
  const count = Math.max(0, (shelf[key] ?? 0) + extra);
  const others = Object.entries(shelf).filter(([name]) => name !== key);
  return Object.fromEntries(count > 0 ? [...others, [key, count]] : others);
}

/** Lines as they would be served: finished heads off the shelf first, the rest from the bench. An earlier line takes before a later one. */
export function partsOf(shelf: Desk['shelf'], lines: readonly Line[]): readonly Part[] {
  let left = shelf;
  return lines.flatMap((line, at): readonly Part[] => {
    const taken = Math.min(left[shelfKey(line.spec)] ?? 0, line.quantity);
    left = putBy(left, line.spec, -taken);
    const made: Part = { from: 'bench', at, line: { ...line, quantity: line.quantity - taken } };
    const there: Part = { from: 'shelf', at, line: { ...line, quantity: taken } };
    return [made, there].filter((part) => part.line.quantity > 0);
  });
}

/** The shelf without what these parts take. */
export const takenOff = (shelf: Desk['shelf'], parts: readonly Part[]): Desk['shelf'] =>
  parts.reduce((left, { from, line }) => (from === 'shelf' ? putBy(left, line.spec, -line.quantity) : left), shelf);

/** What a part still uses up: finished heads only want packing. */
export const partNeeds = (shop: Shop, { from, line }: Part): Amounts =>
  from === 'shelf' ? usedAt('pack', needsOf(shop, line)).used : needsOf(shop, line);

export const partInPlan = (
  shop: Shop,
  garage: Celsius,
  id: string,
  { from, line }: Part,
  materials: Day | null,
): PlanLot =>
  from === 'shelf' ? madeInPlan(shop, garage, id, line, materials) : lineInPlan(shop, garage, id, line, materials);

/** The lot of a part of an accepted order. The shelf's share of a line that has both is told apart by its letter. */
export function partLot(shop: Shop, order: string, part: Part, parts: readonly Part[]): Lot {
  const { from, at, line } = part;
  const id = `${order}-${at + 1}`;
  const lot = newLot(id, order, line.spec, line.quantity, { ...partNeeds(shop, part) });
  if (from === 'bench') return lot;
  const isAlone = parts.filter((other) => other.at === at).length === 1;
  return {
    ...lot,
    id: isAlone ? id : `${id}s`,
    good: line.quantity,
    shelf: line.quantity,
    steps: lot.steps.map((one) =>
      one.step === 'pack' ? { ...one, state: 'ready' } : { ...one, state: 'done', through: line.quantity },
    ),
  };
}

/** Of the good heads of a lot, those that go into the parcel and those that are over. */
export const sharedOut = (good: number, heads: number): Readonly<{ parcel: number; over: number }> => ({
  parcel: Math.min(good, heads),
  over: Math.max(0, good - heads),
});

/** The desk with what is over of a packed lot on the shelf. */
export function overOnShelf(desk: Desk, id: string): Desk {
  const lot = desk.lots[id];
  if (lot === undefined || stepOf(lot, 'pack')?.state !== 'done') return desk;
  const { parcel, over } = sharedOut(lot.good, lot.heads);
  const packed = { ...lot, good: parcel, over: lot.over + over };
  return { ...desk, lots: { ...desk.lots, [id]: packed }, shelf: putBy(desk.shelf, lot.spec, over) };
}

/** Lots of an order that is given up, of which only the packing is left: their heads go on the shelf. */
export const backOnShelf = (shelf: Desk['shelf'], lots: readonly Lot[]): Desk['shelf'] =>
  lots.filter(isMade).reduce((next, { spec, good }) => putBy(next, spec, good), shelf);
