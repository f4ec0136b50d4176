import { afterEach, expect, test } from 'vitest';
import { connect } from '../../../src/adapters/telegram/connect.ts';
import { telegramChat } from '../../../src/adapters/telegram/send.ts';
import type { Letter } from '../../../src/app/letter.ts';
import { standIn } from '../rehearsal/standIn.ts';
import { BUYER as SOMEONE, TOKEN as THEIR_TOKEN } from '../rehearsal/standIn.ts';
import { listen } from '../../../src/adapters/rehearsal/httpBridge.ts';
import { letter } from '../../app/toyShop.ts';
import { PIXEL } from './toyBot.ts';

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0)) await close();
});

async function desk(fault: Parameters<typeof standIn>[0] = {}, draw: () => Uint8Array = () => PIXEL) {
  const stand = standIn(fault);
  const port = await listen(stand.server.answer, 0);
  open.push(port.close);
  const bot = connect(THEIR_TOKEN, port.url);
  stand.people.start(SOMEONE);
  return { ...stand, chat: telegramChat(bot.api, draw, () => {}) };
}
const out = (text: string, more: Partial<Letter> = {}): Letter => ({
  ...letter(SOMEONE, text),
  key: 'k',
  queuedAt: 0,
  notBefore: 0,
  attempts: 1,
  sendingSince: 0,
  ...more,
});
const ROWS = [
  [
    { label: 'Yes', data: 'accept|d1|0|' },
    { label: 'No', data: 'cancel|d1|0|' },
  ],
];
const HEAD = { kind: 'head' as const, spec: { weight: '3/8' }, caption: ['3/8 oz'] };
const lastCall = ({ server }: Awaited<ReturnType<typeof desk>>) => server.calls.at(-1);

test('a letter goes out as plain words with its buttons, and no link in it is opened for a look', async () => {
  const d = await desk();
  expect(await d.chat.send(out('<b>& *hi* _', { rows: ROWS }))).toMatchObject({ is: 'sent', picture: false });
  expect(lastCall(d)?.payload).toMatchObject({ text: '<b>& *hi* _', link_preview_options: { is_disabled: true } });
  expect(lastCall(d)?.payload).not.toHaveProperty('parse_mode');
  expect(lastCall(d)?.payload).not.toHaveProperty('entities');
  expect(d.people.messagesOf(SOMEONE).at(-1)?.reply_markup?.inline_keyboard[0]).toHaveLength(2);
});

test('a letter with a picture goes out as the picture with its words under it', async () => {
  const d = await desk();
  expect(await d.chat.send(out('3/8 oz football', { picture: HEAD, rows: ROWS }))).toMatchObject({
    is: 'sent',
    picture: true,
  });
  expect(d.people.messagesOf(SOMEONE).at(-1)).toMatchObject({ caption: '3/8 oz football', photo: expect.any(Array) });
});

test('words too long to stand under a picture go out without it', async () => {
  const d = await desk();
  expect(await d.chat.send(out('x'.repeat(1025), { picture: HEAD }))).toMatchObject({ is: 'sent', picture: false });
});

test('a picture that cannot be drawn holds nothing up', async () => {
  const d = await desk({}, () => {
    throw new Error('no font');
  });
  expect(await d.chat.send(out('3/8 oz', { picture: HEAD }))).toMatchObject({ is: 'sent', picture: false });
});

test('a card is written over: words by words, words by a picture, a picture by a picture, and under a picture', async () => {
  const d = await desk();
  const words = await d.chat.send(out('one', { rows: ROWS }));
  if (words.is !== 'sent') throw new Error('not sent');
  const card = { message: words.message, picture: false, at: 0 };
  expect(await d.chat.edit(out('two'), card)).toEqual({ is: 'sent', message: card.message, picture: false });
  expect(await d.chat.edit(out('two'), card)).toEqual({ is: 'same' });
  expect(await d.chat.edit(out('three', { picture: HEAD }), card)).toEqual({
    is: 'sent',
    message: card.message,
    picture: true,
  });
  const pictured = { ...card, picture: true };
  expect(await d.chat.edit(out('four', { picture: HEAD, rows: ROWS }), pictured)).toMatchObject({ is: 'sent' });
  expect(d.people.messagesOf(SOMEONE).at(-1)).toMatchObject({
    caption: 'four',
    reply_markup: { inline_keyboard: [ROWS[0]?.map(({ label, data }) => ({ text: label, callback_data: data }))] },
  });
});

test('an older card loses its buttons and nothing else', async () => {
  const d = await desk();
  const words = await d.chat.send(out('one', { rows: ROWS }));
  if (words.is !== 'sent') throw new Error('not sent');
  await d.chat.strip(SOMEONE, words.message);
  expect(d.people.messagesOf(SOMEONE).at(-1)).toMatchObject({ text: 'one' });
  expect(d.people.messagesOf(SOMEONE).at(-1)?.reply_markup?.inline_keyboard ?? []).toEqual([]);
});

test('a message that was deleted cannot be written over', async () => {
  const d = await desk();
  expect(await d.chat.edit(out('x'), { message: 99_999, picture: false, at: 0 })).toEqual({ is: 'gone' });
});

test.each([
  ['429', { status: 429, retryAfter: 3 }, { is: 'wait', seconds: 3 }],
  ['502', { status: 502 }, { is: 'unknown' }],
  ['an answer that is no JSON', { status: 200, body: '<html>' }, { is: 'unknown' }],
  ['a line that is cut before', 'drop-before', { is: 'unknown' }],
  ['a line that is cut after', 'drop-after', { is: 'unknown' }],
  [
    '403',
    { status: 403, body: { ok: false, error_code: 403, description: 'Forbidden: bot was blocked by the user' } },
    { is: 'unreachable' },
  ],
] as const)('%s is known for what it is', async (_, fault, outcome) => {
  const d = await desk({ fault: (method) => (method === 'sendMessage' ? fault : undefined) });
  expect(await d.chat.send(out('x'))).toEqual(outcome);
});

test('when nobody listens at the address, nothing was sent', async () => {
  const bot = connect(THEIR_TOKEN, 'http://127.0.0.1:9');
  expect(
    await telegramChat(
      bot.api,
      () => PIXEL,
      () => {},
    ).send(out('x')),
  ).toEqual({ is: 'unsent' });
});
