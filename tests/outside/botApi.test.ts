import { describe, expect, test } from 'vitest';
import { METHODS } from '../../src/adapters/rehearsal/methods/table.ts';
import { BUYER, MAKER, PIXEL, standIn } from '../adapters/rehearsal/standIn.ts';
import { BOT_API, resultViolations, SKIP_REASON, typeViolations, violations } from './botApi.ts';

const button = (more: object) => ({ inline_keyboard: [[{ text: 'Order', ...more }]] });

describe.skipIf(!BOT_API)(`calls against the published bot API (${SKIP_REASON})`, () => {
  test('the published API is the version that was checked; a newer one is taken up on purpose', () => {
    expect(BOT_API?.version).toBe('Bot API 10.1');
  });

  test.each(Object.keys(METHODS))('%s is a method of the published API', (method) => {
    expect(BOT_API?.methods).toHaveProperty(method);
  });

  test.each<[string, object]>([
    ['sendMessage', { chat_id: 1, text: 'hello', entities: [{ type: 'bold', offset: 0, length: 5 }] }],
    [
      'sendMessage',
      { chat_id: '@shop', text: '🎣'.repeat(4096), reply_markup: button({ callback_data: 'é'.repeat(32) }) },
    ],
    [
      'sendMessage',
      { chat_id: 1, text: 'pick', reply_markup: { keyboard: [[{ text: 'Ball' }]], resize_keyboard: true } },
    ],
    ['sendPhoto', { chat_id: 1, photo: 'attach://one', caption: 'head' }],
    ['editMessageMedia', { chat_id: 1, message_id: 2, media: { type: 'photo', media: 'attach://one' } }],
    ['setMyCommands', { commands: [{ command: 'orders', description: 'mine' }], scope: { type: 'chat', chat_id: 1 } }],
    ['getUpdates', { offset: 5, limit: 1, timeout: 30, allowed_updates: ['message'] }],
    ['getMe', {}],
  ])('a sound call passes: %s %j', (method, payload) => {
    expect(violations(method, payload)).toEqual([]);
  });

  test.each<[string, object, readonly string[]]>([
    ['sendMesage', {}, ['sendMesage is no method of the API']],
    ['sendMessage', { chat_id: 1 }, ['sendMessage.text is missing']],
    ['sendMessage', { chat_id: 1, text: 'a', txt: 'b' }, ['sendMessage.txt is not known to the API']],
    ['sendMessage', { chat_id: 1, text: '' }, ['sendMessage.text has 0 characters, allowed are 1 to 4096']],
    [
      'sendMessage',
      { chat_id: 1, text: 'a'.repeat(4097) },
      ['sendMessage.text has 4097 characters, allowed are 1 to 4096'],
    ],
    ['deleteMessage', { chat_id: 1, message_id: '7' }, ['deleteMessage.message_id should be Integer']],
    [
      'deleteMessages',
      { chat_id: 1, message_ids: [] },
      ['deleteMessages.message_ids has 0 items, allowed are 1 to 100'],
    ],
    [
      'answerCallbackQuery',
      { callback_query_id: 'q', text: 'a'.repeat(201) },
      ['answerCallbackQuery.text has 201 characters, allowed are 0 to 200'],
    ],
    [
      'setMyCommands',
      { commands: Array.from({ length: 101 }, () => ({ command: 'a', description: 'b' })) },
      ['setMyCommands.commands has 101 items, allowed are 0 to 100'],
    ],
    ['getUpdates', { limit: 101 }, ['getUpdates.limit has 101 as its value, allowed are 1 to 100']],
  ])('a faulty call is told what is wrong: %s', (method, payload, faults) => {
    expect(violations(method, payload)).toEqual(faults);
  });

  test('one mistake inside a union is told once, in the branch that was meant', () => {
    const markup = {
      inline_keyboard: [
        [{ text: 'a', callback_data: 'x'.repeat(65) }, { text: 'b' }],
        [{ text: 'c', callback_data: '' }],
      ],
    };
    expect(violations('sendMessage', { chat_id: 1, text: 'a', reply_markup: markup })).toEqual([
      'sendMessage.reply_markup.inline_keyboard[0][0].callback_data has 65 bytes, allowed are 1 to 64',
      'sendMessage.reply_markup.inline_keyboard[0][1] must do exactly one thing, not 0',
      'sendMessage.reply_markup.inline_keyboard[1][0].callback_data has 0 bytes, allowed are 1 to 64',
    ]);
    const media = { type: 'photo', media: 'attach://a', caption: 'c'.repeat(1025) };
    expect(violations('editMessageMedia', { chat_id: 1, message_id: 1, media })).toEqual([
      'editMessageMedia.media.caption has 1025 characters, allowed are 0 to 1024',
    ]);
  });

  test('an answer or an update of another shape is told too', () => {
    expect(typeViolations('Update', { callback_query: { id: 1 } })).toEqual([
      'Update.update_id is missing',
      'Update.callback_query.id should be String',
      'Update.callback_query.from is missing',
      'Update.callback_query.chat_instance is missing',
    ]);
    expect(resultViolations('deleteMessage', 'yes')).toEqual(['deleteMessage should be Boolean']);
  });

  test('what the stand-in answers has the published shape, and so has every update it gives', async () => {
    const { people, ask, answers, server, room } = standIn();
    people.start(BUYER);
    people.start(MAKER);
    const word = people.say(BUYER, 'see /help', {});
    people.edit(word.message_id, 'see that');
    const picture = { bytes: PIXEL, name: 'a.png', mediaType: 'image/png' };
    people.sendAlbum(BUYER, [picture, picture], 'both');
    people.sendDocument(BUYER, picture);
    people.sendVoice(BUYER, 3);
    people.sendSticker(BUYER, '🎣');
    people.sendLocation(BUYER, 46.5, -92.5);
    people.sendContact(BUYER, '+1 555 0100', 'Wren');
    const file = room.read().files[0]?.id;
    const sent = await ask('sendMessage', {
      chat_id: BUYER,
      text: 'pick',
      reply_markup: button({ callback_data: 'a' }),
      reply_parameters: { message_id: word.message_id },
    });
    const messageId = (sent.result as { message_id: number }).message_id;
    const query = people.tap(BUYER, messageId, 'a');
    people.tap(BUYER, 99_999, 'forged');
    await ask('answerCallbackQuery', { callback_query_id: query, text: 'noted' });
    await ask('editMessageReplyMarkup', { chat_id: BUYER, message_id: messageId });
    await ask('editMessageText', { chat_id: BUYER, message_id: messageId, text: 'picked' });
    await ask('sendPhoto', { chat_id: BUYER, photo: file });
    await ask('sendDocument', { chat_id: BUYER, document: file, caption: 'it' });
    await ask('sendMediaGroup', {
      chat_id: BUYER,
      media: [
        { type: 'photo', media: file },
        { type: 'photo', media: file },
      ],
    });
    await ask('copyMessage', { chat_id: MAKER, from_chat_id: BUYER, message_id: word.message_id });
    await ask('forwardMessage', { chat_id: MAKER, from_chat_id: BUYER, message_id: word.message_id });
    await ask('sendChatAction', { chat_id: BUYER, action: 'typing' });
    await ask('setMyCommands', { commands: [{ command: 'help', description: 'what I can do' }] });
    await ask('getFile', { file_id: file });
    await ask('getMe');
    await ask('deleteWebhook', { drop_pending_updates: false });
    await ask('setMyDescription', { description: 'heads to order' });
    await ask('setMyShortDescription', { short_description: 'heads' });
    await ask('deleteMessage', { chat_id: BUYER, message_id: messageId });
    const invoice = {
      title: 'K-1',
      description: 'heads',
      payload: 'K-1',
      provider_token: 't',
      currency: 'USD',
      prices: [{ label: 'heads', amount: 100 }],
    };
    const { result: bill } = await ask('sendInvoice', { chat_id: BUYER, ...invoice });
    const checkout = people.pay(BUYER, (bill as { message_id: number }).message_id);
    await ask('answerPreCheckoutQuery', { pre_checkout_query_id: checkout, ok: true });
    people.block(BUYER);
    people.unblock(BUYER);
    const { result: updates } = await ask('getUpdates', { timeout: 0 });
    expect(server.calls.flatMap(({ method, payload }) => violations(method, payload))).toEqual([]);
    expect((updates as object[]).flatMap((update) => typeViolations('Update', update))).toEqual([]);
    expect((updates as object[]).length).toBeGreaterThan(15);
    expect(answers.flatMap(({ method, result }) => resultViolations(method, result))).toEqual([]);
    expect(new Set(answers.map(({ method }) => method)).size).toBeGreaterThan(18);
  });
});
