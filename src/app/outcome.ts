import { HOUR, MINUTE, type Instant } from '../domain/craft/time.ts';
import type { Letter, LetterKind } from './letter.ts';

/** What became of one call to the chat. */
export type Outcome =
  | Readonly<{ is: 'sent'; message: number; picture: boolean }>
  /** Nothing to change: the message already reads like that, or it no longer matters. */
  | Readonly<{ is: 'same' }>
  /** The message to be written over is not there any more. */
  | Readonly<{ is: 'gone' }>
  /** Surely not sent: the platform asks to wait, everybody. */
  | Readonly<{ is: 'wait'; seconds: number }>
  /** Surely not sent: the platform was not reached. */
  | Readonly<{ is: 'unsent' }>
  /** The platform will never take this letter as it is. */
  | Readonly<{ is: 'refused'; code: number }>
  /** This person cannot be written to. */
  | Readonly<{ is: 'unreachable' }>
  /** The platform does not know the program any more. */
  | Readonly<{ is: 'revoked' }>
  /** Sent or not, nobody knows: an answer of 5xx, a time-out, a connection lost after the call went out. */
  | Readonly<{ is: 'unknown' }>;

/** What is done with the letter. */
export type Verdict =
  | Readonly<{ do: 'done' }>
  | Readonly<{ do: 'again'; notBefore: Instant; attempts: number }>
  | Readonly<{ do: 'anew' }>
  | Readonly<{ do: 'give-up' }>
  | Readonly<{ do: 'plain' }>
  | Readonly<{ do: 'give-up-chat' }>
  | Readonly<{ do: 'stop' }>;

/** How often a letter of a kind may go out again when nobody knows whether it arrived, and how long it is worth sending.
 *  Heard twice, a reminder does no harm; never heard, it burns a batch: so it has its one more try like the rest. */
const PATIENCE: Readonly<Record<LetterKind, Readonly<{ resends: number; hours: number }>>> = {
  answer: { resends: 1, hours: 24 },
  confirmation: { resends: 1, hours: 72 },
  reminder: { resends: 1, hours: 12 },
  digest: { resends: 1, hours: 20 },
  news: { resends: 1, hours: 72 },
};

/** A call that only sets what a message reads may be repeated; even so, not for ever. */
const EDITS_MOST = 5;

/** Crashes that one letter may see while it is in doubt before it is put aside. */
export const CRASHES_MOST = 5;

/** The letter's fate after `outcome`; `edit` says that the call only wrote over a message that was there. */
export function verdict(letter: Letter, call: 'send' | 'edit', outcome: Outcome, now: Instant): Verdict {
  switch (outcome.is) {
    case 'sent':
    case 'same':
      return { do: 'done' };
    case 'gone':
      return { do: 'anew' };
    case 'wait':
      return { do: 'again', notBefore: now + outcome.seconds * 1000, attempts: letter.attempts - 1 };
    case 'unsent':
      return isStale(letter, now) ? { do: 'give-up' } : pause(letter, letter.attempts - 1, now);
    case 'unknown':
      return letter.attempts > most(letter, call) ? { do: 'give-up' } : pause(letter, letter.attempts, now);
    case 'refused':
      return isPlain(letter) ? { do: 'give-up' } : { do: 'plain' };
    case 'unreachable':
      return { do: 'give-up-chat' };
    case 'revoked':
      return { do: 'stop' };
  }
}

const most = (letter: Letter, call: 'send' | 'edit'): number =>
  call === 'edit' ? EDITS_MOST : PATIENCE[letter.kind].resends;

/** The longer it has waited, the longer it waits: a second at first, five minutes at most. */
const pause = (letter: Letter, attempts: number, now: Instant): Verdict => ({
  do: 'again',
  notBefore: now + Math.min(Math.max(1000, (now - letter.queuedAt) / 2), 5 * MINUTE),
  attempts,
});

const isStale = (letter: Letter, now: Instant): boolean => now - letter.queuedAt > PATIENCE[letter.kind].hours * HOUR;

const isPlain = (letter: Letter): boolean => letter.picture === null && letter.rows.length === 0;
