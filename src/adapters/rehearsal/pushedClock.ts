import { MINUTE, type Instant, type Minutes } from '../../domain/craft/time.ts';

/** The real clock and how far it was pushed; it only ever goes forward. */
export type PushedClock = Readonly<{
  now(): Instant;
  push(minutes: Minutes): void;
  pushTo(instant: Instant): void;
  /** Milliseconds that the clock is ahead of the real one: what a restart must start from. */
  ahead(): number;
  /** Calls `listener` after each push; the answer stops that. */
  onPush(listener: () => void): () => void;
}>;

/** A clock that starts `ahead` milliseconds ahead of the real one.
 *  @example pushTo(an instant already past) //=> the clock stays where it is */
export function pushedClock({ ahead = 0, real = Date.now }: Start = {}): PushedClock {
  let offset = Math.max(0, ahead);
  const listeners = new Set<() => void>();
  const forward = (milliseconds: number): void => {
    offset += Math.max(0, milliseconds);
    for (const listener of listeners) listener();
  };
  const now = (): Instant => real() + offset;
  return {
    now,
    push: (minutes) => forward(Math.round(minutes * MINUTE)),
    pushTo: (instant) => forward(instant - now()),
    ahead: () => offset,
    onPush(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

type Start = Readonly<{ ahead?: number; real?: () => Instant }>;
