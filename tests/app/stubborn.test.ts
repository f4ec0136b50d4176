import { expect, test } from 'vitest';
import { stubborn } from '../../src/app/stubborn.ts';
import { memoryStore } from './memoryStore.ts';

const add = (value: Readonly<{ count: number }>) => ({ next: { count: value.count + 1 }, result: value.count + 1 });

function stuck(failures: number) {
  const store = memoryStore({ count: 0 });
  store.failNext(failures);
  const waited: number[] = [];
  const pause = async (ms: number) => void waited.push(ms);
  return { store: stubborn(store, { pauses: [1, 2, 3], pause, log: () => {} }), waited };
}

test('a write that fails for a while is tried until it succeeds, and counts once', async () => {
  const { store, waited } = stuck(3);
  expect(await store.change(add)).toBe(1);
  expect(store.read()).toEqual({ count: 1 });
  expect(waited).toEqual([1, 2, 3]);
});

test('a write that goes on failing ends it with a sentence for the person at the computer', async () => {
  const { store } = stuck(4);
  await expect(store.change(add)).rejects.toMatchObject({
    why: 'disk',
    message: expect.stringMatching(/ENOSPC.*make room/),
  });
  expect(store.read()).toEqual({ count: 0 });
});

test('a bug in a step is not tried again', async () => {
  const { store, waited } = stuck(0);
  const bug = store.change(() => {
    throw new TypeError('a bug');
  });
  await expect(bug).rejects.toThrow(TypeError);
  expect(waited).toEqual([]);
});
