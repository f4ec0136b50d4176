import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildSync } from 'esbuild';
import { openLowdb } from '../../src/adapters/lowdb/open.ts';
import { chatServer } from '../../src/adapters/rehearsal/chatServer.ts';
import { botOf, openChats } from '../../src/adapters/rehearsal/chats.ts';
import { listen } from '../../src/adapters/rehearsal/httpBridge.ts';
import { humanSide } from '../../src/adapters/rehearsal/humanSide.ts';
import { openRoom } from '../../src/adapters/rehearsal/room.ts';
import { emptyBook } from '../../src/app/book.ts';
import { BOOK_VERSIONS } from '../../src/bookVersions.ts';
import { emptyDesk } from '../../src/domain/desk/state.ts';
import type { Ask, Death, Life, Sight } from './shopProcess.ts';

/** How a life of the program ends: at its n-th call to the platform (which takes effect or not), at a disk change, or after a while. */
export type End =
  | Readonly<{ at: 'call'; nth: number; effect: 'none' | 'done' }>
  | Readonly<{ at: 'disk'; dies: Death }>
  | Readonly<{ at: 'time'; ms: number }>;

export type Call = Readonly<{ method: string; to: number; text: string }>;

export const TOKEN = '42:AAFakeTokenThatIsLongEnoughToBeOne_00';
export const MAKER = 2001;

/** A shop, a platform that outlives every crash, and the real program in one life after another. */
export async function openLives(parts: Readonly<{ shop: unknown; begins: number; buyers: readonly number[] }>) {
  const home = mkdtempSync(join(tmpdir(), 'jig-kill-'));
  const program = madeProgram();
  const shopFile = join(home, 'shop.json');
  writeFileSync(shopFile, JSON.stringify(parts.shop));
  let now = parts.begins;
  const clock = (): number => now;
  const people = [...parts.buyers, MAKER].map((id) => ({ id, firstName: `P${id}`, languageCode: 'en' }));
  const room = openRoom(openChats(botOf(TOKEN), people, 900));
  let onCall: (call: Call) => 'drop-before' | undefined = () => undefined;
  const server = chatServer({
    token: TOKEN,
    room,
    now: clock,
    fault: (method, payload) => onCall(callOf(method, payload)),
  });
  const port = await listen(server.answer, 0);
  const human = humanSide(room, clock);

  let child: ChildProcess | null = null;
  let logs = '';
  let kills = 0;
  let asked = 0;
  const answers = new Map<number, (sight: Sight) => void>();

  const begin = async (dies: Death | null): Promise<void> => {
    const life: Life = { apiRoot: port.url, token: TOKEN, home, shopFile, maker: MAKER, now, dies };
    const one = spawn(process.execPath, [program, JSON.stringify(life)], {
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    one.stderr?.on('data', (bytes: Buffer) => (logs += String(bytes)));
    one.on('message', (sight: Sight) => answers.get(sight.id)?.(sight));
    one.once('exit', (code, signal) => {
      if (child === one) child = null;
      if (signal === 'SIGKILL') kills += 1;
      else if (code !== 0) logs += `exit ${code}\n`;
    });
    child = one;
    await Promise.race([once(one, 'exit'), new Promise<void>((ready) => answers.set(0, () => ready()))]);
  };

  /** Asks the program; null if it died before it answered. */
  const ask = async (what: { ask: Ask['ask']; now?: number; dies?: Death }): Promise<Sight | null> => {
    const one = child;
    if (one === null) return null;
    const id = (asked += 1);
    return new Promise((heard) => {
      const done = (sight: Sight | null): void => {
        answers.delete(id);
        one.off('exit', died);
        heard(sight);
      };
      const died = (): void => done(null);
      answers.set(id, done);
      one.once('exit', died);
      if (one.connected) one.send({ ...what, id }, () => {});
    });
  };

  /** Brings on the end, now if there is a life, else in the next one. */
  const doom = async (end: End): Promise<void> => {
    let calls = 0;
    if (end.at === 'time') setTimeout(() => child?.kill('SIGKILL'), end.ms);
    if (end.at === 'disk' && child !== null) await ask({ ask: 'die', dies: end.dies });
    if (end.at === 'call')
      onCall = () => {
        if ((calls += 1) < end.nth) return undefined;
        onCall = () => undefined;
        child?.kill('SIGKILL');
        return end.effect === 'none' ? 'drop-before' : undefined;
      };
  };

  /** Waits until everything said was answered and everything answered was delivered, through as many lives as `ends` takes. */
  const settled = async (ends: End[]): Promise<Sight> => {
    for (let tries = 0; tries < 20_000; tries += 1) {
      if (child === null) {
        const [next] = ends.splice(0, 1);
        const begun = begin(next?.at === 'disk' ? next.dies : null);
        if (next && next.at !== 'disk') await doom(next);
        await begun;
      }
      const sight = room.read().updates.length === 0 ? await ask({ ask: 'look' }) : null;
      if (sight?.waiting === 0 && room.read().updates.length === 0) return sight;
      await pause(3);
    }
    throw new Error(`The program did not come to rest.\n${logs.slice(-2000)}`);
  };

  return {
    human,
    clock,
    settled,
    doom,
    kills: () => kills,
    logs: () => logs,
    calls: () => server.calls.map(({ method, payload }) => callOf(method, payload)),
    messagesOf: human.messagesOf,
    push: async (to: number): Promise<void> => {
      now = Math.max(now, to);
      await ask({ ask: 'push', now });
    },
    stop: async (): Promise<number | null> => {
      const one = child;
      if (one === null) return null;
      const gone = once(one, 'exit');
      void ask({ ask: 'stop' });
      await gone;
      return one.exitCode;
    },
    book: () =>
      openLowdb({
        folder: join(home, 'book'),
        key: { file: join(home, 'key') },
        versions: BOOK_VERSIONS,
        empty: emptyBook(emptyDesk),
        clock,
        say: () => {},
      }),
    close: async () => {
      child?.kill('SIGKILL');
      await port.close();
      rmSync(home, { recursive: true, force: true });
    },
  };
}
export type Lives = Awaited<ReturnType<typeof openLives>>;

/** The program as one file, as the launcher makes it, for it is started hundreds of times. */
function madeProgram(): string {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const outfile = join(root, '.cache', 'shopProcess.mjs');
  buildSync({
    entryPoints: [fileURLToPath(new URL('shopProcess.ts', import.meta.url))],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    define: {
      'import.meta.dirname': JSON.stringify(join(root, 'src')),
      'import.meta.url': JSON.stringify(pathToFileURL(join(root, 'src', 'main.ts')).href),
    },
  });
  return outfile;
}

const callOf = (method: string, payload: Readonly<Record<string, unknown>>): Call => ({
  method,
  to: Number(payload['chat_id'] ?? 0),
  text: String(payload['text'] ?? payload['caption'] ?? ''),
});

/** Numbers from 0 to below 1 that are the same for the same seed. */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

export function endOf(roll: () => number): End {
  const kind = roll();
  if (kind < 0.4) return { at: 'call', nth: 1 + Math.floor(roll() * 4), effect: roll() < 0.5 ? 'none' : 'done' };
  if (kind < 0.85)
    return { at: 'disk', dies: { nth: 1 + Math.floor(roll() * 16), when: roll() < 0.5 ? 'before' : 'after' } };
  return { at: 'time', ms: Math.floor(roll() * 60) };
}
