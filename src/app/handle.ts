import type { PersonId } from '../domain/desk/person.ts';
import type { Command } from '../domain/desk/command.ts';
import type { Instant } from '../domain/craft/time.ts';
import type { Book, Closed, Dead } from './book.ts';
import type { LetterDraft } from './letter.ts';
import { remember } from './memory.ts';
import { queue, raised } from './outbox.ts';
import { purged } from './keeping.ts';
import type { Store } from './store.ts';

/** What the shop answers to a command: the next desk and what is said about it. Pure. `undelivered` holds what could not be delivered of late. */
export type Rules<Desk> = (desk: Desk, command: Command, now: Instant, undelivered: readonly Dead[]) => Turn<Desk>;
export type Turn<Desk> = Readonly<{
  desk: Desk;
  letters: readonly LetterDraft[];
  /** A few words shown over the chat when a button was pressed; never more than 200 characters. */
  toast: string | null;
  closed: readonly Closed[];
  /** People of whom nothing is to be kept any more but what the maker must keep. */
  forgotten?: readonly PersonId[];
}>;

/** `id` is the platform's number for the update; null for what happens by itself. */
export type Update = Readonly<{ id: number | null; command: Command }>;
export type Reply = Readonly<{
  toast: string | null;
  /** The update had its effect before. */
  repeated: boolean;
  /** What the rules threw, if they did: then nothing was changed but that the update is done with. */
  fault: unknown;
}>;

/** Decides and records in one step, alone: the next desk, the letters and the update's number are one write, or none.
 *  @throws NotRecorded when they could not be written. */
export const handle =
  <Desk>(store: Store<Book<Desk>>, rules: Rules<Desk>, clock: () => Instant) =>
  (update: Update): Promise<Reply> =>
    store.change((book) => step(book, update, rules, clock()));

function step<Desk>(book: Book<Desk>, update: Update, rules: Rules<Desk>, now: Instant) {
  if (book.seen.some(({ id }) => id === update.id)) return { next: book, result: REPEATED };
  const seen = update.id === null ? book.seen : remember(book.seen, [{ id: update.id, at: now }], now);
  try {
    const turn = rules(book.desk, update.command, now, book.dead);
    return { next: taken(book, seen, turn, update, now), result: { ...DONE, toast: turn.toast } };
  } catch (fault) {
    return { next: seen === book.seen ? book : { ...book, seen }, result: { ...DONE, fault } };
  }
}

const DONE: Reply = { toast: null, repeated: false, fault: null };
const REPEATED: Reply = { toast: null, repeated: true, fault: null };

function taken<Desk>(book: Book<Desk>, seen: Book<Desk>['seen'], turn: Turn<Desk>, update: Update, now: Instant) {
  const letters = turn.letters.filter((letter) => !isToLost(letter, update.command));
  if (
    heardOf(book, update, now) === book &&
    turn.desk === book.desk &&
    seen === book.seen &&
    letters.length + turn.closed.length === 0
  )
    return book;
  const fresh = turn.closed.filter(({ id }) => !book.closing.some((row) => row.id === id));
  const unasked = book.unasked + (update.id === null ? 1 : 0);
  const closing = fresh.length === 0 ? book.closing : [...book.closing, ...fresh];
  const left = purged(heardOf(book, update, now), turn.forgotten ?? []);
  return queue({ ...left, desk: turn.desk, seen, closing, unasked }, letters, `${update.id ?? `t${unasked}`}`, now);
}

/** Who writes can be written to again. */
const heardOf = <Desk>(book: Book<Desk>, { id, command }: Update, now: Instant): Book<Desk> =>
  id === null || !('by' in command) || (command.type === 'reach' && !command.reachable)
    ? book
    : raised(book, command.by.id, now);

/** Someone who has just been found unreachable is not written to about it: that would go round in a circle. */
const isToLost = (letter: LetterDraft, command: Command): boolean =>
  command.type === 'reach' && !command.reachable && command.by.id === letter.to;
