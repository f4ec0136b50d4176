import type { Update } from 'grammy/types';
import { z } from 'zod';
import { badRequest, type Refusal } from './call.ts';
import type { Chats } from './chats.ts';
import type { Payload } from './payload.ts';
import type { Room } from './room.ts';

export type Batch = readonly Update[];
/** What really arrives of a batch: a test may repeat or shuffle it. */
export type Deliver = (batch: Batch) => Batch;
export type Poll = (payload: Payload, signal: AbortSignal) => Promise<Batch | Refusal>;

const POLL = z.object({
  offset: z.int().default(0),
  limit: z.int().default(100),
  timeout: z.int().default(0),
  allowed_updates: z.array(z.string()).optional(),
});
type Wish = z.infer<typeof POLL>;

const CONFLICT: Refusal = {
  code: 409,
  description: 'Conflict: terminated by other getUpdates request; make sure that only one bot instance is running',
};

/** `getUpdates`: answers at once when something waits, else as soon as it comes or when the timeout (seconds, at most 50) is over.
 *  Only one may wait: a later poll ends the earlier with 409, as the platform does. */
export function polling(room: Room, deliver: Deliver): Poll {
  let endWaiting: ((answer: Refusal) => void) | undefined;
  return async (payload, signal) => {
    const wish = POLL.safeParse(payload);
    if (!wish.success) return badRequest('getUpdates parameters cannot be read');
    endWaiting?.(CONFLICT);
    room.change((chats) => ({ chats: narrowed(confirmed(chats, wish.data.offset), wish.data), result: undefined }));
    const ready = waiting(room.read(), wish.data);
    if (ready.length > 0 || wish.data.timeout <= 0) return deliver(ready);
    return new Promise((resolve) => {
      endWaiting = awaitUpdates(room, wish.data, signal, (answer) => {
        endWaiting = undefined;
        resolve('code' in answer ? answer : deliver(answer));
      });
    });
  };
}

/** Calls `answer` once: with updates, with none when time is over or the client has gone, or with what the returned function is given. */
function awaitUpdates(room: Room, wish: Wish, signal: AbortSignal, answer: (answer: Batch | Refusal) => void) {
  const end = (outcome: Batch | Refusal): void => {
    clearTimeout(timer);
    signal.removeEventListener('abort', leave);
    stopListening();
    answer(outcome);
  };
  const leave = (): void => end([]);
  const timer = setTimeout(leave, Math.min(wish.timeout, 50) * 1000);
  const stopListening = room.onChange(() => {
    const ready = waiting(room.read(), wish);
    if (ready.length > 0) end(ready);
  });
  signal.addEventListener('abort', leave);
  return end;
}

const waiting = ({ updates }: Chats, { limit }: Wish): Batch => updates.slice(0, Math.min(Math.max(limit, 1), 100));

/** Forgets what an offset confirms: everything before it, or, when negative, all but the last so many. */
function confirmed(chats: Chats, offset: number): Chats {
  if (offset === 0) return chats;
  const updates =
    offset < 0 ? chats.updates.slice(offset) : chats.updates.filter(({ update_id }) => update_id >= offset);
  return updates.length === chats.updates.length ? chats : { ...chats, updates };
}

/** The kinds asked for hold until others are asked for; an empty list asks for all of them. */
const narrowed = (chats: Chats, { allowed_updates }: Wish): Chats =>
  allowed_updates === undefined || allowed_updates.join() === chats.wanted.join()
    ? chats
    : { ...chats, wanted: allowed_updates };
