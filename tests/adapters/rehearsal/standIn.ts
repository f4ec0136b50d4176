import { Bot } from 'grammy';
import { botOf, openChats } from '../../../src/adapters/rehearsal/chats.ts';
import { chatServer, type ChatServerParts } from '../../../src/adapters/rehearsal/chatServer.ts';
import { listen } from '../../../src/adapters/rehearsal/httpBridge.ts';
import { humanSide } from '../../../src/adapters/rehearsal/humanSide.ts';
import { openRoom } from '../../../src/adapters/rehearsal/room.ts';

export const TOKEN = '42:rehearsal-token';
export const BUYER = 501;
export const MAKER = 502;
export const NOON = Date.UTC(2026, 2, 2, 18);
const PEOPLE = [
  { id: BUYER, firstName: 'Buyer', languageCode: 'en' },
  { id: MAKER, firstName: 'Maker', languageCode: 'en' },
];

type Wishes = Partial<Pick<ChatServerParts, 'fault' | 'deliver' | 'now'>>;

/** The stand-in as functions, without a port. */
export function standIn(wishes: Wishes = {}) {
  const room = openRoom(openChats(botOf(TOKEN), PEOPLE));
  const now = wishes.now ?? (() => NOON);
  const server = chatServer({ token: TOKEN, room, now, ...wishes });
  const people = humanSide(room, now);
  const call = async (method: string, payload: object = {}, signal = AbortSignal.timeout(5000)) => {
    const headers = { 'content-type': 'application/json' };
    const init = { method: 'POST', headers, body: JSON.stringify(payload), signal };
    return server.answer(new Request(`http://127.0.0.1/bot${TOKEN}/${method}`, init));
  };
  const answers: Readonly<{ method: string; result: unknown }>[] = [];
  const ask = async (method: string, payload: object = {}): Promise<Answered> => {
    const answered = (await (await call(method, payload)).json()) as Answered;
    if (answered.ok) answers.push({ method, result: answered.result });
    return answered;
  };
  return { room, server, people, call, ask, answers };
}

export type Answered = Readonly<{
  ok: boolean;
  error_code?: number;
  description?: string;
  result?: unknown;
  parameters?: unknown;
}>;

/** The stand-in on a port of its own, with a real grammY bot pointed at it. */
export async function withBot(wishes: Wishes = {}) {
  const parts = standIn(wishes);
  const port = await listen(parts.server.answer, 0);
  const bot = new Bot(TOKEN, { client: { apiRoot: port.url } });
  bot.catch(() => undefined);
  return { ...parts, port, bot };
}

export const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

/** Waits until `look` sees something. */
export async function until<T>(look: () => T | undefined | false): Promise<T> {
  for (let tries = 0; tries < 400; tries++) {
    const seen = look();
    if (seen !== undefined && seen !== false) return seen;
    await new Promise((soon) => setTimeout(soon, 5));
  }
  throw new Error('It did not happen within two seconds.');
}
