import { describe, expect, test } from 'vitest';
import { BUYER, MAKER, NOON, PIXEL, standIn, TOKEN, until } from './standIn.ts';

const NOT_MODIFIED =
  'Bad Request: message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message';
const button = (callback_data: string) => ({ inline_keyboard: [[{ text: 'Tap', callback_data }]] });
const picture = { bytes: PIXEL, name: 'a.png', mediaType: 'image/png' };

function begun() {
  const shop = standIn();
  shop.people.start(BUYER);
  const send = async (more: object = {}) => {
    const { result } = await shop.ask('sendMessage', { chat_id: BUYER, text: 'card', ...more });
    return (result as { message_id: number }).message_id;
  };
  return { ...shop, send };
}

describe('what the platform refuses', () => {
  test.each<[string, string, object, number, string]>([
    ['an unknown method', 'sendMesage', {}, 404, 'Not Found: method not found'],
    ['an empty text', 'sendMessage', { chat_id: BUYER, text: ' \n' }, 400, 'Bad Request: message text is empty'],
    [
      '4,097 characters',
      'sendMessage',
      { chat_id: BUYER, text: 'a'.repeat(4097) },
      400,
      'Bad Request: message is too long',
    ],
    [
      '65 bytes in a button',
      'sendMessage',
      { chat_id: BUYER, text: 'a', reply_markup: button('é'.repeat(32) + 'a') },
      400,
      'Bad Request: BUTTON_DATA_INVALID',
    ],
    [
      'an empty button',
      'sendMessage',
      { chat_id: BUYER, text: 'a', reply_markup: button('') },
      400,
      'Bad Request: BUTTON_DATA_INVALID',
    ],
    ['an unknown chat', 'sendMessage', { chat_id: 9, text: 'a' }, 400, 'Bad Request: chat not found'],
    [
      'someone who never wrote',
      'sendMessage',
      { chat_id: MAKER, text: 'a' },
      403,
      "Forbidden: bot can't initiate conversation with a user",
    ],
    [
      'a reply to nothing',
      'sendMessage',
      { chat_id: BUYER, text: 'a', reply_parameters: { message_id: 99 } },
      400,
      'Bad Request: message to be replied not found',
    ],
    [
      'an edit of nothing',
      'editMessageText',
      { chat_id: BUYER, message_id: 99, text: 'a' },
      400,
      'Bad Request: message to edit not found',
    ],
    [
      "an edit of the buyer's words",
      'editMessageText',
      { chat_id: BUYER, message_id: 1, text: 'a' },
      400,
      "Bad Request: message can't be edited",
    ],
    [
      'deleting nothing',
      'deleteMessage',
      { chat_id: BUYER, message_id: 99 },
      400,
      'Bad Request: message to delete not found',
    ],
    [
      'an unknown picture',
      'sendPhoto',
      { chat_id: BUYER, photo: 'nowhere' },
      400,
      'Bad Request: wrong file identifier/HTTP URL specified',
    ],
    [
      'an unknown query',
      'answerCallbackQuery',
      { callback_query_id: 'x' },
      400,
      'Bad Request: query is too old and response timeout expired or query ID is invalid',
    ],
    [
      'a command in capitals',
      'setMyCommands',
      { commands: [{ command: 'Orders', description: 'a' }] },
      400,
      'Bad Request: BOT_COMMAND_INVALID',
    ],
    [
      'an entity past the end',
      'sendMessage',
      { chat_id: BUYER, text: 'ab', entities: [{ type: 'bold', offset: 1, length: 2 }] },
      400,
      'Bad Request: entity beyond the end of the text',
    ],
    [
      'a 513 character description',
      'setMyDescription',
      { description: 'a'.repeat(513) },
      400,
      'Bad Request: BOT_DESCRIPTION_TOO_LONG',
    ],
    ['a call that says no chat', 'sendMessage', { text: 'a' }, 400, 'Bad Request: parameter chat_id: Invalid input'],
  ])('%s', async (_what, method, payload, code, description) => {
    const { call, people } = begun();
    const response = await call(method, payload);
    expect([response.status, await response.json()]).toEqual([code, { ok: false, error_code: code, description }]);
    expect(people.messagesOf(BUYER)).toHaveLength(1);
  });

  test('a wrong token is turned away, and a path that is none is not found', async () => {
    const { server } = standIn();
    const status = async (path: string) => (await server.answer(new Request(`http://127.0.0.1${path}`))).status;
    expect(await status('/bot1:wrong/getMe')).toBe(401);
    expect(await status('/elsewhere')).toBe(404);
    expect(await status(`/file/bot${TOKEN}/files/none.png`)).toBe(404);
    expect(await status(`/bot${TOKEN}/getMe`)).toBe(200);
  });

  test('a body that is no JSON is a clear refusal', async () => {
    const { server } = standIn();
    const headers = { 'content-type': 'application/json' };
    const response = await server.answer(
      new Request(`http://127.0.0.1/bot${TOKEN}/sendMessage`, { method: 'POST', headers, body: '{"chat' }),
    );
    expect(response.status).toBe(400);
  });

  test('who has blocked the bot is not reached, and is again when it is unblocked', async () => {
    const { people, ask } = begun();
    people.block(BUYER);
    expect(await ask('sendMessage', { chat_id: BUYER, text: 'a' })).toMatchObject({
      error_code: 403,
      description: 'Forbidden: bot was blocked by the user',
    });
    expect(() => people.say(BUYER, 'hello')).toThrow('must unblock it');
    people.unblock(BUYER);
    expect(await ask('sendMessage', { chat_id: BUYER, text: 'a' })).toMatchObject({ ok: true });
  });
});

describe('limits count as the platform counts', () => {
  test('4,096 characters pass, also when each takes two UTF-16 units', async () => {
    const { ask } = begun();
    expect(await ask('sendMessage', { chat_id: BUYER, text: '🎣'.repeat(4096) })).toMatchObject({ ok: true });
  });

  test('64 bytes in a button pass', async () => {
    const { ask } = begun();
    expect(await ask('sendMessage', { chat_id: BUYER, text: 'a', reply_markup: button('é'.repeat(32)) })).toMatchObject(
      { ok: true },
    );
  });

  test.each([
    [1024, true],
    [1025, false],
  ])('a caption of %i characters', async (length, ok) => {
    const { ask, people, room } = begun();
    people.sendPhoto(BUYER, picture);
    expect(
      await ask('sendPhoto', { chat_id: BUYER, photo: room.read().files[0]?.id, caption: 'c'.repeat(length) }),
    ).toMatchObject({ ok });
  });

  test.each([
    [200, true],
    [201, false],
  ])('a tap answered with %i characters', async (length, ok) => {
    const { ask, people, send } = begun();
    const query = people.tap(BUYER, await send(), 'x');
    expect(await ask('answerCallbackQuery', { callback_query_id: query, text: 'n'.repeat(length) })).toMatchObject({
      ok,
    });
  });

  test.each([
    [1, false],
    [2, true],
    [10, true],
    [11, false],
  ])('an album of %i pictures', async (count, ok) => {
    const { ask, people, room } = begun();
    people.sendPhoto(BUYER, picture);
    const media = Array.from({ length: count }, () => ({ type: 'photo', media: room.read().files[0]?.id }));
    expect(await ask('sendMediaGroup', { chat_id: BUYER, media })).toMatchObject({ ok });
  });

  test.each([
    [100, true],
    [101, false],
  ])('a card with %i buttons', async (count, ok) => {
    const { ask } = begun();
    const inline_keyboard = Array.from({ length: count }, (_, index) => [
      { text: `${index}`, callback_data: `${index}` },
    ]);
    expect(await ask('sendMessage', { chat_id: BUYER, text: 'a', reply_markup: { inline_keyboard } })).toMatchObject({
      ok,
    });
  });
});

describe('edits', () => {
  test('the same words and buttons again are "not modified"; without its buttons the card loses them', async () => {
    const { ask, send, people } = begun();
    const message_id = await send({ reply_markup: button('x') });
    const same = { chat_id: BUYER, message_id, text: 'card', reply_markup: button('x') };
    expect(await ask('editMessageText', same)).toMatchObject({ error_code: 400, description: NOT_MODIFIED });
    expect(await ask('editMessageText', { ...same, reply_markup: undefined })).toMatchObject({ ok: true });
    expect(people.messagesOf(BUYER).at(-1)).not.toHaveProperty('reply_markup');
    expect(await ask('editMessageReplyMarkup', { chat_id: BUYER, message_id })).toMatchObject({
      description: NOT_MODIFIED,
    });
  });

  test('words of a picture card are its caption, not its text', async () => {
    const { ask, people, room, send } = begun();
    people.sendPhoto(BUYER, picture);
    const { result } = await ask('sendPhoto', { chat_id: BUYER, photo: room.read().files[0]?.id, caption: 'a' });
    const { message_id } = result as { message_id: number };
    expect(await ask('editMessageText', { chat_id: BUYER, message_id, text: 'b' })).toMatchObject({
      description: 'Bad Request: there is no text in the message to edit',
    });
    expect(await ask('editMessageCaption', { chat_id: BUYER, message_id: await send(), caption: 'b' })).toMatchObject({
      error_code: 400,
    });
    expect(await ask('editMessageCaption', { chat_id: BUYER, message_id })).toMatchObject({ ok: true });
    expect(people.messagesOf(BUYER).find((message) => message.message_id === message_id)).not.toHaveProperty('caption');
  });

  test('a message may be deleted for two days', async () => {
    let time = NOON;
    const { ask, people } = standIn({ now: () => time });
    people.start(BUYER);
    const { result } = await ask('sendMessage', { chat_id: BUYER, text: 'old' });
    const { message_id } = result as { message_id: number };
    time += 48 * 3_600_000;
    expect(await ask('deleteMessage', { chat_id: BUYER, message_id })).toMatchObject({
      description: "Bad Request: message can't be deleted for everyone",
    });
    time -= 1000;
    expect(await ask('deleteMessages', { chat_id: BUYER, message_ids: [message_id, 77] })).toMatchObject({ ok: true });
    expect(people.messagesOf(BUYER)).toHaveLength(1);
  });
});

describe('long polling', () => {
  test('what is not confirmed comes again; what is confirmed is forgotten', async () => {
    const { ask, people, room } = standIn();
    for (const text of ['one', 'two', 'three']) people.say(BUYER, text);
    const ids = async (payload: object) =>
      ((await ask('getUpdates', payload)).result as { update_id: number }[]).map(({ update_id }) => update_id);
    expect(await ids({})).toEqual([1, 2, 3]);
    expect(await ids({})).toEqual([1, 2, 3]);
    expect(await ids({ offset: 2, limit: 1 })).toEqual([2]);
    expect(await ids({ offset: 0 })).toEqual([2, 3]);
    expect(await ids({ offset: -1 })).toEqual([3]);
    expect(await ids({ offset: 4 })).toEqual([]);
    expect(room.read().updates).toEqual([]);
  });

  test('a poll waits until something is said', async () => {
    const { ask, people } = standIn();
    let answered = false;
    const poll = ask('getUpdates', { timeout: 30 }).finally(() => (answered = true));
    await new Promise((soon) => setTimeout(soon, 20));
    expect(answered).toBe(false);
    people.say(BUYER, 'now');
    expect((await poll).result).toMatchObject([{ message: { text: 'now' } }]);
  });

  test('a poll without news ends when its seconds are over', async () => {
    const { ask } = standIn();
    const before = performance.now();
    expect(await ask('getUpdates', { timeout: 1 })).toEqual({ ok: true, result: [] });
    expect(performance.now() - before).toBeGreaterThan(900);
  });

  test('a second poll ends the first with 409 and takes its place', async () => {
    const { ask, people } = standIn();
    const first = ask('getUpdates', { timeout: 30 });
    await new Promise((soon) => setTimeout(soon, 10));
    const second = ask('getUpdates', { timeout: 30 });
    expect(await first).toMatchObject({
      error_code: 409,
      description: expect.stringContaining('terminated by other getUpdates request'),
    });
    people.say(BUYER, 'hello');
    expect((await second).result).toHaveLength(1);
  });

  test('a poll whose program has gone is no rival of the next', async () => {
    const { call, ask, people } = standIn();
    const gone = new AbortController();
    const first = call('getUpdates', { timeout: 30 }, gone.signal);
    await new Promise((soon) => setTimeout(soon, 10));
    gone.abort();
    expect(await (await first).json()).toEqual({ ok: true, result: [] });
    people.say(BUYER, 'still here');
    expect((await ask('getUpdates', { timeout: 30 })).result).toHaveLength(1);
  });

  test('only the kinds asked for come, until others are asked for', async () => {
    const { ask, people, send } = begun();
    const messageId = await send();
    await ask('getUpdates', { offset: -1, allowed_updates: ['callback_query'] });
    people.say(BUYER, 'unheard');
    people.tap(BUYER, messageId, 'x');
    expect((await ask('getUpdates', { offset: 2 })).result).toMatchObject([{ callback_query: { data: 'x' } }]);
    await ask('getUpdates', { offset: 100, allowed_updates: [] });
    people.say(BUYER, 'heard');
    expect((await ask('getUpdates', {})).result).toMatchObject([{ message: { text: 'heard' } }]);
  });

  test('updates can be made to arrive twice and out of order', async () => {
    const { ask, people } = standIn({ deliver: (batch) => [...batch.toReversed(), ...batch] });
    people.say(BUYER, 'one');
    people.say(BUYER, 'two');
    const texts = ((await ask('getUpdates')).result as { message: { text: string } }[]).map(
      ({ message }) => message.text,
    );
    expect(texts).toEqual(['two', 'one', 'one', 'two']);
  });
});

describe('taps and groups', () => {
  test('a button can be forged, pressed twice, and pressed on a card that is gone', async () => {
    const { ask, people, send } = begun();
    const messageId = await send({ reply_markup: button('buy') });
    people.tap(BUYER, messageId, 'buy');
    people.tap(BUYER, messageId, 'buy');
    await ask('deleteMessage', { chat_id: BUYER, message_id: messageId });
    people.tap(BUYER, messageId, 'admin:1');
    const { result } = await ask('getUpdates', { offset: 2 });
    expect(result).toMatchObject([
      { update_id: 2, callback_query: { data: 'buy', message: { text: 'card' } } },
      { update_id: 3, callback_query: { data: 'buy' } },
      { update_id: 4, callback_query: { data: 'admin:1', message: { message_id: messageId, date: 0 } } },
    ]);
  });

  test('a tap is too old to be answered after a minute', async () => {
    let time = NOON;
    const { ask, people } = standIn({ now: () => time });
    people.start(BUYER);
    const query = people.tap(BUYER, 1, 'x');
    time += 61_000;
    expect(await ask('answerCallbackQuery', { callback_query_id: query })).toMatchObject({ error_code: 400 });
  });

  test('pressing by label says which labels there are when there is none such', async () => {
    const { people, send } = begun();
    await send({ reply_markup: button('x') });
    expect(() => people.press(BUYER, 'Tip')).toThrow('No button "Tip" here; there are: "Tap".');
  });

  test('a group has its own chat, and commands are marked in it', async () => {
    const { ask, people } = standIn();
    people.addGroup({ id: -7, title: 'Bench', members: [BUYER, MAKER] });
    people.say(MAKER, 'look: /queue@rehearsal_bot please', { chatId: -7 });
    await ask('sendMessage', { chat_id: -7, text: 'nothing waits' });
    expect(people.messagesOf(-7)).toMatchObject([
      { chat: { type: 'group', title: 'Bench' }, entities: [{ type: 'bot_command', offset: 6, length: 20 }] },
      { text: 'nothing waits' },
    ]);
    expect(people.messagesOf(MAKER)).toEqual([]);
  });
});

test('the room tells its listeners of every change, until they stop listening', async () => {
  const { room, people } = standIn();
  let heard = 0;
  const stop = room.onChange(() => void heard++);
  people.say(BUYER, 'one');
  stop();
  people.say(BUYER, 'two');
  expect(await until(() => heard)).toBe(1);
});
