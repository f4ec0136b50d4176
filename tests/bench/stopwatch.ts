import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** A bare bot, a bare bot that keeps what it hears, the real program. */
export type Kind = 'echo' | 'durable' | 'jigwright';
export type Timed = Readonly<{ ms: number; body: string }>;
export type Running = Awaited<ReturnType<Stopwatch['start']>>;
export type Stopwatch = Awaited<ReturnType<typeof openStopwatch>>;

const TOKEN = '42424:AAFakeTokenThatIsLongEnoughToBeOne_00';
const ROOT = fileURLToPath(new URL('../..', import.meta.url));
export const MAKER = 101;
const ANSWERS = /^(sendMessage|sendPhoto|editMessage(Text|Caption|Media))$/;
/** Whatever takes longer hangs. */
const PATIENCE_MS = 20_000;

/** A platform that hands out one update at a time and stops the time until the one who sent it is answered. */
export async function openStopwatch() {
  let waiting: ((updates: readonly object[]) => void) | null = null;
  let heard: (to: number, body: string) => void = () => {};
  let polled: () => void = () => {};
  let messages = 1;
  let updates = 1000;
  const server = createServer((request, response) => {
    const method = request.url?.split('/').at(-1) ?? '';
    const chunks: Buffer[] = [];
    request.on('data', (bytes: Buffer) => chunks.push(bytes));
    request.on('end', () => {
      const body = Buffer.concat(chunks).toString('utf8');
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
      if (ANSWERS.test(method)) heard(recipient(body), body);
    });
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const apiRoot = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;

  const polling = async (): Promise<void> => {
    if (waiting === null) await inTime(new Promise<void>((ready) => (polled = ready)), 'The bot does not poll.');
  };
  /** Gives one update out; resolves with the milliseconds until its sender was answered, and the answer. */
  const turn = async (person: number, what: string, update: object): Promise<Timed> => {
    await polling();
    const give = waiting;
    waiting = null;
    const begun = performance.now();
    const answered = new Promise<Timed>((done) => {
      heard = (to, body) => to === person && done({ ms: performance.now() - begun, body });
    });
    give?.([{ update_id: (updates += 1), ...update }]);
    return inTime(answered, `Buyer ${person} was not answered to “${what}”.`);
  };
  const running = (child: ChildProcess, startMs: number) => ({
    /** From the start of the process to its first poll. */
    startMs,
    says: (id: number, text: string): Promise<Timed> =>
      turn(id, text, { message: { message_id: (messages += 1), date: 1, from: person(id), chat: chat(id), text } }),
    taps: (id: number, data: string): Promise<Timed> => {
      const message = { message_id: messages, date: 1, chat: chat(id) };
      return turn(id, data, { callback_query: { id: '1', from: person(id), chat_instance: '1', data, message } });
    },
    /** Resident memory. */
    megabytes: (): number =>
      Number(execFileSync('ps', ['-o', 'rss=', '-p', String(child.pid)], { encoding: 'utf8' })) / 1024,
    /** Processor time that it took so far, in milliseconds: much the same whatever else the machine does. */
    cpuMs: (): number => cpuMsOf(child.pid ?? 0),
    end: async (): Promise<void> => {
      child.kill('SIGKILL');
      await once(child, 'exit');
    },
  });

  return {
    start: async (kind: Kind, home: string) => {
      waiting = null;
      const begun = performance.now();
      const child =
        kind === 'jigwright'
          ? spawn(process.execPath, ['--max-semi-space-size=4', '--heap-growing-percent=15', 'src/launch.js'], {
              cwd: ROOT,
              stdio: 'ignore',
              env: settings(apiRoot, home),
            })
          : spawn(process.execPath, ['tests/bench/echoBot.js', apiRoot, TOKEN, ...(kind === 'durable' ? [home] : [])], {
              cwd: ROOT,
              stdio: ['ignore', 'inherit', 'inherit'],
            });
      await polling();
      return running(child, performance.now() - begun);
    },
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

/** From proc(5): the fields after the name in brackets, user and system time in hundredths of a second; 0 on other systems. */
function cpuMsOf(pid: number): number {
  if (process.platform !== 'linux') return 0;
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ') ?? [];
  return 10 * (Number(fields[11]) + Number(fields[12]));
}

const settings = (apiRoot: string, home: string) => ({
  ...process.env,
  BOT_TOKEN: TOKEN,
  BOT_API_ROOT: apiRoot,
  MAKER_IDS: String(MAKER),
  DATA_DIR: join(home, 'book'),
  KEY_FILE: join(home, 'key'),
});

const person = (id: number) => ({ id, is_bot: false, first_name: 'S', language_code: 'en' });
const chat = (id: number) => ({ id, type: 'private' });

async function inTime<T>(what: Promise<T>, otherwise: string): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, fail) => {
    timer = setTimeout(() => fail(new Error(`${otherwise} Waited ${PATIENCE_MS / 1000} s.`)), PATIENCE_MS);
  });
  return Promise.race([what, late]).finally(() => clearTimeout(timer));
}

/** Whom a call is for, be it JSON or a form with a picture. */
const recipient = (body: string): number =>
  Number(/"chat_id":(\d+)/.exec(body)?.[1] ?? /name="chat_id"\r\n\r\n(\d+)/.exec(body)?.[1] ?? 0);

/** The value below which so much of the sorted values lie. */
export const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? NaN;
