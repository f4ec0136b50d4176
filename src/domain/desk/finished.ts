import { orderSchema, type Order } from './order.ts';
import type { Desk } from './state.ts';

/** Orders of the archive and of the desk, each once and as it stands last; a record that is no order is passed over. */
export function allOrders(desk: Desk, archived: readonly unknown[]): readonly Order[] {
  const finished = archived.flatMap((record) => orderSchema.safeParse(record).data ?? []);
  const all = [...finished, ...Object.values(desk.settling), ...Object.values(desk.orders)];
  return [...new Map(all.map((order) => [order.id, order])).values()].sort((a, b) => a.acceptedAt - b.acceptedAt);
}
