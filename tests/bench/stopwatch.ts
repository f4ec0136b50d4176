import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';

export type Kind = 'echo' | 'durable' | 'jigwright';
export type Measured = Readonly<{ rss: number }>;
const TOKEN = '42424:AAFakeTokenThatIsLongEnoughToBeOne_00';
const PROGRAM = fileURLToPath(new URL('botProcess.ts', import.meta.url));
const ANSWERS = /^(sendMessage|sendPhoto|editMessage(Text|Caption|Media))$/;

/** A platform that hands out one update at a time and stops the time until the one who sent it is answered. */
export async function openStopwatch() {
  let waiting: ((updates: readonly object[]) => void) | null = null;
  let heard: (to: number, method: string, body: string) => void = () => {};
  let polled: () => void = () => {};
  let messages = 1;
  let updates = 1000;
  const server = createServer((request, response) => {
    const method = request.url?.split('/').at(-1) ?? '';
    const chunks: Buffer[] = [];
    request.on('data', (bytes: Buffer) => chunks.push(bytes));
    request.on('end', () => {
      const body = Buffer.concat(chunks).toString('latin1');
      const answer = (result: unknown): void => {
        response.setHeader('content-type', 'application/json');
        response.end(JSON.stringify({ ok: true, result }));
      };
      if (method === 'getMe') return answer({ id: 42424, is_bot: true, first_name: 'jig', username: 'jigbot' });
      if (method === 'getUpdates') {
        waiting = answer;
        return polled();
      }
      answer(/^(send|edit)/.test(method) ? { message_id: (messages += 1) } : true);
      if (ANSWERS.test(method)) heard(recipient(body), method, body);
    });
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const apiRoot = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;

  const polling = (): Promise<void> =>
    waiting === null ? new Promise<void>((ready) => (polled = ready)).then(polling) : Promise.resolve();

  return {
    /** Starts a bot; answers with how long it took to its first poll, in milliseconds. */
    start: async (kind: Kind, home: string, now: number) => {
      const begun = performance.now();
      const child = spawn(process.execPath, ['--import', 'tsx', PROGRAM, kind, apiRoot, TOKEN, home], {
        stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
        env: { ...process.env, NOW: String(now) },
      });
      waiting = null;
      await polling();
      return { child, startMs: performance.now() - begun };
    },
    /** One message of somebody; answers with the milliseconds until they were answered, and the answer. */
    turn: async (person: number, text: string): Promise<Readonly<{ ms: number; body: string }>> => {
      await polling();
      const give = waiting;
      waiting = null;
      const from = { id: person, is_bot: false, first_name: 'S', language_code: 'en' };
      const message = { message_id: (messages += 1), date: 1, from, chat: { id: person, type: 'private' }, text };
      const begun = performance.now();
      const answered = new Promise<Readonly<{ ms: number; body: string }>>((done) => {
        heard = (to, _method, body) => to === person && done({ ms: performance.now() - begun, body });
      });
      give?.([{ update_id: (updates += 1), message }]);
      return answered;
    },
    rss: async (child: ChildProcess): Promise<number> => {
      child.send('measure');
      const [{ rss }] = (await once(child, 'message')) as [Measured];
      return rss;
    },
    end: async (child: ChildProcess): Promise<void> => {
      child.kill('SIGKILL');
      await once(child, 'exit');
    },
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Whom a call is for, be it JSON or a form with a picture. */
const recipient = (body: string): number =>
  Number(/"chat_id":(\d+)/.exec(body)?.[1] ?? /name="chat_id"\r\n\r\n(\d+)/.exec(body)?.[1] ?? 0);

/** The value below which so much of the sorted values lie. */
export const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN;
