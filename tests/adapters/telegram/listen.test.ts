import { afterEach, expect, test } from 'vitest';
import { badDisk } from '../lowdb/badDisk.ts';
import { BUYER, MAKER, OTHER, toyBot, until } from './toyBot.ts';

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of open.splice(0)) await stop();
});
async function running(wishes: Parameters<typeof toyBot>[0] = {}) {
  const shop = await toyBot(wishes);
  open.push(shop.stop);
  return shop;
}
const said = (shop: Awaited<ReturnType<typeof toyBot>>, id: number) =>
  shop.people
    .messagesOf(id)
    .filter(({ from }) => from.is_bot)
    .map(({ text, caption }) => text ?? caption);

test('what is said is written down and answered', async () => {
  const shop = await running();
  shop.people.say(BUYER, '25 ball heads');
  await until(() => said(shop, BUYER).length === 1);
  expect(said(shop, BUYER)).toEqual(['1: 25 ball heads']);
  await until(() => shop.store.read().outbox.length === 0);
  expect(shop.store.read().desk.notes).toEqual(['25 ball heads']);
});

test('an update that the platform brings three times has its effect once', async () => {
  const shop = await running({ deliver: (batch) => batch.flatMap((update) => [update, update, update]) });
  shop.people.say(BUYER, 'one');
  await until(() => said(shop, BUYER).length === 1);
  shop.people.say(BUYER, 'two');
  await until(() => said(shop, BUYER).length === 2);
  expect(shop.store.read().desk.notes).toEqual(['one', 'two']);
});

test('a card is written over, and a card that is sent anew leaves the older one without buttons', async () => {
  const shop = await running();
  shop.people.say(BUYER, 'card a');
  await until(() => said(shop, BUYER).length === 1);
  shop.people.say(BUYER, 'card b');
  await until(() => said(shop, BUYER)[0] === '2: card b');
  shop.people.say(BUYER, 'below c');
  await until(() => said(shop, BUYER).length === 2);
  await until(
    () => shop.people.messagesOf(BUYER).filter(({ reply_markup }) => reply_markup?.inline_keyboard.length).length === 1,
  );
  shop.people.press(BUYER, 'Help');
  await until(() => shop.room.read().notices.length === 1);
  expect(shop.store.read().desk.notes.at(-1)).toBe('tap help');
});

test('a bug in the rules changes nothing, is said, and does not stop the next message', async () => {
  const shop = await running();
  shop.people.say(BUYER, 'fall over');
  await until(() => said(shop, BUYER).length === 1);
  shop.people.say(BUYER, 'well?');
  await until(() => said(shop, BUYER).length === 2);
  expect(said(shop, BUYER)).toEqual(['Sorry.', '1: well?']);
});

test('the platform is asked for what is needed only, and for nothing to be dropped', async () => {
  const shop = await running();
  await until(() => shop.ears.lastPoll !== null || shop.server.calls.some(({ method }) => method === 'getUpdates'));
  const payloads = shop.server.calls.map(({ method, payload }) => [method, payload]);
  expect(payloads).toContainEqual([
    'getUpdates',
    expect.objectContaining({
      timeout: 30,
      limit: 100,
      allowed_updates: ['message', 'edited_message', 'callback_query', 'pre_checkout_query', 'my_chat_member'],
    }),
  ]);
  expect(JSON.stringify(payloads)).not.toMatch(/drop_pending_updates":true/);
});

test('someone who floods is told once, loses nothing that was taken, and holds up nobody', async () => {
  const shop = await running();
  for (let count = 0; count < 200; count += 1) shop.people.say(BUYER, `a${count}`);
  shop.people.say(OTHER, 'and me?');
  await until(() => said(shop, OTHER).length === 1);
  await until(() => said(shop, BUYER).length >= 21);
  expect(said(shop, BUYER).filter((text) => text === 'Slow down, please.')).toHaveLength(1);
  expect(shop.store.read().desk.notes.length).toBeLessThan(25);
});

test('the maker is never turned away', async () => {
  const shop = await running();
  for (let count = 0; count < 40; count += 1) shop.people.say(MAKER, `a${count}`);
  await until(() => shop.store.read().desk.notes.length === 40);
});

test('every press is answered: of ours, forged, and in a flood', async () => {
  const shop = await running();
  shop.people.say(BUYER, 'card a');
  await until(() => said(shop, BUYER).length === 1);
  const message = shop.people.messagesOf(BUYER).at(-1)?.message_id ?? 0;
  for (const data of ['help|-|0|', 'forged', 'x'.repeat(64), ...Array.from({ length: 30 }, () => 'help|-|0|')])
    shop.people.tap(BUYER, message, data);
  const answered = () => shop.server.calls.filter(({ method }) => method === 'answerCallbackQuery').length;
  await until(() => answered() === 33);
});

test('someone who blocks the program is noted, and what waited for them does not hold up others', async () => {
  const shop = await running();
  shop.people.start(BUYER);
  await until(() => said(shop, BUYER).length === 1);
  shop.people.block(BUYER);
  await until(() => shop.store.read().desk.lost.includes(BUYER));
});

test('nobody is heard in a group, and a bug or a stranger there changes nothing', async () => {
  const shop = await running();
  shop.people.addGroup({ id: -1001, title: 'Anglers', members: [BUYER, MAKER] });
  shop.people.say(MAKER, 'bench', { chatId: -1001 });
  shop.people.say(BUYER, 'alone');
  await until(() => said(shop, BUYER).length === 1);
  expect(shop.store.read().desk.notes).toEqual(['alone']);
});

test('a refused token ends the program with a sentence that does not repeat it', async () => {
  const shop = await running({ fault: (method) => (method === 'getUpdates' ? { status: 401 } : undefined) });
  await expect(shop.running).rejects.toMatchObject({
    why: 'token',
    message: expect.stringMatching(/does not accept BOT_TOKEN/),
  });
  expect(JSON.stringify(shop.logged)).not.toContain('AAFake');
});

test('a rival that goes away is waited for; one that stays ends the program', async () => {
  let rivals = 3;
  const shop = await running({
    fault: (method) => (method === 'getUpdates' && rivals-- > 0 ? { status: 409 } : undefined),
  });
  shop.people.say(BUYER, 'hello');
  await until(() => said(shop, BUYER).length === 1);
  const other = await running({ fault: (method) => (method === 'getUpdates' ? { status: 409 } : undefined) });
  await expect(other.running).rejects.toMatchObject({ why: 'rival' });
});

test('an update that cannot be written down is not confirmed, and the program ends saying so', async () => {
  const shop = await running({
    disk: (folder) => badDisk(folder, (call) => (call === 'write' ? 'ENOSPC' : undefined)),
    pauses: [1, 1],
  });
  shop.people.say(BUYER, 'hello');
  await expect(shop.running).rejects.toMatchObject({ why: 'disk', message: expect.stringMatching(/ENOSPC/) });
  expect(said(shop, BUYER)).toEqual([]);
  expect(shop.room.read().updates).toHaveLength(1);
});

test('a disk that is full for a moment costs a moment, nothing else', async () => {
  let full = 2;
  const shop = await running({
    disk: (folder) => badDisk(folder, (call) => (call === 'write' && full-- > 0 ? 'ENOSPC' : undefined)),
    pauses: [5, 5, 5],
  });
  shop.people.say(BUYER, 'hello');
  await until(() => said(shop, BUYER).length === 1);
  expect(shop.store.read().desk.notes).toEqual(['hello']);
});

test('stopping confirms what was handled and nothing else', async () => {
  const shop = await running();
  shop.people.say(BUYER, 'one');
  await until(() => said(shop, BUYER).length === 1);
  shop.ears.stop();
  await shop.running;
  expect(shop.room.read().updates).toEqual([]);
  shop.people.say(BUYER, 'two');
  expect(shop.room.read().updates).toHaveLength(1);
});

test('an update whose write is slow is not confirmed by a stop in the middle of it', async () => {
  let goOn: () => void = () => {};
  const slow = new Promise<void>((resolve) => (goOn = resolve));
  let writes = 0;
  const shop = await running({
    disk: (folder) => {
      const disk = badDisk(folder, () => undefined);
      return { ...disk, sync: async () => ((writes += 1) === 1 ? slow.then(() => disk.sync()) : disk.sync()) };
    },
  });
  shop.people.say(BUYER, 'hello');
  await until(() => writes === 1);
  shop.ears.stop();
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(shop.room.read().updates).toHaveLength(1);
  goOn();
  await shop.running;
  expect(shop.room.read().updates).toEqual([]);
  expect(shop.store.read().desk.notes).toEqual(['hello']);
});

test('a platform that no longer answers does not hold up a stop', async () => {
  let isDeaf = false;
  const shop = await running({ fault: (method) => (isDeaf && method === 'getUpdates' ? 'hang' : undefined) });
  shop.people.say(BUYER, 'one');
  await until(() => said(shop, BUYER).length === 1);
  isDeaf = true;
  shop.ears.stop();
  const ended = await Promise.race([shop.running.then(() => 'ended'), new Promise((late) => setTimeout(late, 10_000))]);
  expect(ended).toBe('ended');
  expect(shop.store.read().desk.notes).toEqual(['one']);
});
