import { newLot } from '../../../src/domain/bench/lot.ts';
import { addDays, type Day, type Instant } from '../../../src/domain/craft/time.ts';
import { orderSchema, type Order } from '../../../src/domain/desk/order.ts';
import { emptyDesk, type Desk } from '../../../src/domain/desk/state.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { moneyFor } from '../../../src/domain/quote/quote.ts';
import { SHOP } from '../../demoShop.ts';

export const FOOTBALL: Spec = {
  style: 'football',
  weight: '3/8',
  hook: '4/0',
  paint: 'green-pumpkin',
  guard: 'brown',
  keeper: 'wire',
  dressing: 'none',
  metal: 'lead',
};
export const BALL: Spec = {
  style: 'ball',
  weight: '1/4',
  hook: '1/0',
  paint: 'white',
  guard: 'none',
  keeper: 'barb',
  dressing: 'none',
  metal: 'lead',
};

/** Lines of accepted orders, one each; `ships` is the day it was promised for. */
export type Accepted = Readonly<{ spec: Spec; heads: number; ships: Day }>;

/** A desk with these orders accepted and nothing of them made yet. */
export function openDesk(accepted: readonly Accepted[], now: Instant): Desk {
  const orders = accepted.map((one, at) => orderOf(one, `K-${1001 + at}`, now));
  const lots = accepted.map(({ spec, heads }, at) => newLot(`K-${1001 + at}-1`, `K-${1001 + at}`, spec, heads, {}));
  return {
    ...emptyDesk,
    orders: Object.fromEntries(orders.map((order) => [order.id, order])),
    lots: Object.fromEntries(lots.map((lot) => [lot.id, lot])),
  };
}

/** So many orders of all kinds, each promised a little later than the one before. */
export const manyAccepted = (count: number, first: Day): readonly Accepted[] =>
  Array.from({ length: count }, (_, at) => ({
    spec:
      at % 3 === 1
        ? BALL
        : {
            ...FOOTBALL,
            paint: PAINTS[at % PAINTS.length] ?? 'black',
            guard: at % 2 ? 'none' : 'brown',
            dressing: at % 4 === 0 ? 'skirt-green-pumpkin' : 'none',
          },
    heads: 12 + ((at * 7) % 30),
    ships: addDays(first, 2 + Math.floor(at / 2)),
  }));

const PAINTS = ['green-pumpkin', 'black', 'white'];

function orderOf({ spec, heads, ships }: Accepted, id: string, now: Instant): Order {
  const lines = [{ spec, quantity: heads }];
  const money = moneyFor(SHOP, lines, 'US-MN');
  if (money === undefined) throw new Error('The demo shop ships to Minnesota.');
  return orderSchema.parse({
    id,
    draft: `D${id}`,
    buyer: 7,
    state: 'accepted',
    lines,
    photos: [[]],
    needBy: null,
    shipTo: 'US-MN',
    address: 'Ann Bee\n1 Main Street\nAda MN 56510',
    money,
    promise: { ships, confidence: 0.9 },
    slip: null,
    acceptedAt: now,
    cancelAskedAt: null,
    cancelKeeps: null,
    packedAt: null,
    shippedAt: null,
    tracking: null,
    ledger: [],
    used: {},
    made: [],
  });
}
