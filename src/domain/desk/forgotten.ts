import { z } from 'zod';
import { HOUR, type Instant } from '../craft/time.ts';
import { personId, type PersonId } from './person.ts';
import type { Desk } from './state.ts';
import { without } from './turn.ts';

/** Stands in finished orders for somebody who asked to be forgotten; nobody on the chat platform has this number. */
export const NOBODY: PersonId = 1;

const finished = z.looseObject({ buyer: personId, shippedAt: z.number().nullable() });

/** A finished order of one of `people`, reduced to what the maker must keep for the tax books: what was sold, where to, when and for how much.
 *  Anything else comes back as it is. */
export function soldOnly(record: unknown, people: readonly PersonId[]): unknown {
  const order = finished.safeParse(record).data;
  if (order === undefined || !people.includes(order.buyer)) return record;
  return { ...order, buyer: NOBODY, address: null, photos: [], said: [], tracking: null, lots: [] };
}

/** A finished order from before `cut` without what was needed to make and post it only; anything else as it is. */
export function unaddressed(record: unknown, cut: Instant): unknown {
  const order = finished.safeParse(record).data;
  const isOld = order !== undefined && (order.shippedAt ?? cut) < cut && order['address'] !== null;
  return isOld ? { ...order, address: null, photos: [], said: [], tracking: null } : record;
}

/** Whether a finished order is of this person. */
export const isOf = (record: unknown, id: PersonId): boolean => finished.safeParse(record).data?.buyer === id;

/** The desk without anything of a person who has no open order. */
export function forgot(desk: Desk, id: PersonId): Desk {
  const draft = desk.drafts[id];
  return {
    ...desk,
    people: without(desk.people, String(id)),
    drafts: without(desk.drafts, String(id)),
    quotes: draft === undefined ? desk.quotes : without(desk.quotes, draft.id),
    settling: Object.fromEntries(
      Object.entries(desk.settling).map(([key, order]) => [
        key,
        order.buyer === id
          ? { ...order, buyer: NOBODY, address: null, photos: [], said: [], tracking: null, lots: [] }
          : order,
      ]),
    ),
    questions: Object.fromEntries(Object.entries(desk.questions).filter(([, { from }]) => from !== id)),
    exported: without(desk.exported, String(id)),
    forgetting: desk.forgetting.filter((one) => one !== id),
  };
}

export const hasOpenOrder = (desk: Desk, id: PersonId): boolean =>
  Object.values(desk.orders).some(({ buyer }) => buyer === id);

/** Reading the whole archive for somebody is work, so a copy is made once an hour at most. */
export const mayExport = (desk: Desk, id: PersonId, now: Instant): boolean => now - (desk.exported[id] ?? 0) >= HOUR;
