import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { booksRow } from '../../../src/adapters/doors/books.ts';
import { BOOKS } from '../../../src/domain/desk/books.ts';
import { order, shop } from '../../wording/samples.ts';

const shipped = {
  ...order,
  state: 'shipped',
  shippedAt: order.acceptedAt,
  ledger: [{ at: order.acceptedAt, kind: 'paid', cents: order.money.total, why: '=cmd, "quoted"' }],
  used: { 'metal:lead': 330, bag: 2 },
};
const asked = (table: string, from: string, to: string) => booksRow(shop, { table, from, to, orders: [shipped] });
const read = (csv: unknown): Record<string, string>[] => parse((csv as { csv: string }).csv, { columns: true });

describe('the books as rows', () => {
  test.each(BOOKS)('%s of the month has the order, and of the next month has not', (table) => {
    expect(read(asked(table, '2026-11-01', '2026-11-30')).map((row) => row['order'])).toContain('K-1042');
    expect(read(asked(table, '2026-12-01', '2026-12-31'))).toEqual([]);
  });

  test('an order’s row adds up: heads, what is added, tax and postage are its total', () => {
    const [row] = read(asked('orders', '2026-11-01', '2026-11-30'));
    const sum = ['heads_total', 'top_up', 'rush', 'postage', 'sales_tax', 'adjusted'].reduce(
      (all, column) => all + Math.round(Number(row?.[column]) * 100),
      0,
    );
    expect(sum).toBe(Math.round(Number(row?.['total']) * 100));
    expect(row).toMatchObject({ due: '0.00', currency: 'USD' });
  });

  test('somebody’s words calculate nothing', () =>
    expect(read(asked('payments', '2026-11-01', '2026-11-30'))[0]?.['why']).toBe(`'=cmd, "quoted"`));

  test('an order of an older book, without payments, is read', () => {
    const { ledger: _ledger, used: _used, made: _made, ...old } = shipped;
    const row = booksRow(shop, { table: 'orders', from: '2026-11-01', to: '2026-11-30', orders: [old] });
    expect(read(row)[0]).toMatchObject({ paid: '0.00' });
  });

  test('a row that is none is answered with what is wrong in it', () =>
    expect(booksRow(shop, { table: 'sums' })).toMatchObject({
      error: expect.stringContaining('cannot be read') as string,
    }));
});
