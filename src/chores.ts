import type { Book } from './app/book.ts';
import type { Archive } from './app/closing.ts';
import { dailyBackup } from './app/dailyBackup.ts';
import { reduceArchive } from './app/keeping.ts';
import { codeOf, type Log } from './app/log.ts';
import type { Store } from './app/store.ts';
import { HOUR, localDay, type Instant, type Zone } from './domain/craft/time.ts';
import type { Command } from './domain/desk/command.ts';
import type { PersonId } from './domain/desk/person.ts';
import { lookedBackAt } from './domain/desk/finished.ts';
import { isOf, mayExport, soldOnly, unaddressed } from './domain/desk/forgotten.ts';
import type { Desk } from './domain/desk/state.ts';
import { receiptIn } from './domain/order/afterwards.ts';
import { universalIn } from './domain/order/universal.ts';

export type ChoreParts = Readonly<{
  store: Store<Book<Desk>>;
  archive: Archive;
  zone: Zone;
  clock: () => Instant;
  log: Log;
  makers?: readonly PersonId[];
}>;

/** Takes out of the archive what is not to be kept: people who are forgotten, and addresses that are `days` old. */
export const tidying =
  ({ store, archive, zone, clock }: ChoreParts, days: number) =>
  (): Promise<void> => {
    const instant = clock() - days * 24 * HOUR;
    return reduceArchive(
      store,
      archive,
      { forgotten: soldOnly, old: unaddressed },
      { day: localDay(instant, zone), instant },
    );
  };

/** Whether a look through the archive is due: somebody is to be forgotten, or the clock says that a new day has begun. */
export const isUntidy = ({ store, zone, clock }: ChoreParts, { type }: Command, days: number): boolean => {
  const { forgetting, addressesUntil } = store.read();
  const isNewDay = (): boolean => addressesUntil !== localDay(clock() - days * 24 * HOUR, zone);
  return forgetting.length > 0 || (type === 'tick' && isNewDay());
};

/** Once a local day; what fails is logged and tried at the next tick. */
export const backingUp =
  (
    { store, zone, clock, log }: ChoreParts,
    make: () => Promise<Uint8Array>,
    send: (bytes: Uint8Array, name: string) => Promise<void>,
  ) =>
  (): Promise<void> =>
    dailyBackup({ store, make, send }, localDay(clock(), zone), clock()).catch((error: unknown) =>
      log('backup-failed', { code: codeOf(error) }),
    );

/** Finished orders that a command looks back at: all of them for a maker, a buyer's own for a buyer; nothing for any other command. */
export async function ordersAskedFor(parts: ChoreParts, command: Command): Promise<readonly unknown[]> {
  const { store, clock, log } = parts;
  if (command.type === 'tick') return [];
  const { desk } = store.read();
  const isMakers = (parts.makers ?? []).includes(command.by.id);
  const wantsAll = isMakers && (asksForBooks(command) || lookedBackAt(desk, command) !== undefined);
  const wantsOwn = asksForOwn(desk, command) || (asksForExport(command) && mayExport(desk, command.by.id, clock()));
  if (!wantsAll && !wantsOwn) return [];
  try {
    const records = await finishedOrders(parts);
    return wantsAll ? records : records.filter((record) => isOf(record, command.by.id));
  } catch (error) {
    log('archive-failed', { code: codeOf(error) });
    return [];
  }
}

/** All that is in the archive, and what is on its way there. */
async function finishedOrders({ store, archive }: ChoreParts): Promise<readonly unknown[]> {
  const months = await archive.months();
  const rows = (await Promise.all(months.map((month) => archive.read(month)))).flat();
  return [...rows, ...store.read().closing].map(({ record }) => record);
}

/** Words of a maker that look back over finished orders. */
const asksForBooks = (command: Command): boolean =>
  (command.type === 'said' && LOOKS_BACK.test(command.text)) ||
  (command.type === 'tapped' && command.tap?.act === 'paper');

const LOOKS_BACK =
  /^\s*\/?(?:month|mes|tax|impuesto|books|libros|slip|albar[aá]n|sheet|hoja|receipt|recibo)(?![\p{L}])/iu;

/** An own order that has left the bench, or a receipt of one. */
function asksForOwn(desk: Desk, command: Exclude<Command, Readonly<{ type: 'tick' }>>): boolean {
  const past = desk.people[command.by.id]?.past ?? [];
  const asksForReceipt = command.type === 'said' && receiptIn(command.text) !== undefined;
  return (
    past.some(({ order }) => order === lookedBackAt(desk, command)) ||
    (asksForReceipt && past.some(({ order }) => desk.orders[order] === undefined))
  );
}

const asksForExport = (command: Command): boolean =>
  (command.type === 'said' && universalIn(command.text) === 'export') ||
  (command.type === 'tapped' && command.tap?.act === 'export');
