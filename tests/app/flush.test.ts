import { expect, test } from 'vitest';
import type { Chat } from '../../src/app/chat.ts';
import { Dispatcher, SLOW_MS } from '../../src/app/flush.ts';
import type { Letter, LetterDraft } from '../../src/app/letter.ts';
import { WAITING_MOST, queue } from '../../src/app/outbox.ts';
import type { Outcome } from '../../src/app/outcome.ts';
import { memoryStore } from './memoryStore.ts';
import { type ToyBook, emptyToy, letter } from './toyShop.ts';

type Answer = Outcome | Promise<Outcome>;

/** A dispatcher whose chat answers as the test says; time passes only when `pass` is called. */
function office(
  answer: (call: string, letter: Letter) => Answer | undefined = () => undefined,
  first: ToyBook = emptyToy,
) {
  const store = memoryStore(first);
  const calls: string[] = [];
  const lost: number[] = [];
  const halts: Error[] = [];
  let now = 1_000_000;
  let timers: Readonly<{ at: number; run: () => void }>[] = [];
  let message = 100;
  const reply = async (call: string, letter: Letter): Promise<Outcome> => {
    calls.push(call);
    return (await answer(call, letter)) ?? { is: 'sent', message: (message += 1), picture: letter.picture !== null };
  };
  const chat: Chat = {
    send: (letter) => reply(`send ${letter.to} ${letter.text}`, letter),
    edit: (letter, card) => reply(`edit ${letter.to} ${card.message} ${letter.text}`, letter),
    strip: async (to, old) => (calls.push(`strip ${to} ${old}`), { is: 'same' }),
  };
  const after = (ms: number, run: () => void) => {
    const timer = { at: now + ms, run };
    timers.push(timer);
    return () => void (timers = timers.filter((other) => other !== timer));
  };
  const dispatcher = new Dispatcher({
    store,
    chat,
    clock: () => now,
    after,
    lost: async (person) => lost.push(person),
    halt: (why) => halts.push(why),
    log: () => {},
  });
  const settle = async () => {
    for (let turn = 0; turn < 50; turn += 1) await Promise.resolve();
  };
  const post = async (...drafts: LetterDraft[]) => {
    await store.change((book) => ({ next: queue(book, drafts, `${Math.random()}`, now), result: null }));
    dispatcher.wake();
    await settle();
  };
  const pass = async (ms: number) => {
    now += ms;
    const due = timers.filter(({ at }) => at <= now);
    timers = timers.filter(({ at }) => at > now);
    for (const { run } of due) run();
    await settle();
  };
  return { store, calls, lost, halts, dispatcher, post, pass, settle, timers: () => timers.length };
}

test('letters go out in order, and leave the outbox when they are sent', async () => {
  const { store, calls, post } = office();
  await post(letter(1, 'a'), letter(1, 'b'), letter(1, 'c'));
  expect(calls).toEqual(['send 1 a', 'send 1 b', 'send 1 c']);
  expect(store.read().outbox).toEqual([]);
});

test('a letter is marked as going out, on disk, before its call', async () => {
  const marks: unknown[] = [];
  const shop = office(
    (_call, { key }) => void marks.push(shop.store.read().outbox.find((row) => row.key === key)?.sendingSince),
  );
  await shop.post(letter(1, 'a'), letter(1, 'b'), letter(2, 'c'));
  expect(marks).toEqual([1_000_000, 1_000_000, 1_000_000]);
});

test('a chat that hangs delays nobody else', async () => {
  const { calls, post, pass } = office((call) => (call === 'send 1 a' ? new Promise<Outcome>(() => {}) : undefined));
  await post(letter(1, 'a'), letter(1, 'b'), letter(2, 'c'), letter(2, 'd'), letter(3, 'e'));
  expect(calls).toEqual(['send 1 a']);
  await pass(SLOW_MS);
  expect(calls).toEqual(['send 1 a', 'send 2 c', 'send 3 e', 'send 2 d']);
});

test('while the platform is quick, one message at a time is under way, so a crash leaves one in doubt', async () => {
  let under = 0;
  let most = 0;
  const { calls, post, settle } = office(async () => {
    most = Math.max(most, (under += 1));
    await Promise.resolve();
    under -= 1;
    return { is: 'sent', message: 5, picture: false };
  });
  await post(...[1, 2, 3, 1, 2, 3].map((to, index) => letter(to, `${index}`)));
  await settle();
  expect([calls.length, most]).toEqual([6, 1]);
});

test('when the platform says wait, everybody waits, and then goes on in order', async () => {
  let told = false;
  const { calls, post, pass } = office((call) => {
    if (call !== 'send 1 a' || told) return undefined;
    told = true;
    return { is: 'wait', seconds: 5 };
  });
  await post(letter(1, 'a'), letter(1, 'b'));
  await post(letter(2, 'c'));
  expect(calls).toEqual(['send 1 a']);
  await pass(4900);
  expect(calls).toHaveLength(1);
  await pass(200);
  expect(calls.filter((call) => call.startsWith('send 1'))).toEqual(['send 1 a', 'send 1 a', 'send 1 b']);
  expect(calls.filter((call) => call.startsWith('send 2'))).toEqual(['send 2 c']);
});

test('without a connection a letter is tried until there is one, later ones of the chat behind it', async () => {
  let down = true;
  const { calls, store, post, pass } = office(() => (down ? { is: 'unsent' } : undefined));
  await post(letter(1, 'a'), letter(1, 'b'));
  for (let minute = 0; minute < 30; minute += 1) await pass(60_000);
  expect(calls.every((call) => call === 'send 1 a')).toBe(true);
  down = false;
  await pass(300_000);
  expect(calls.slice(-2)).toEqual(['send 1 a', 'send 1 b']);
  expect(store.read()).toMatchObject({ outbox: [], dead: [] });
});

test('what may have arrived is sent once more, then put aside for the maker to hear of', async () => {
  const { calls, store, post, pass } = office(() => ({ is: 'unknown' }));
  await post(letter(1, 'a'));
  for (let minute = 0; minute < 10; minute += 1) await pass(60_000);
  expect(calls).toEqual(['send 1 a', 'send 1 a']);
  expect(store.read()).toMatchObject({ outbox: [], dead: [{ letter: { text: 'a' }, why: 'unknown' }] });
});

test('someone who cannot be reached: what waited is put aside, the shop is told, others go on', async () => {
  const { calls, lost, store, post } = office((call) =>
    call.startsWith('send 1') ? { is: 'unreachable' } : undefined,
  );
  await post(letter(1, 'a'), letter(1, 'b'), letter(2, 'c'));
  expect(calls).toEqual(['send 1 a', 'send 2 c']);
  expect(lost).toEqual([1]);
  expect(store.read().dead.map(({ letter }) => letter.text)).toEqual(['a', 'b']);
});

test('a letter that the platform will not take goes out once more as bare words, and is kept to be looked at', async () => {
  const { calls, store, post } = office((_call, { rows }) =>
    rows.length > 0 ? { is: 'refused', code: 400 } : undefined,
  );
  await post(letter(1, 'a', { rows: [[{ label: 'x', data: 'y' }]] }), letter(1, 'b'));
  expect(calls).toEqual(['send 1 a', 'send 1 a', 'send 1 b']);
  expect(store.read().dead).toMatchObject([{ why: 'refused', letter: { text: 'a' } }]);
});

test('when the token is refused the program is asked to stop, and the letter stays', async () => {
  const { calls, halts, store, post } = office(() => ({ is: 'revoked' }));
  await post(letter(1, 'a'), letter(1, 'b'));
  await post(letter(2, 'c'));
  expect(calls).toEqual(['send 1 a']);
  expect(halts).toMatchObject([{ why: 'token' }]);
  expect(store.read().outbox.map(({ text }) => text)).toEqual(['a', 'b', 'c']);
});

const card = (text: string, more: Partial<LetterDraft> = {}) =>
  letter(1, text, { slot: 'draft', place: 'over', ...more });

test('a card is written over the older one of its slot', async () => {
  const { calls, post } = office();
  await post(card('a'));
  await post(card('b'), letter(1, 'c'), letter(1, 'd', { slot: 'other', place: 'over' }));
  expect(calls).toEqual(['send 1 a', 'edit 1 101 b', 'send 1 c', 'send 1 d']);
});

test('a card that is sent below takes the buttons off the older one', async () => {
  const { calls, post } = office();
  await post(card('a'));
  await post(card('b', { place: 'below' }));
  await post(card('c'));
  expect(calls).toEqual(['send 1 a', 'send 1 b', 'strip 1 101', 'edit 1 102 c']);
});

test('when the older card was deleted a new one is sent, and followed from then on', async () => {
  const { calls, post } = office((call) => (call.startsWith('edit 1 101') ? { is: 'gone' } : undefined));
  await post(card('a'));
  await post(card('b'));
  await post(card('c'));
  expect(calls).toEqual(['send 1 a', 'edit 1 101 b', 'send 1 b', 'edit 1 102 c']);
});

const PICTURE = { kind: 'head', spec: {}, caption: [] } as const;

test('a text can become a picture in place; a picture cannot become a text, so that is sent below', async () => {
  const { calls, post } = office();
  await post(card('a'));
  await post(card('b', { picture: { ...PICTURE, caption: [] } }));
  await post(card('c'));
  expect(calls).toEqual(['send 1 a', 'edit 1 101 b', 'send 1 c', 'strip 1 102']);
});

test('after a crash what was going out goes out again, in order', async () => {
  const before = office(() => new Promise<Outcome>(() => {}));
  await before.post(letter(1, 'a'), letter(1, 'b'));
  const next = office(undefined, before.store.read());
  await next.dispatcher.recover();
  next.dispatcher.wake();
  await next.settle();
  expect(next.calls).toEqual(['send 1 a', 'send 1 b']);
});

test('a letter that is in doubt at crash after crash is put aside at last', async () => {
  let book: ToyBook = emptyToy;
  let crashes = 0;
  for (; book.dead.length === 0; crashes += 1) {
    const shop = office(() => new Promise<Outcome>(() => {}), book);
    await shop.dispatcher.recover();
    if (crashes === 0) await shop.post(letter(1, 'poison'));
    shop.dispatcher.wake();
    await shop.settle();
    book = shop.store.read();
  }
  expect(crashes).toBe(6);
  expect(book.outbox).toEqual([]);
});

test('stopping waits for the call that is out, records it, and begins no other', async () => {
  let arrive: (outcome: Outcome) => void = () => {};
  const { calls, store, dispatcher, post, timers } = office(
    () => new Promise<Outcome>((resolve) => (arrive = resolve)),
  );
  await post(letter(1, 'a'), letter(1, 'b'));
  const stopped = dispatcher.stop();
  arrive({ is: 'sent', message: 5, picture: false });
  await stopped;
  expect(calls).toEqual(['send 1 a']);
  expect(store.read().outbox).toMatchObject([{ text: 'b', sendingSince: null }]);
  expect(timers()).toBe(0);
});

test('a letter that was marked already is not counted as tried twice', async () => {
  const attempts: number[] = [];
  const { post } = office((_call, letter) => void attempts.push(letter.attempts));
  await post(letter(1, 'a'), letter(2, 'b'), letter(1, 'c'), letter(2, 'd'), letter(3, 'e'));
  expect(attempts).toEqual([1, 1, 1, 1, 1]);
});

test('when the book cannot be written the program is asked to stop', async () => {
  const { halts, store, post } = office();
  const failing = post(letter(1, 'a'), letter(1, 'b'));
  store.failNext(9);
  await failing;
  expect(halts).toHaveLength(1);
});

test('for a chat that is not read, old answers make room for new ones; nothing else is dropped', async () => {
  const { store, post } = office(() => new Promise<Outcome>(() => {}));
  await post(letter(1, 'order K-1', { kind: 'confirmation' }));
  for (let count = 0; count < WAITING_MOST + 20; count += 1) await post(letter(1, `a${count}`));
  const texts = store.read().outbox.map(({ text }) => text);
  expect(texts).toHaveLength(WAITING_MOST);
  expect(texts[0]).toBe('order K-1');
  expect(texts.at(-1)).toBe(`a${WAITING_MOST + 19}`);
});
