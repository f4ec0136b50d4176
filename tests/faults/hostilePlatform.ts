import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export type Call = Readonly<{ method: string; body: string }>;

/** The platform's poll and nothing else: hands out whatever it is given, takes every call, keeps what is asked of it. */
export async function hostilePlatform(next: () => readonly unknown[] | null, keep: (call: Call) => void) {
  let message = 1;
  const server = createServer((request, response) => {
    const method = request.url?.split('/').at(-1) ?? '';
    let body = '';
    request.on('data', (bytes) => (body += String(bytes)));
    request.on('end', () => {
      keep({ method, body });
      const answer = (result: unknown): void => {
        response.setHeader('content-type', 'application/json');
        response.end(JSON.stringify({ ok: true, result }));
      };
      if (method === 'getMe') return answer({ id: 42, is_bot: true, first_name: 'jig', username: 'jigbot' });
      if (method !== 'getUpdates') return answer(/^(send|edit)/.test(method) ? { message_id: (message += 1) } : true);
      const updates = next();
      if (updates !== null) return answer(updates);
      // Nothing left: the poll stays open, as it does on a quiet evening.
      setTimeout(() => answer([]), 200);
    });
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const close = (): Promise<void> =>
    new Promise((closed) => {
      server.close(() => closed());
      server.closeAllConnections();
    });
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, close };
}
