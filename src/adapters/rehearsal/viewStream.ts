import type { Room } from './room.ts';
import type { View } from './view.ts';

/** So often a quiet page is told the time, in milliseconds. */
const HEARTBEAT = 5_000;

/** Server-sent events (WHATWG HTML, "text/event-stream"): the view now, after every change, and now and then for the clock. */
export function viewStream(room: Room, view: () => View, signal: AbortSignal): Response {
  let stop = (): void => undefined;
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const send = (): void => controller.enqueue(Buffer.from(`data: ${JSON.stringify(view())}\n\n`));
      stop = follow(room, send, signal, () => controller.close());
      send();
    },
    cancel: () => stop(),
  });
  return new Response(body, { headers: { 'content-type': 'text/event-stream', 'cache-control': 'no-store' } });
}

/** Calls `send` once for all changes of one turn of the loop, until the page has gone. */
function follow(room: Room, send: () => void, signal: AbortSignal, gone: () => void): () => void {
  let pending: NodeJS.Immediate | undefined;
  const soon = (): void => {
    pending ??= setImmediate(() => {
      pending = undefined;
      send();
    });
  };
  const stopListening = room.onChange(soon);
  const heartbeat = setInterval(soon, HEARTBEAT).unref();
  const stop = (): void => {
    clearInterval(heartbeat);
    clearImmediate(pending);
    stopListening();
    signal.removeEventListener('abort', leave);
  };
  const leave = (): void => {
    stop();
    gone();
  };
  signal.addEventListener('abort', leave);
  return stop;
}
