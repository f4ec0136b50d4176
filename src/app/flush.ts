import type { PersonId } from '../domain/desk/person.ts';
import type { Instant } from '../domain/craft/time.ts';
import type { Book } from './book.ts';
import type { Chat } from './chat.ts';
import { Halt } from './exit.ts';
import type { Letter } from './letter.ts';
import type { Log } from './log.ts';
import { cardOf, marked, nextFor, recovered, settled, waitingChats } from './outbox.ts';
import type { Outcome } from './outcome.ts';
import type { Store } from './store.ts';
import { Turnstile } from './turnstile.ts';

export type Post<Desk> = Readonly<{
  store: Store<Book<Desk>>;
  chat: Chat;
  clock: () => Instant;
  /** Calls `run` once after `ms` of real time; what it returns calls that off. */
  after: (ms: number, run: () => void) => () => void;
  /** Told of everyone who cannot be written to any more. */
  lost: (person: PersonId) => Promise<unknown>;
  /** Told when nothing can go on: the token is refused, or the book cannot be written. */
  halt: (why: Error) => void;
  log: Log;
}>;

/** A call that takes longer than this is slow: the platform answers in a tenth of a second. */
export const SLOW_MS = 400;

/** Longest sleep between two looks at the outbox: the clock may be set anew meanwhile. */
const LOOK_MS = 60_000;

/** Sends what waits in the outbox: in order within a chat, chats side by side, so that a slow or blocked chat delays nobody else.
 *  A letter is marked as going out, on disk, before its call; what the call brings is recorded before the chat's next letter. */
export class Dispatcher<Desk> {
  readonly #post: Post<Desk>;
  readonly #lanes = new Map<PersonId, Promise<void>>();
  #heldUntil: Instant = 0;
  #stopped = false;
  readonly #turnstile: Turnstile;
  /** Chats that wait at the turnstile, in the order in which it will let them in. */
  readonly #line: PersonId[] = [];
  #callOff: () => void = () => {};

  constructor(post: Post<Desk>) {
    this.#post = post;
    this.#turnstile = new Turnstile(SLOW_MS, post.after);
  }

  /** To be called once before the first `wake`: puts what a crash left in doubt back in line. */
  async recover(): Promise<void> {
    const { store, clock } = this.#post;
    await store.change((book) => ({ next: recovered(book, clock()), result: null }));
  }

  /** There may be something to send. Cheap, and safe to call at any time. */
  wake(): void {
    if (this.#stopped) return;
    const now = this.#post.clock();
    for (const [to, due] of waitingChats(this.#post.store.read()))
      if (!this.#lanes.has(to) && Math.max(due, this.#heldUntil) <= now) this.#open(to);
    this.#sleep(now);
  }

  /** Lets the calls that are out come back, and starts no more. */
  async stop(): Promise<void> {
    this.#stopped = true;
    this.#callOff();
    await Promise.allSettled(this.#lanes.values());
  }

  #open(to: PersonId): void {
    const lane = this.#run(to).catch((error: unknown) => this.#fail(error));
    this.#lanes.set(
      to,
      lane.finally(() => {
        this.#lanes.delete(to);
        this.wake();
      }),
    );
  }

  async #run(to: PersonId): Promise<void> {
    while (await this.#deliver(to));
  }

  /** Sends the chat's first letter and says whether to go on with the next. From mark to record only one chat at a time,
   *  so that a crash leaves one message in doubt; a slow one is not waited for. */
  async #deliver(to: PersonId): Promise<boolean> {
    this.#line.push(to);
    const sent = await this.#turnstile.pass(async () => {
      this.#line.shift();
      const letter = await this.#claim(to);
      return letter && this.#send(letter);
    });
    if (sent === null) return false;
    if (sent.outcome.is === 'unreachable') await this.#post.lost(to);
    if (sent.outcome.is === 'sent' && sent.older !== null) this.#heed(await this.#post.chat.strip(to, sent.older));
    return true;
  }

  /** The chat's first letter, marked on disk; it may have been marked when it was queued, or when the one before it was settled. */
  async #claim(to: PersonId): Promise<Letter | null> {
    const { store, clock } = this.#post;
    const first = this.#isHeld() ? null : nextFor(store.read(), to, clock());
    return first === null || first.sendingSince !== null ? first : store.change((book) => this.#marking(book, to));
  }

  /** `older` is the card that the letter's message replaces below: it loses its buttons, or should that fail, its taps are refused by their version. */
  async #send(letter: Letter): Promise<Readonly<{ outcome: Outcome; older: number | null }>> {
    const { store, chat, clock, log } = this.#post;
    const card = letter.slot === null ? null : cardOf(store.read(), letter);
    const over = letter.place === 'over' && card !== null && !(card.picture && letter.picture === null) ? card : null;
    const outcome = over === null ? await chat.send(letter) : await chat.edit(letter, over);
    log('letter', { to: letter.to, kind: letter.kind, outcome: outcome.is });
    this.#heed(outcome);
    const call = { how: over === null ? 'send' : 'edit' } as const;
    await store.change((book) => this.#settling(settled(book, letter, call, outcome, clock()), letter.to));
    return { outcome, older: over === null ? (card?.message ?? null) : null };
  }

  /** Whoever is next in line has the next letter to go out: it is marked in the same write. */
  #settling(book: Book<Desk>, to: PersonId): Readonly<{ next: Book<Desk>; result: unknown }> {
    return this.#marking(book, this.#line[0] ?? to);
  }

  #marking(book: Book<Desk>, to: PersonId): Readonly<{ next: Book<Desk>; result: Letter | null }> {
    const now = this.#post.clock();
    const letter = this.#isHeld() ? null : nextFor(book, to, now);
    if (letter === null || letter.sendingSince !== null) return { next: book, result: letter };
    const next = marked(book, letter, now);
    return { next, result: nextFor(next, to, now) };
  }

  #isHeld(): boolean {
    return this.#stopped || this.#heldUntil > this.#post.clock();
  }

  /** The platform's "wait" is meant for the whole program. */
  #heed(outcome: Outcome): void {
    if (outcome.is === 'wait') this.#heldUntil = Math.max(this.#heldUntil, this.#post.clock() + outcome.seconds * 1000);
    if (outcome.is === 'revoked') this.#fail(new Halt('token', 'The chat platform no longer accepts BOT_TOKEN.'));
  }

  #sleep(now: Instant): void {
    this.#callOff();
    const dues = [...waitingChats(this.#post.store.read())].filter(([to]) => !this.#lanes.has(to));
    if (dues.length === 0) return;
    const next = Math.max(this.#heldUntil, Math.min(...dues.map(([, due]) => due)));
    this.#callOff = this.#post.after(Math.min(Math.max(10, next - now), LOOK_MS), () => this.wake());
  }

  #fail(error: unknown): void {
    this.#stopped = true;
    this.#callOff();
    this.#post.halt(error instanceof Error ? error : new Error('The outbox stopped.'));
  }
}
