import { describe, expect, test } from 'vitest';
import { decode } from '../../../src/adapters/telegram/decode.ts';
import { cleanText } from '../../../src/adapters/telegram/text.ts';
import { writeTap } from '../../../src/wording/buttons.ts';

const ANN = { id: 7, is_bot: false, first_name: 'Ann', last_name: 'Möller', language_code: 'en' };
const ALONE = { id: 7, type: 'private', first_name: 'Ann' };
const GROUP = { id: -100, type: 'supergroup', title: 'Anglers' };
const BY = { id: 7, name: 'Ann Möller', language: 'en' };
const message = (more: object) => ({
  update_id: 5,
  message: { message_id: 3, date: 1, chat: ALONE, from: ANN, ...more },
});
const tap = (more: object) => ({ update_id: 5, callback_query: { id: 'q', from: ANN, chat_instance: 'x', ...more } });
const command = (update: unknown) => decode(update)?.command ?? null;
const DATA = { act: 'order', on: 'K-1042', version: 3, arg: '' } as const;

test('words are what was said', () => {
  expect(decode(message({ text: '25 ball heads' }))).toEqual({
    id: 5,
    query: null,
    command: { type: 'said', by: BY, text: '25 ball heads' },
  });
});

test('a command that names the bot is the command, with what follows it', () => {
  expect(command(message({ text: '/start@jigbot K-1042' }))).toMatchObject({ text: '/start K-1042' });
});

test('a changed message is said to be changed', () => {
  const { message: edited_message } = message({ text: 'no, 30' });
  expect(command({ update_id: 5, edited_message })).toEqual({ type: 'edited', by: BY, text: 'no, 30' });
});

test('a press names its tap and the message it hangs on, and has to be answered', () => {
  const press = tap({ data: writeTap(DATA), message: { message_id: 9, date: 1, chat: ALONE } });
  expect(decode(press)).toEqual({ id: 5, query: 'q', command: { type: 'tapped', by: BY, tap: DATA, message: 9 } });
});

test('a press on a message that the platform shows no more is a press all the same', () => {
  expect(command(tap({ data: writeTap(DATA), message: { message_id: 9, date: 0, chat: ALONE } }))).toMatchObject({
    tap: DATA,
  });
  expect(command(tap({ data: writeTap(DATA) }))).toMatchObject({ tap: DATA, message: null });
});

test.each(['', 'order', 'x'.repeat(64), '\u0000', 'order|K-1042|3|x|y|z'.padEnd(64, '|')])(
  'forged button data %j is no tap of ours',
  (data) => {
    const found = command(tap({ data, message: { message_id: 9, date: 1, chat: ALONE } }));
    expect(found?.type === 'tapped' && (found.tap === null || writeTap(found.tap) === data)).toBe(true);
  },
);

test('a photo is known by the id of its largest size; an album by its own', () => {
  const photo = [
    { file_id: 'small', file_unique_id: 'a', width: 90, height: 60 },
    { file_id: 'large', file_unique_id: 'b', width: 1280, height: 853 },
    { file_id: 'middle', file_unique_id: 'c', width: 320, height: 213 },
  ];
  expect(command(message({ photo, caption: 'like this', media_group_id: 'm' }))).toEqual({
    type: 'sent',
    by: BY,
    thing: 'photo',
    file: 'large',
    album: 'm',
    caption: 'like this',
  });
});

test.each([
  [{ document: { file_id: 'x', file_name: '../../etc/passwd' } }, 'file'],
  [{ animation: {}, document: {} }, 'video'],
  [{ sticker: {} }, 'sticker'],
  [{ voice: {} }, 'voice'],
  [{ video_note: {} }, 'video'],
  [{ venue: {}, location: {} }, 'location'],
  [{ contact: {} }, 'contact'],
  [{ poll: {} }, 'other'],
  [{ dice: {} }, 'other'],
])('%j is a %s', (content, thing) => {
  expect(command(message(content))).toMatchObject({ type: 'sent', thing, file: null });
});

test('what the chat says by itself is nothing anyone sent', () => {
  expect(command(message({ pinned_message: {} }))).toBeNull();
});

test('blocking and letting in again are known', () => {
  const change = (status: string, chat: object = ALONE) =>
    command({
      update_id: 5,
      my_chat_member: { chat, from: ANN, date: 1, old_chat_member: {}, new_chat_member: { status } },
    });
  expect(change('kicked')).toEqual({ type: 'reach', by: BY, reachable: false });
  expect(change('member')).toEqual({ type: 'reach', by: BY, reachable: true });
  expect(change('member', GROUP)).toBeNull();
});

describe('only people, and only alone with the program, say something to it', () => {
  test.each([
    ['a group', message({ text: 'x', chat: GROUP })],
    [
      'a channel',
      { update_id: 5, channel_post: { message_id: 1, date: 1, chat: { id: -5, type: 'channel' }, text: 'x' } },
    ],
    ['another bot', message({ text: 'x', from: { ...ANN, is_bot: true } })],
    ['someone who speaks as a chat', message({ text: 'x', sender_chat: GROUP })],
    ['nobody', message({ text: 'x', from: undefined })],
    ['someone in a chat that is not theirs', message({ text: 'x', chat: { ...ALONE, id: 8 } })],
    ['a press in a group', tap({ data: writeTap(DATA), message: { message_id: 9, date: 1, chat: GROUP } })],
  ])('%s', (_, update) => expect(command(update)).toBeNull());

  test('a press in a group is answered all the same', () => {
    expect(decode(tap({ data: 'x', message: { message_id: 9, date: 1, chat: GROUP } }))?.query).toBe('q');
  });
});

test.each([null, 7, 'x', [], {}, { update_id: 'x' }, { update_id: 1.5 }, { __proto__: { update_id: 1 } }])(
  '%j is not an update',
  (raw) => {
    const found = decode(raw);
    expect(found?.command ?? null).toBeNull();
  },
);

test('a press in an unknown shape can still be answered', () => {
  expect(decode({ update_id: 5, callback_query: { id: 'q', from: 'nobody' } })).toEqual({
    id: 5,
    query: 'q',
    command: null,
  });
});

describe('what is typed', () => {
  test.each([
    ['a\u202Eb\u202C', 'ab'],
    ['\u2066x\u2069\u200F', 'x'],
    ['a\u0000\u0007b\u009F', 'ab'],
    ['one\r\ntwo\rthree\u2028four', 'one\ntwo\nthree\nfour'],
    ['tab\there', 'tab\there'],
    ['<b>&_*[`', '<b>&_*[`'],
    ['שלום', 'שלום'],
    ['half \uD83C pair', 'half  pair'],
    ['🎣👩‍🔧', '🎣👩‍🔧'],
  ])('%j reaches the shop as %j', (typed, clean) => expect(cleanText(typed)).toBe(clean));

  test('is cut at whole characters, not in the middle of one', () => {
    expect(cleanText('🎣'.repeat(5000))).toBe('🎣'.repeat(4096));
    expect(cleanText('abc', 2)).toBe('ab');
  });

  test('a name is one line, without what turns text around, and not long', () => {
    const from = { ...ANN, first_name: `A\nnn\u202E${'x'.repeat(500)}`, last_name: undefined };
    const by = command(message({ text: 'x', from }));
    expect(by).toMatchObject({ by: { name: `A nn${'x'.repeat(126)}` } });
  });
});

const PAYMENT = { currency: 'USD', total_amount: 4500, invoice_payload: 'K-1042=whole' };

test('a payment about to be made has to be answered, and names what it is for', () => {
  expect(decode({ update_id: 5, pre_checkout_query: { id: 'p', from: ANN, ...PAYMENT } })).toEqual({
    id: 5,
    query: null,
    checkout: 'p',
    command: { type: 'checkout', by: BY, reason: 'K-1042=whole', cents: 4500, currency: 'USD' },
  });
});

test('a payment that was made is no words and no thing, and has the id of its charge', () => {
  const charges = { telegram_payment_charge_id: 'c-1', provider_payment_charge_id: 'd-1' };
  expect(command(message({ successful_payment: { ...PAYMENT, ...charges } }))).toEqual({
    type: 'paid',
    by: BY,
    reason: 'K-1042=whole',
    cents: 4500,
    currency: 'USD',
    charge: 'c-1',
  });
  expect(
    command({
      ...message({ successful_payment: { ...PAYMENT, ...charges } }),
      message: { message_id: 3, chat: GROUP, from: ANN },
    }),
  ).toBe(null);
});
