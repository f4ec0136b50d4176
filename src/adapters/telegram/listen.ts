import { type Bot, type Context, GrammyError } from 'grammy';
import type { Instant } from '../../domain/craft/time.ts';
import type { PersonId } from '../../domain/desk/person.ts';
import { Halt } from '../../app/exit.ts';
import type { Reply, Update } from '../../app/handle.ts';
import { type Log, codeOf } from '../../app/log.ts';
import { POLL_SECONDS } from './connect.ts';
import { type Decoded, decode } from './decode.ts';
import { type Admission, FloodGate } from './flood.ts';

export type Ears = Readonly<{
  bot: Bot;
  makers: readonly PersonId[];
  clock: () => Instant;
  /** Whether this person was ever here before. */
  isKnown: (id: PersonId) => boolean;
  /** Decides and records; see `handle`. */
  take: (update: Update) => Promise<Reply>;
  /** Called after each update: there may be letters to send. */
  wake: () => void;
  /** What is said at once, outside the book, in the person's language. */
  words: Readonly<{ slowDown: (language: string | null) => string; sorry: (language: string | null) => string }>;
  log: Log;
  /** Waits in real time. */
  pause: (ms: number) => Promise<void>;
}>;

/** A rival may be an older instance that is just closing; it is given this long. */
const RIVAL_TRIES = 6;
const RIVAL_PAUSE_MS = 5_000;
/** A platform that no longer answers is not waited for: what it was not told is known when it comes again. */
const FAREWELL_MS = 3_000;
const BATCH = 100;
const ANSWER_MOST = 200;
const UPDATES = ['message', 'edited_message', 'callback_query', 'pre_checkout_query', 'my_chat_member'] as const;

/** Listens to the platform by long polling. An update is confirmed only after what it caused is on disk. */
export class Listener {
  readonly #ears: Ears;
  readonly #gate = new FloodGate();
  readonly #asides = new Set<Promise<unknown>>();
  #lastPoll: Instant | null = null;
  #busy = false;
  #stopping = false;
  #halt: (why: Error) => void = () => {};

  constructor(ears: Ears) {
    this.#ears = ears;
    const { bot, log, clock } = ears;
    bot.use((ctx) => this.#hear(ctx));
    bot.catch(({ error }) => log('update-failed', { code: codeOf(error) }));
    bot.api.config.use(async (call, method, payload, signal) => {
      const answer = await call(method, payload, signal);
      if (method === 'getUpdates' && answer.ok) this.#lastPoll = clock();
      return answer;
    });
  }

  /** When the platform was last asked with success. */
  get lastPoll(): Instant | null {
    return this.#lastPoll;
  }

  /** Polls until it is stopped; `ready` is called at the first poll.
   *  @throws Halt when the token is refused, another program polls with it, or an update could not be recorded. */
  async start(ready: () => void = () => {}): Promise<void> {
    const halted = new Promise<never>((_, reject) => (this.#halt = reject));
    await Promise.race([halted, this.#poll(ready)]);
    await Promise.race([Promise.allSettled(this.#asides), this.#ears.pause(FAREWELL_MS)]);
  }

  /** Confirms what was handled, takes nothing new. Await `start` as well. */
  stop(): void {
    this.#stopping = true;
    if (!this.#busy) this.#hangUp();
  }

  async #poll(ready: () => void): Promise<void> {
    for (let tries = 1; !this.#stopping; tries += 1)
      try {
        return await this.#ears.bot.start({
          limit: BATCH,
          timeout: POLL_SECONDS,
          allowed_updates: UPDATES,
          onStart: ready,
        });
      } catch (error) {
        if (this.#stopping) return;
        const halt = haltFor(error);
        if (halt.why !== 'rival' || tries >= RIVAL_TRIES) throw halt;
        this.#ears.log('rival', { tries });
        await this.#ears.pause(RIVAL_PAUSE_MS);
      }
  }

  /** Hanging up confirms the update that is being handled, done or not; so it waits until none is. */
  #hangUp(): void {
    this.#aside(this.#ears.bot.stop());
  }

  async #hear({ update }: Context): Promise<void> {
    // What comes after the stop is not confirmed, and comes again at the next start.
    if (this.#stopping) return;
    const heard = decode(update);
    if (heard === null) return;
    this.#busy = true;
    try {
      await this.#answer(heard);
    } finally {
      this.#busy = false;
      if (this.#stopping) this.#hangUp();
    }
  }

  async #answer(heard: Decoded): Promise<void> {
    const { command } = heard;
    if (command === null) return this.#toast(heard, null);
    // Money that has come is never turned away.
    const admission = command.type === 'paid' ? 'in' : this.#admit(command.by.id);
    if (admission !== 'in') return this.#turnAway(heard, admission);
    const reply = await this.#taken({ id: heard.id, command });
    this.#ears.wake();
    if (reply.fault !== null) return this.#sorry(heard, reply.fault);
    if (heard.checkout !== undefined) return this.#checkout(heard, reply);
    this.#toast(heard, reply.toast);
  }

  /** If the update cannot be recorded the program ends without confirming it, and it comes again. */
  #taken(update: Update): Promise<Reply> {
    return this.#ears.take(update).catch((error: unknown) => {
      this.#halt(error instanceof Error ? error : new Error('The update could not be recorded.'));
      return new Promise<never>(() => {});
    });
  }

  #admit(id: PersonId): Admission {
    const { makers, clock, isKnown } = this.#ears;
    return makers.includes(id) ? 'in' : this.#gate.admit(id, clock(), isKnown(id) ? 'known' : 'new');
  }

  #turnAway(heard: Decoded, admission: Admission): void {
    this.#ears.log('flood', { person: heard.command?.by.id ?? null, update: heard.id });
    const words = this.#ears.words.slowDown(heard.command?.by.language ?? null);
    this.#speak(heard, admission === 'notice' ? words : null);
  }

  #sorry(heard: Decoded, fault: unknown): void {
    this.#ears.log('fault', { update: heard.id, code: codeOf(fault) });
    this.#speak(heard, this.#ears.words.sorry(heard.command?.by.language ?? null));
  }

  /** Over the chat for a press, in the chat otherwise; not kept, not tried again. */
  #speak(heard: Decoded, words: string | null): void {
    if (heard.checkout !== undefined) this.#refuse(heard.checkout, heard.command?.by.language ?? null);
    else if (heard.query !== null) this.#toast(heard, words);
    else if (words !== null && heard.command !== null)
      this.#aside(this.#ears.bot.api.sendMessage(heard.command.by.id, words));
  }

  /** Every press is answered, or its button would seem to hang; nobody waits for it. */
  #toast({ query }: Decoded, words: string | null): void {
    if (query === null) return;
    const text = words === null ? {} : { text: Array.from(words).slice(0, ANSWER_MOST).join('') };
    this.#aside(this.#ears.bot.api.answerCallbackQuery(query, text));
  }

  /** A payment goes through where nothing stands against it. One that was asked about before a crash has to be begun again. */
  #checkout({ checkout = '', command }: Decoded, { toast, repeated }: Reply): void {
    const { bot } = this.#ears;
    if (toast === null && !repeated) this.#aside(bot.api.answerPreCheckoutQuery(checkout, true));
    else this.#refuse(checkout, command?.by.language ?? null, toast);
  }

  #refuse(checkout: string, language: string | null, words: string | null = null): void {
    const error_message = words ?? this.#ears.words.sorry(language);
    this.#aside(this.#ears.bot.api.answerPreCheckoutQuery(checkout, false, { error_message }));
  }

  #aside(call: Promise<unknown>): void {
    const quiet = call.catch((error: unknown) => this.#ears.log('aside-failed', { code: numberOf(error) }));
    this.#asides.add(quiet);
    void quiet.finally(() => this.#asides.delete(quiet));
  }
}

function haltFor(error: unknown): Halt {
  const code = error instanceof GrammyError ? error.error_code : 0;
  if (code === 409)
    return new Halt(
      'rival',
      'Another program is polling with the same BOT_TOKEN. Stop it, or give this one a token of its own.',
    );
  if (code === 401 || code === 404)
    return new Halt('token', 'The chat platform does not accept BOT_TOKEN. Ask it for the current token.');
  return new Halt('failed', `The chat platform could not be listened to (${code === 0 ? codeOf(error) : code}).`);
}

const numberOf = (error: unknown): number | string => (error instanceof GrammyError ? error.error_code : codeOf(error));
