import { Bot } from 'grammy';
import { afterEach, describe, expect, test } from 'vitest';
import { pushedClock } from '../../../src/adapters/rehearsal/pushedClock.ts';
import {
  openRehearsal,
  parseSaved,
  type Rehearsal,
  type RehearsalParts,
} from '../../../src/adapters/rehearsal/rehearsal.ts';
import type { View } from '../../../src/adapters/rehearsal/view.ts';
import { BUYER, MAKER, NOON, PIXEL, TOKEN } from './standIn.ts';

const HOUR = 3_600_000;
let open: Rehearsal[] = [];
afterEach(async () => {
  for (const rehearsal of open.splice(0)) await rehearsal.close();
  open = [];
});

async function opened(more: Partial<RehearsalParts> = {}) {
  const clock = pushedClock({ real: () => NOON });
  const rehearsal = await openRehearsal({
    token: TOKEN,
    people: [
      { id: BUYER, firstName: 'Wren', languageCode: 'en' },
      { id: MAKER, firstName: 'Kettle Bay Jigs', languageCode: 'en' },
    ],
    maker: MAKER,
    zone: 'America/Chicago',
    clock,
    nextDue: () => NOON + HOUR,
    onPush: async () => undefined,
    tomorrowMorning: (now) => now + 19 * HOUR,
    port: 0,
    ...more,
  });
  open.push(rehearsal);
  const post = async (path: string, body: object, headers: Record<string, string> = {}) => {
    const init = {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: JSON.stringify(body),
    };
    const response = await fetch(rehearsal.url + path, init);
    return {
      status: response.status,
      ...((await response.json()) as { ok: boolean; problem?: string; result?: unknown }),
    };
  };
  const view = async () => (await (await fetch(`${rehearsal.url}/chat/view`)).json()) as View;
  return { rehearsal, clock: more.clock ?? clock, post, view };
}

describe('the page and what it does', () => {
  test.each(['/', '/page.css', '/page.js', '/chatPane.js', '/bubbles.js', '/icon.svg'])(
    '%s is served and asks for nothing outside',
    async (path) => {
      const { rehearsal } = await opened();
      const response = await fetch(rehearsal.url + path);
      expect([response.status, response.headers.get('set-cookie')]).toEqual([200, null]);
      expect((await response.text()).replace('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:\/\//);
    },
  );

  test('what people say and tap is seen in the view, with times of the shop', async () => {
    const { rehearsal, post, view } = await opened();
    await post('/chat/say', { personId: BUYER, text: '/start' });
    const bot = new Bot(TOKEN, { client: { apiRoot: rehearsal.apiRoot } });
    const reply_markup = {
      inline_keyboard: [
        [
          { text: 'Ball', callback_data: 'ball' },
          { text: 'Rules', url: 'https://example.org' },
        ],
      ],
    };
    const { message_id } = await bot.api.sendMessage(BUYER, 'Which?', { reply_markup });
    expect(await post('/chat/tap', { personId: BUYER, messageId: message_id, data: 'ball' })).toMatchObject({
      ok: true,
    });
    expect(await post('/chat/tap', { personId: BUYER, messageId: message_id, data: 'forged' })).toMatchObject({
      status: 400,
      problem: 'That button is gone; use the newest card.',
    });
    const { clock, chats } = await view();
    expect(clock).toEqual({ day: '2026-03-02', clock: '12:00', zone: 'America/Chicago', nextReminder: '13:00' });
    expect(chats[0]).toMatchObject({
      name: 'Wren',
      role: 'buyer',
      bubbles: [
        { from: 'person', clock: '12:00', runs: [{ text: '/start', looks: ['bot_command'] }] },
        {
          from: 'bot',
          buttons: [
            [
              { label: 'Ball', kind: 'tap', value: 'ball' },
              { label: 'Rules', kind: 'link' },
            ],
          ],
        },
      ],
    });
    expect(chats[1]).toMatchObject({ role: 'maker', bubbles: [] });
    expect(rehearsal.room.read().updates).toHaveLength(2);
  });

  test('pictures are shown in place; any other file is only handed over', async () => {
    const { rehearsal, view } = await opened();
    rehearsal.chats.sendPhoto(BUYER, { bytes: PIXEL, name: 'a.png', mediaType: 'text/html' });
    rehearsal.chats.sendDocument(BUYER, { bytes: Buffer.from('<script>'), name: 'a.html', mediaType: 'text/html' });
    const [photo, document] = (await view()).chats[0]?.bubbles ?? [];
    const picture = await fetch(rehearsal.url + photo?.photo?.address);
    const file = await fetch(rehearsal.url + document?.document?.address);
    expect(picture.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await picture.arrayBuffer())).toEqual(PIXEL);
    expect([file.headers.get('content-type'), file.headers.get('content-disposition')]).toEqual([
      'application/octet-stream',
      'attachment',
    ]);
  });

  test('the clock is pushed to the next reminder, ten minutes and to tomorrow morning, and the work due is done before the answer', async () => {
    const done: number[] = [];
    const { clock, post } = await opened({ onPush: async () => void done.push(clock.now() - NOON) });
    for (const to of ['next-reminder', 'ten-minutes', 'tomorrow-morning'])
      expect(await post('/chat/clock', { to })).toMatchObject({ ok: true });
    expect(done).toEqual([HOUR, HOUR + 600_000, 20 * HOUR + 600_000]);
    expect(await post('/chat/clock', { to: 'yesterday' })).toMatchObject({ status: 400 });
  });

  test('what cannot be done is said in a sentence', async () => {
    const { post } = await opened();
    expect(await post('/chat/say', { personId: 3, text: 'a' })).toMatchObject({
      problem: 'There is no person 3 or no chat 3 in this rehearsal.',
    });
    expect(await post('/chat/say', { personId: BUYER, text: 'a'.repeat(4097) })).toMatchObject({
      problem: 'A message holds at most 4096 characters.',
    });
    expect(await post('/chat/edit', { messageId: 1, text: 'a' })).toMatchObject({ status: 400 });
    expect(await post('/chat/fly', {})).toMatchObject({ status: 404, problem: 'There is nothing at /chat/fly.' });
  });

  test('a page from elsewhere cannot act here', async () => {
    const { post, rehearsal } = await opened();
    expect(await post('/chat/say', { personId: BUYER, text: 'a' }, { origin: 'https://example.org' })).toMatchObject({
      status: 403,
    });
    expect(await post('/chat/say', { personId: BUYER, text: 'a' }, { origin: rehearsal.url })).toMatchObject({
      ok: true,
    });
  });

  test('a second buyer can come, and has another id than everyone else', async () => {
    const { post, view } = await opened();
    expect(await post('/chat/people', { firstName: 'Second' })).toMatchObject({ result: MAKER + 1 });
    expect((await view()).chats.map(({ name, role }) => [name, role])).toContainEqual(['Second', 'buyer']);
  });

  test('a quiet page is told at once what is said', async () => {
    const { rehearsal } = await opened();
    const gone = new AbortController();
    const events = await fetch(`${rehearsal.url}/chat/events`, { signal: gone.signal });
    const reader = events.body?.getReader();
    const next = async () => Buffer.from((await reader?.read())?.value ?? []).toString();
    expect(await next()).toContain('"bubbles":[]');
    rehearsal.chats.say(BUYER, 'hello there');
    expect(await next()).toContain('hello there');
    gone.abort();
  });
});

describe('a restart', () => {
  test('takes up the chats, the waiting updates and the pushed clock from plain JSON', async () => {
    const { rehearsal, clock } = await opened();
    rehearsal.chats.say(BUYER, 'before');
    clock.push(30);
    const saved = parseSaved(JSON.parse(JSON.stringify(rehearsal.snapshot())));
    expect(saved).toEqual(rehearsal.snapshot());
    if (!saved) throw new Error('The snapshot cannot be read back.');
    const again = await opened({ saved, clock: pushedClock({ real: () => NOON, ahead: saved.ahead }) });
    again.rehearsal.chats.say(BUYER, 'after');
    expect(again.rehearsal.chats.messagesOf(BUYER).map(({ text }) => text)).toEqual(['before', 'after']);
    expect(again.rehearsal.room.read().updates.map(({ update_id }) => update_id - NOON / 1000)).toEqual([0, 1]);
    expect(again.clock.now()).toBe(clock.now());
  });

  test('a person who is new since then is there too', async () => {
    const { rehearsal } = await opened({ people: [{ id: BUYER, firstName: 'Wren', languageCode: 'en' }] });
    const again = await opened({ saved: rehearsal.snapshot() });
    expect((await again.view()).chats.map(({ id }) => id)).toEqual([BUYER, MAKER]);
  });

  test('what is no snapshot is not taken for one', () => {
    expect([parseSaved(null), parseSaved({}), parseSaved({ version: 2, ahead: 0, chats: {} })]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('a port that is taken is an error, not a silent other port', async () => {
    const { rehearsal } = await opened();
    await expect(opened({ port: Number(new URL(rehearsal.url).port) })).rejects.toThrow('EADDRINUSE');
  });
});
