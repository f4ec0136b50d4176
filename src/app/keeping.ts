import type { Day, Instant } from '../domain/craft/time.ts';
import type { PersonId } from '../domain/desk/person.ts';
import type { Book, Closed } from './book.ts';
import type { Archive } from './closing.ts';
import type { Store } from './store.ts';

/** What is left of a finished order's record. The same record means that nothing is taken away. */
export type Reductions = Readonly<{
  /** Of somebody who is forgotten: what the maker must keep. */
  forgotten: (record: unknown, people: readonly PersonId[]) => unknown;
  /** Of an order finished before `cut`: without what it took to post it. */
  old: (record: unknown, cut: Instant) => unknown;
}>;

/** The book without what is said to people who are forgotten, and with their finished orders marked to be reduced. */
export function purged<Desk>(book: Book<Desk>, people: readonly PersonId[]): Book<Desk> {
  if (people.length === 0) return book;
  const isOther = ({ to }: Readonly<{ to: PersonId }>): boolean => !people.includes(to);
  return {
    ...book,
    outbox: book.outbox.filter(isOther),
    dead: book.dead.filter(({ letter }) => isOther(letter)),
    cards: Object.fromEntries(
      Object.entries(book.cards).filter(([key]) => !people.includes(Number(key.split('/')[0]))),
    ),
    forgetting: [...new Set([...book.forgetting, ...people])],
  };
}

/** Takes away what is not to be kept any longer: of people who are forgotten at once, addresses once their days are over.
 *  Each step is noted after it is done, so that a cut between the two only has it done again. */
export async function reduceArchive<Desk>(
  store: Store<Book<Desk>>,
  archive: Archive,
  reductions: Reductions,
  until: Readonly<{ day: Day; instant: Instant }>,
): Promise<void> {
  const { forgetting, addressesUntil } = store.read();
  if (forgetting.length > 0) {
    await reduced(archive, await archive.months(), (record) => reductions.forgotten(record, forgetting));
    await noted(store, (book) => ({ ...book, forgetting: book.forgetting.filter((id) => !forgetting.includes(id)) }));
  }
  if (addressesUntil === until.day) return;
  const months = (await archive.months()).filter((month) => isBetween(month, addressesUntil, until.day));
  await reduced(archive, months, (record) => reductions.old(record, until.instant));
  await noted(store, (book) => ({ ...book, addressesUntil: until.day }));
}

async function reduced(
  archive: Archive,
  months: readonly string[],
  reduce: (record: unknown) => unknown,
): Promise<void> {
  for (const month of months)
    await archive.rewrite(month, (row): Closed => {
      const record = reduce(row.record);
      return record === row.record ? row : { ...row, record };
    });
}

const noted = async <Desk>(store: Store<Book<Desk>>, next: (book: Book<Desk>) => Book<Desk>): Promise<void> =>
  void (await store.change((book) => ({ next: next(book), result: null })));

/** Months in which something was finished between the last look and this one. */
const isBetween = (month: string, from: Day | null, to: Day): boolean =>
  month <= to.slice(0, 7) && (from === null || month >= from.slice(0, 7));
