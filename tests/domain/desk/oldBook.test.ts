import { expect, test } from 'vitest';
import { deskSchema, emptyDesk } from '../../../src/domain/desk/state.ts';
import { orderSchema } from '../../../src/domain/desk/order.ts';
import { lotSchema } from '../../../src/domain/bench/lot.ts';
import { moneySchema } from '../../../src/domain/quote/quote.ts';
import { lot, order } from '../../wording/samples.ts';

/** A value without some of its parts, as a book had it before there were such. */
const without = (value: object, ...names: readonly string[]): object =>
  Object.fromEntries(Object.entries(value).filter(([name]) => !names.includes(name)));

test('a book from before there were payments and deliveries opens with nothing paid and nothing on its way', () => {
  expect(deskSchema.parse(without(emptyDesk, 'ordered', 'journal', 'usage', 'began', 'settling'))).toEqual(emptyDesk);
  expect(orderSchema.parse(without(order, 'ledger', 'cancelKeeps', 'used', 'made'))).toEqual(order);
  expect(lotSchema.parse(without(lot, 'used'))).toEqual(lot);
  expect(moneySchema.parse(without(order.money, 'rush'))).toEqual(order.money);
});
