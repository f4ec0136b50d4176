import { z } from 'zod';
import { BOOKS, bookOf } from '../../domain/desk/books.ts';
import { orderSchema } from '../../domain/desk/order.ts';
import type { Shop } from '../../domain/shop/shop.ts';

const rowSchema = z.object({
  id: z.string().optional(),
  table: z.enum(BOOKS),
  from: z.iso.date(),
  to: z.iso.date(),
  orders: z.array(orderSchema),
});

/** One JSON row `{"table","from","to","orders"}`, the orders as the book and the archive hold them, as `{"rows","csv"}`: a table of the books (RFC 4180). */
export function booksRow(shop: Shop, row: unknown): unknown {
  const read = rowSchema.safeParse(row);
  if (!read.success) return { error: `This row cannot be read: ${z.prettifyError(read.error)}` };
  const { id, table, from, to, orders } = read.data;
  const { text, rows } = bookOf(table, shop, orders, { from, to });
  return { ...(id === undefined ? {} : { id }), rows, csv: text };
}
