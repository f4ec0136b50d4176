import { orderWithAccount } from './account.ts';
import type { Command } from './command.ts';
import { orderSchema, type Order } from './order.ts';
import type { Desk } from './state.ts';
import type { Turn } from './turn.ts';

/** Orders of the archive and of the desk, each once and as it stands last; a record that is no order is passed over. */
export function allOrders(desk: Desk, archived: readonly unknown[]): readonly Order[] {
  const finished = archived.flatMap((record) => orderSchema.safeParse(record).data ?? []);
  const all = [...finished, ...Object.values(desk.settling), ...Object.values(desk.orders)];
  return [...new Map(all.map((order) => [order.id, order])).values()].sort((a, b) => a.acceptedAt - b.acceptedAt);
}

/** An order wherever it is: on the bench, off it with money open, or in what was looked up of the archive. */
export const anyOrder = ({ desk, around }: Pick<Turn, 'desk' | 'around'>, id: string): Order | undefined =>
  orderWithAccount(desk, id) ?? allOrders(desk, around.archived).find((one) => one.id === id);

/** The order that a command is about, where it is in the archive only, so that it has to be looked up. */
export function lookedBackAt(desk: Desk, command: Command): string | undefined {
  const id = orderMeant(desk, command);
  return id === undefined || orderWithAccount(desk, id) !== undefined ? undefined : id;
}

function orderMeant(desk: Desk, command: Command): string | undefined {
  if (command.type === 'tapped') return /^K-\d+/.exec(command.tap?.on ?? '')?.[0];
  if (command.type !== 'said') return undefined;
  const digits = NUMBERED.exec(command.text)?.[1];
  const asked = desk.people[command.by.id]?.asked;
  return digits === undefined ? (asked?.for === 'tracking' ? asked.order : undefined) : `K-${digits}`;
}

/** An order's or a lot's number, alone or after a word: `K-1001`, `lot K-1001-1`, `tracking K-1001 LX 12`; after a word on money, without its letter too. */
const NUMBERED = /^\s*\/?(?:(?:\p{L}+\s+)?k[\s-]?|(?:paid|pagado|pagó|refund|reembolso|cost[oe]?)\s+)(\d{3,7})(?!\d)/iu;
