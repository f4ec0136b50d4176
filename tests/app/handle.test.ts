import { describe, expect, test } from 'vitest';
import { emptyBook } from '../../src/app/book.ts';
import { putAway } from '../../src/app/closing.ts';
import { type Rules, handle } from '../../src/app/handle.ts';
import { SEEN_MOST } from '../../src/app/memory.ts';
import { HOUR } from '../../src/domain/craft/time.ts';
import { memoryStore } from './memoryStore.ts';
import { type Toy, emptyToy, letter, toyRules } from './toyShop.ts';

const BY = { id: 7, name: 'Ann', language: null };
const said = (text: string) => ({ type: 'said', by: BY, text }) as const;

function shop(rules: Rules<Toy> = toyRules) {
  const store = memoryStore(emptyToy);
  const clock = { now: 1_000_000 };
  return { store, clock, take: handle(store, rules, () => clock.now) };
}

test('the effect, the letters and the number of an update are one write', async () => {
  const { store, take } = shop();
  await take({ id: 90, command: said('hello') });
  expect(store.writes()).toBe(1);
  expect(store.read()).toMatchObject({
    desk: { notes: ['hello'] },
    seen: [{ id: 90 }],
    outbox: [{ key: '90:1', to: 7 }],
  });
});

test('an update has its effect once, however often it comes within 48 hours', async () => {
  const { store, clock, take } = shop();
  await take({ id: 90, command: said('hello') });
  clock.now += 47 * HOUR;
  expect(await take({ id: 90, command: said('hello') })).toMatchObject({ repeated: true, toast: null });
  expect(store.read().desk.notes).toEqual(['hello']);
});

test('after 48 hours its number is forgotten, for the platform begins anew with numbers after a quiet week', async () => {
  const { store, clock, take } = shop();
  await take({ id: 90, command: said('hello') });
  clock.now += 49 * HOUR;
  await take({ id: 5, command: said('again') });
  expect(store.read().seen.map(({ id }) => id)).toEqual([5]);
  expect(await take({ id: 90, command: said('by chance') })).toMatchObject({ repeated: false });
});

test('a lower number than the last is no reason to pass an update over', async () => {
  const { take } = shop();
  await take({ id: 900, command: said('hello') });
  expect(await take({ id: 3, command: said('hello again') })).toMatchObject({ repeated: false });
});

test('the list of numbers does not grow without end', async () => {
  const { store, take } = shop();
  for (let id = 0; id < SEEN_MOST + 10; id += 1)
    await take({ id, command: { type: 'reach', by: BY, reachable: true } });
  expect(store.read().seen).toHaveLength(SEEN_MOST);
});

test('when the write fails nothing has happened, and the update can come again', async () => {
  const { store, take } = shop();
  store.failNext(1);
  await expect(take({ id: 90, command: said('hello') })).rejects.toThrow(/could not be written/);
  expect(store.read()).toEqual(emptyToy);
  expect(await take({ id: 90, command: said('hello') })).toMatchObject({ repeated: false });
});

test('rules that fall over change nothing but that the update is done with', async () => {
  const { store, take } = shop();
  expect(await take({ id: 90, command: said('fall over') })).toMatchObject({ fault: expect.any(TypeError) });
  expect(store.read()).toEqual({ ...emptyToy, seen: [{ id: 90, at: 1_000_000 }] });
});

test('a tick that changes nothing writes nothing', async () => {
  const { store, take } = shop((desk) => ({ desk, letters: [], toast: null, closed: [] }));
  await take({ id: null, command: { type: 'tick' } });
  expect(store.writes()).toBe(0);
});

describe('a letter with a key of its own', () => {
  test('is queued once, whether the first is waiting or has gone out', async () => {
    const { store, take } = shop();
    await take({ id: null, command: { type: 'tick' } });
    await take({ id: null, command: { type: 'tick' } });
    expect(store.read().outbox.map(({ key }) => key)).toEqual(['digest/2026-11-25']);
    await store.change((book) => ({ next: { ...book, outbox: [] }, result: null }));
    await take({ id: null, command: { type: 'tick' } });
    expect(store.read().outbox).toEqual([]);
  });

  test('is queued once also when one turn asks for it twice', async () => {
    const twice = [letter(1, 'a', { key: 'k' }), letter(1, 'b', { key: 'k' })];
    const { store, take } = shop((desk) => ({ desk, letters: twice, toast: null, closed: [] }));
    await take({ id: 1, command: said('x') });
    expect(store.read().outbox.map(({ text }) => text)).toEqual(['a']);
  });
});

test('letters that no update caused have unlike keys, even at the same instant', async () => {
  const { store, take } = shop((desk) => ({ desk, letters: [letter(1, 'a')], toast: null, closed: [] }));
  await take({ id: null, command: { type: 'tick' } });
  await take({ id: null, command: { type: 'tick' } });
  expect(new Set(store.read().outbox.map(({ key }) => key)).size).toBe(2);
});

test('someone who was found unreachable is not written to about it', async () => {
  const { store, take } = shop((desk) => ({
    desk,
    letters: [letter(7, 'gone?'), letter(8, 'look')],
    toast: null,
    closed: [],
  }));
  await take({ id: null, command: { type: 'reach', by: BY, reachable: false } });
  expect(store.read().outbox.map(({ to }) => to)).toEqual([8]);
});

describe('what could not be delivered', () => {
  const dead = (text: string, kind: 'news' | 'answer' | 'reminder', why = 'unreachable') => ({
    letter: { ...letter(7, text, { kind }), key: text, queuedAt: 0, notBefore: 9, attempts: 3, sendingSince: null },
    why,
    at: 1_000_000,
  });
  const withDead = () => {
    const { store, take } = shop();
    const rows = [
      dead('an order', 'news'),
      dead('what he asked', 'answer'),
      dead('the oven', 'reminder'),
      dead('odd', 'news', 'refused'),
    ];
    return { store, take, bury: () => store.change((book) => ({ next: { ...book, dead: rows }, result: null })) };
  };

  test('goes out when its reader writes again, before the answer; old answers and reminders do not', async () => {
    const { store, take, bury } = withDead();
    await bury();
    await take({ id: 91, command: said('hello') });
    expect(store.read().outbox.map(({ text, attempts }) => [text, attempts])).toEqual([
      ['an order', 1],
      [expect.any(String), 0],
    ]);
    expect(store.read().dead.map(({ letter: { text } }) => text)).toEqual(['what he asked', 'the oven', 'odd']);
  });

  test('stays where it is when someone else writes, or when its reader blocks the bot', async () => {
    const { store, take, bury } = withDead();
    await bury();
    await take({ id: 92, command: { ...said('hello'), by: { ...BY, id: 8 } } });
    await take({ id: 93, command: { type: 'reach', by: BY, reachable: false } });
    expect(store.read().dead).toHaveLength(4);
  });
});

test('the rules are shown what could not be delivered', async () => {
  const seen: unknown[] = [];
  const { store, take } = shop((desk, _command, _now, undelivered) => {
    seen.push(undelivered.length);
    return { desk, letters: [], toast: null, closed: [] };
  });
  const dead = {
    letter: { ...letter(1, 'a'), key: 'k', queuedAt: 0, notBefore: 0, attempts: 1, sendingSince: null },
    why: 'refused',
    at: 5,
  };
  await store.change((book) => ({ next: { ...book, dead: [dead] }, result: null }));
  await take({ id: 1, command: said('x') });
  expect(seen).toEqual([1]);
});

describe('a finished order', () => {
  const archive = () => {
    const rows = new Map<string, unknown>();
    return {
      rows,
      append: async (closed: readonly Readonly<{ id: string }>[]) => closed.forEach((row) => rows.set(row.id, row)),
      read: async () => [],
      months: async () => [],
      rewrite: async () => {},
    };
  };

  test('waits in the book until it rests in the archive', async () => {
    const { store, take } = shop();
    const shelf = archive();
    await take({ id: 1, command: said('close K-1') });
    await take({ id: 2, command: said('close K-1') });
    expect(store.read().closing.map(({ id }) => id)).toEqual(['K-1']);
    await putAway(store, shelf);
    expect([...shelf.rows.keys()]).toEqual(['K-1']);
    expect(store.read().closing).toEqual([]);
  });

  test('is neither lost nor there twice when a cut comes between archive and book', async () => {
    const { store, take } = shop();
    const shelf = archive();
    await take({ id: 1, command: said('close K-1') });
    store.failNext(1);
    await expect(putAway(store, shelf)).rejects.toThrow(/could not be written/);
    expect(store.read().closing).toHaveLength(1);
    await putAway(store, shelf);
    expect([shelf.rows.size, store.read().closing.length]).toEqual([1, 0]);
  });

  test('stays in the book while the archive cannot be written', async () => {
    const { store, take } = shop();
    await take({ id: 1, command: said('close K-1') });
    const full = { ...archive(), append: async () => Promise.reject(new Error('ENOSPC')) };
    await expect(putAway(store, full)).rejects.toThrow(/ENOSPC/);
    expect(store.read().closing).toHaveLength(1);
  });
});

test('an empty book is a book', () => expect(emptyBook({ notes: [], lost: [] })).toEqual(emptyToy));
