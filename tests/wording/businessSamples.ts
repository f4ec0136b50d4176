import type { BusinessSaying } from '../../src/domain/desk/business.ts';
import { BOOKS } from '../../src/domain/desk/books.ts';
import { monthOf } from '../../src/domain/desk/month.ts';
import type { Order } from '../../src/domain/desk/order.ts';
import { costOrder } from '../../src/domain/quote/cost.ts';
import { worksheetFor } from '../../src/domain/quote/excise.ts';
import { balanceOf } from '../../src/domain/quote/payment.ts';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { JOURNAL_WHYS } from '../../src/domain/stock/journal.ts';
import { STOCK_VERBS } from '../../src/domain/stock/said.ts';

type OneOf<Code extends BusinessSaying['code']> = Omit<Extract<BusinessSaying, { code: Code }>, 'code'>;
type Samples = { readonly [Code in BusinessSaying['code']]: readonly [OneOf<Code>, ...OneOf<Code>[]] };

const item = 'hook:60-flat-heavy:6/0';
const open = balanceOf(5000, []);
const part = balanceOf(5000, [{ at: 0, kind: 'paid', cents: 2000, why: '' }]);
const back = balanceOf(5000, [
  { at: 0, kind: 'paid', cents: 5000, why: '' },
  { at: 0, kind: 'refund', cents: 500, why: '' },
  { at: 0, kind: 'adjust', cents: -2000, why: 'thin paint' },
]);

/** Facts on stock and money to word, a few for every code. */
export function businessSamples(shop: Shop, order: Order): Samples {
  const cost = costOrder(shop, order.lines, order.money);
  const gone: Order = {
    ...order,
    state: 'shipped',
    shippedAt: order.acceptedAt,
    ledger: [{ at: order.acceptedAt, kind: 'paid', cents: order.money.total, why: '' }],
    made: [{ style: 'football', heads: 30, scrap: 2 }],
  };
  const purchase = {
    item,
    count: 300,
    needed: 40,
    onHand: 90,
    reserved: 130,
    coming: 0,
    overdue: [],
    reorderAt: 60,
    cents: 4200,
  };
  const late = { item, count: 200, day: '2026-12-12', named: '2026-12-05', overdue: 3 };
  return {
    'stock-changed': [
      { verb: 'count', item, count: 85, onHand: 85, day: null, short: 45 },
      ...STOCK_VERBS.map((verb) => ({ verb, item: 'bag', count: 500, onHand: 900, day: '2026-12-09', short: 0 })),
      { verb: 'ordered', item, count: 200, onHand: 5, day: null, short: 3 },
    ],
    'which-stock': [{ verb: 'got', count: 50, named: '4/0 hooks', items: [item, 'hook:30-flat-heavy:4/0'] }],
    'stock-unknown': [{ named: 'unicorns' }],
    'whole-pieces': [{ item: 'bag' }],
    'not-so-many': [{ item, count: 5000, onHand: 90 }],
    'how-much-stock': [
      { verb: 'got', item, count: 100 },
      ...STOCK_VERBS.map((verb) => ({ verb, item: 'bag', count: 500 })),
    ],
    'to-buy': [
      { baskets: [], untilKnown: 0 },
      { baskets: [], untilKnown: 3 },
      {
        baskets: [
          { supplier: 'hook house', items: [purchase, { ...purchase, needed: 0 }] },
          { supplier: null, items: [{ ...purchase, item: 'bag', overdue: [late], cents: null }] },
        ],
        untilKnown: 1,
      },
    ],
    journal: [
      { rows: [] },
      {
        rows: JOURNAL_WHYS.map((why) => ({
          at: order.acceptedAt,
          by: 7,
          item,
          change: -12,
          onHand: 78,
          why,
          ref: 'done/pour',
          who: why === 'used' ? null : 'Ann',
        })),
      },
    ],
    cost: [
      { order, cost },
      { order, cost: { ...cost, thin: true, uncosted: ['bag'], excise: 0 } },
    ],
    excise: [
      { sheet: worksheetFor([{ order: 'K-1', day: '2026-11-25', cents: 1000 }], '2026-Q4', 75) },
      { sheet: worksheetFor([], '2026-Q4', 100) },
    ],
    'no-excise': [{}],
    pay: [open, part, back, balanceOf(0, [])].map((balance) => ({
      order: 'K-1042',
      balance,
      deposit: 0,
      charges: balance.paid > 0 ? ['c-1'] : [],
    })) as never,
    paid: [
      { order: 'K-1042', kind: 'paid', cents: 2000, tax: 0, balance: part, begins: true },
      { order: 'K-1042', kind: 'paid', cents: 5000, tax: 0, balance: balanceOf(0, []), begins: false },
      { order: 'K-1042', kind: 'refund', cents: 500, tax: 0, balance: back, begins: false },
      { order: 'K-1042', kind: 'adjust', cents: -535, tax: -35, balance: open, begins: false },
      { order: 'K-1042', kind: 'adjust', cents: 500, tax: 0, balance: open, begins: false },
    ],
    'order-moved': [
      { order, buyer: 'Ann', balance: part },
      { order, buyer: 'Ann', balance: back },
    ],
    'why-then': [
      { order: 'K-1042', kind: 'refund' },
      { order: 'K-1042', kind: 'adjust' },
    ],
    'not-paid': [
      { order: 'K-1042', why: 'no-amount', balance: open, mostOff: 3230 },
      { order: 'K-1042', why: 'more-than-due', balance: open, mostOff: 3230 },
      { order: 'K-1042', why: 'more-than-kept', balance: part, mostOff: 3230 },
      { order: 'K-1042', why: 'below-nothing', balance: open, mostOff: 3230 },
    ],
    unpaid: [
      { rows: [] },
      {
        rows: [
          { order: 'K-1042', buyer: 'Ann', due: 2000, over: 0, kept: 0, dueOn: '2026-12-01', late: 0 },
          { order: 'K-1043', buyer: 'Ann', due: 2000, over: 0, kept: 0, dueOn: '2026-11-01', late: 24 },
          { order: 'K-1044', buyer: 'Ann', due: 0, over: 500, kept: 0, dueOn: '2026-11-01', late: 1 },
        ],
      },
    ],
    'payment-in': [
      { order: 'K-1042', cents: 2000, due: 0 },
      { order: 'K-1042', cents: 2000, due: 3000 },
    ],
    refunded: [
      { order: 'K-1042', cents: 2000, why: '' },
      { order: 'K-1042', cents: 2000, why: 'a bent hook' },
    ],
    'price-changed': [
      { order: 'K-1042', cents: -535, tax: -35, why: 'thin paint', asked: 4500 },
      { order: 'K-1042', cents: 500, tax: 0, why: '', asked: 5500 },
    ],
    month: [
      { facts: monthOf(shop, [], '2026-11') },
      { facts: monthOf(shop, [gone, { ...gone, id: 'K-2', state: 'cancelled' }, { ...order, id: 'K-3' }], '2026-11') },
    ],
    paper: [
      { kind: 'packing-slip', order, buyer: 'Ann', day: '2026-11-25' },
      { kind: 'order-sheet', order, buyer: null, day: '2026-11-25' },
      { kind: 'receipt', order: gone, buyer: 'Ann', day: '2026-11-25' },
      { kind: 'price-list', order: null, buyer: null, day: '2026-11-25' },
    ],
    books: [
      { kind: 'orders', from: '2026-11-01', to: '2026-11-30', rows: 12 },
      ...BOOKS.map((kind) => ({ kind, from: '2026-11-01', to: '2026-11-30', rows: 1 })),
    ],
    'no-receipt': [{ order: null }, { order: 'K-1042' }],
    'no-slip': [{ order: 'K-1042' }],
    'which-order': [{ word: 'paid' }],
    'no-such-period': (['books', 'month', 'tax'] as const).map((word) => ({
      word,
      said: '2026-13',
      today: '2026-11-25',
    })) as never,
    invoice: [
      { order, what: 'whole', cents: 4500 },
      { order, what: 'deposit', cents: 1500 },
    ],
    'paid-here': [
      { order: 'K-1042', buyer: 'Ann', cents: 2000, balance: part, begins: true },
      { order: 'K-1042', buyer: 'Ann', cents: 5000, balance: back, begins: false },
    ],
    'payment-astray': [{ order: 'K-1042', buyer: 'Ann', cents: 2000, currency: 'USD', charge: 'charge-1' }],
  };
}
