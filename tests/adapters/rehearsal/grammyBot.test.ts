import { Bot, GrammyError, InlineKeyboard, InputFile } from 'grammy';
import { afterEach, expect, test } from 'vitest';
import { BUYER, MAKER, PIXEL, TOKEN, until, withBot } from './standIn.ts';

let cleanUp: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const step of cleanUp.splice(0)) await step();
  cleanUp = [];
});

async function running(wishes: Parameters<typeof withBot>[0] = {}) {
  const parts = await withBot(wishes);
  cleanUp.push(async () => {
    await parts.bot.stop();
    await parts.port.close();
  });
  return parts;
}

const textsIn = ({ people }: Pick<Awaited<ReturnType<typeof withBot>>, 'people'>, id: number) =>
  people.messagesOf(id).map(({ text, caption }) => text ?? caption);

test('a real bot hears a word by long polling and answers it', async () => {
  const shop = await running();
  shop.bot.on('message:text', (ctx) => ctx.reply(`you said ${ctx.message.text}`));
  void shop.bot.start();
  await until(() => shop.server.calls.some(({ method }) => method === 'getUpdates'));
  shop.people.say(BUYER, '25 ball heads');
  await until(() => textsIn(shop, BUYER)[1]);
  expect(textsIn(shop, BUYER)).toEqual(['25 ball heads', 'you said 25 ball heads']);
  expect(shop.room.read().bot.id).toBe(42);
});

test('a tap reaches the bot, its card is edited in place and the tap is answered with a short note', async () => {
  const shop = await running();
  shop.bot.command('start', (ctx) =>
    ctx.reply('Which?', { reply_markup: new InlineKeyboard().text('Ball', 'style:ball') }),
  );
  shop.bot.callbackQuery('style:ball', async (ctx) => {
    await ctx.editMessageText('Ball it is');
    await ctx.answerCallbackQuery('noted');
  });
  void shop.bot.start();
  shop.people.start(BUYER);
  await until(() => textsIn(shop, BUYER)[1]);
  shop.people.press(BUYER, 'Ball');
  await until(() => shop.room.read().notices.length > 0);
  expect(textsIn(shop, BUYER)).toEqual(['/start', 'Ball it is']);
  expect(shop.people.messagesOf(BUYER)[1]?.reply_markup).toBeUndefined();
  expect(shop.room.read().notices).toMatchObject([{ personId: BUYER, text: 'noted' }]);
});

test('pictures, documents and albums arrive with their bytes and captions', async () => {
  const shop = await running();
  shop.people.start(BUYER);
  const photo = await shop.bot.api.sendPhoto(BUYER, new InputFile(PIXEL, 'head.png'), {
    caption: 'Your head – 3/8 oz',
  });
  await shop.bot.api.sendDocument(BUYER, new InputFile(Buffer.from('a,b\r\n\r\n--1,2'), 'stock.csv'));
  const album = await shop.bot.api.sendMediaGroup(BUYER, [
    { type: 'photo', media: new InputFile(PIXEL, 'one.png') },
    { type: 'photo', media: photo.photo[0]?.file_id ?? '' },
  ]);
  expect(photo).toMatchObject({
    caption: 'Your head – 3/8 oz',
    photo: [{ width: 1, height: 1, file_size: PIXEL.length }],
  });
  const groups = album.map((message) => ('media_group_id' in message ? message.media_group_id : ''));
  expect(groups).toEqual([expect.stringMatching(/^album/), groups[0]]);
  const { file_path } = await shop.bot.api.getFile(photo.photo[0]?.file_id ?? '');
  const bytes = await fetch(`${shop.port.url}/file/bot${TOKEN}/${file_path}`);
  expect(Buffer.from(await bytes.arrayBuffer())).toEqual(PIXEL);
  expect(shop.room.read().files[1]).toMatchObject({ name: 'stock.csv' });
  expect(Buffer.from(shop.room.read().files[1]?.base64 ?? '', 'base64').toString()).toBe('a,b\r\n\r\n--1,2');
});

test('a card with a picture can get another picture and another caption', async () => {
  const shop = await running();
  shop.people.start(BUYER);
  const { message_id } = await shop.bot.api.sendPhoto(BUYER, new InputFile(PIXEL, 'a.png'), { caption: 'before' });
  await shop.bot.api.editMessageMedia(BUYER, message_id, {
    type: 'photo',
    media: new InputFile(PIXEL, 'b.png'),
    caption: 'between',
  });
  await shop.bot.api.editMessageCaption(BUYER, message_id, { caption: 'after' });
  const [, message] = shop.people.messagesOf(BUYER);
  expect(message).toMatchObject({ caption: 'after', photo: [{ file_id: shop.room.read().files[1]?.id }] });
});

test('the bot hears pictures, albums, stickers, voices, places, contacts, documents and edits from a person', async () => {
  const shop = await running();
  const heard: string[] = [];
  const kinds = ['photo', 'sticker', 'voice', 'location', 'contact', 'document'] as const;
  for (const kind of kinds) shop.bot.on(`message:${kind}`, () => void heard.push(kind));
  shop.bot.on('edited_message', (ctx) => void heard.push(`edited to ${ctx.msg.text}`));
  shop.bot.on('my_chat_member', (ctx) => void heard.push(ctx.myChatMember.new_chat_member.status));
  void shop.bot.start();
  const picture = { bytes: PIXEL, name: 'jig.png', mediaType: 'image/png' };
  shop.people.sendPhoto(BUYER, picture, 'like this');
  shop.people.sendAlbum(BUYER, [picture, picture]);
  shop.people.sendSticker(BUYER, '🎣');
  shop.people.sendVoice(BUYER, 4);
  shop.people.sendLocation(BUYER, 46.8, -92.1);
  shop.people.sendContact(BUYER, '+1 555 0100', 'Buyer');
  shop.people.sendDocument(BUYER, { bytes: Buffer.from('x'), name: 'x.txt', mediaType: 'text/plain' });
  shop.people.edit(shop.people.say(BUYER, '2 dozen').message_id, '3 dozen');
  shop.people.block(BUYER);
  shop.people.unblock(BUYER);
  await until(() => heard.length === 11);
  const pictures = ['photo', 'photo', 'photo'];
  expect(heard).toEqual([...pictures, ...kinds.slice(1), 'edited to 3 dozen', 'kicked', 'member']);
});

test('what was handled is forgotten when the bot stops, and only what was not comes again', async () => {
  const shop = await running();
  const heard: string[] = [];
  shop.bot.on('message:text', (ctx) => void heard.push(ctx.message.text));
  const running1 = shop.bot.start();
  shop.people.say(BUYER, 'one');
  await until(() => heard.length === 1);
  await shop.bot.stop();
  await running1;
  shop.people.say(BUYER, 'two');
  const again = new Bot(TOKEN, { client: { apiRoot: shop.port.url } });
  again.on('message:text', (ctx) => void heard.push(ctx.message.text));
  void again.start();
  await until(() => heard.length === 2);
  await again.stop();
  expect(heard).toEqual(['one', 'two']);
  expect(shop.room.read().updates).toEqual([]);
});

test('of two programs with one token the earlier is told that there is another', async () => {
  const shop = await running();
  const ended = shop.bot.start().catch((error: unknown) => error);
  await until(() => shop.server.calls.some(({ method }) => method === 'getUpdates'));
  const other = new Bot(TOKEN, { client: { apiRoot: shop.port.url } });
  void other.start();
  const error = await ended;
  await other.stop();
  expect(error).toBeInstanceOf(GrammyError);
  expect(error).toMatchObject({ error_code: 409, method: 'getUpdates' });
});

test('a cut line is a network error to the bot, whether the message arrived or not', async () => {
  const faults = ['drop-before', 'drop-after'] as const;
  let next = 0;
  const shop = await running({ fault: (method) => (method === 'sendMessage' ? faults[next++] : undefined) });
  shop.people.start(BUYER);
  await expect(shop.bot.api.sendMessage(BUYER, 'lost')).rejects.toThrow('Network request');
  await expect(shop.bot.api.sendMessage(BUYER, 'arrived')).rejects.toThrow('Network request');
  expect(textsIn(shop, BUYER)).toEqual(['/start', 'arrived']);
});

test('a call that hangs is given up by the bot and leaves nothing behind', async () => {
  const shop = await running({ fault: (method) => (method === 'sendMessage' ? 'hang' : undefined) });
  shop.people.start(BUYER);
  const giveUp = AbortSignal.timeout(30);
  await expect(shop.bot.api.sendMessage(BUYER, 'never', {}, giveUp as never)).rejects.toThrow();
  expect(textsIn(shop, BUYER)).toEqual(['/start']);
});

test('too many calls and server errors say so as the platform does', async () => {
  const faults = [{ status: 429, retryAfter: 3 }, { status: 500, body: 'Bad Gateway' }, { status: 500 }];
  const shop = await running({ fault: (method) => (method === 'sendMessage' ? faults.shift() : undefined) });
  shop.people.start(BUYER);
  await expect(shop.bot.api.sendMessage(BUYER, 'a')).rejects.toMatchObject({
    error_code: 429,
    parameters: { retry_after: 3 },
  });
  await expect(shop.bot.api.sendMessage(BUYER, 'b')).rejects.toThrow('Network request');
  await expect(shop.bot.api.sendMessage(BUYER, 'c')).rejects.toMatchObject({ error_code: 500 });
  await expect(shop.bot.api.sendMessage(BUYER, 'd')).resolves.toMatchObject({ text: 'd' });
});

test('a picture can be forwarded, a question copied, and a forward says who wrote it', async () => {
  const shop = await running();
  shop.people.start(MAKER);
  const question = shop.people.say(BUYER, 'can you pour it in pink?');
  const copied = await shop.bot.api.copyMessage(MAKER, BUYER, question.message_id);
  const forwarded = await shop.bot.api.forwardMessage(MAKER, BUYER, question.message_id);
  expect(shop.people.messagesOf(MAKER).at(-2)).toMatchObject({
    message_id: copied.message_id,
    text: 'can you pour it in pink?',
  });
  expect(forwarded).toMatchObject({ forward_origin: { type: 'user', sender_user: { id: BUYER } } });
});

test('an invoice is paid only after the bot agreed to it', async () => {
  const shop = await running();
  const paid: string[] = [];
  shop.people.start(BUYER);
  shop.bot.on('pre_checkout_query', (ctx) => ctx.answerPreCheckoutQuery(true));
  shop.bot.on('message:successful_payment', (ctx) => void paid.push(ctx.message.successful_payment.invoice_payload));
  void shop.bot.start({ allowed_updates: ['message', 'pre_checkout_query'] });
  const invoice = await shop.bot.api.raw.sendInvoice({
    chat_id: BUYER,
    title: 'Order K-1',
    description: '25 ball heads',
    payload: 'K-1',
    provider_token: 'test:provider',
    currency: 'USD',
    prices: [{ label: 'Heads', amount: 2500 }],
  });
  shop.people.pay(BUYER, invoice.message_id);
  await until(() => paid.length === 1);
  expect(paid).toEqual(['K-1']);
});
