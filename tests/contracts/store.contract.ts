import { expect, test } from 'vitest';
import { NotRecorded, type Store } from '../../src/app/store.ts';

export type Count = Readonly<{ count: number }>;
export type Opened = Readonly<{
  store: Store<Count>;
  /** Makes the next `count` writes fail. */
  failNext: (count: number) => void;
  /** What someone finds who opens it after this one. */
  reopened: () => Promise<Count>;
}>;

/** What every store promises, whatever it is made of. `open` begins at a count of 0. */
export function storeContract(name: string, open: () => Promise<Opened>): void {
  const add = (value: Count) => ({ next: { count: value.count + 1 }, result: value.count + 1 });

  test(`${name}: what a change records is read, and is there when it is opened again`, async () => {
    const { store, reopened } = await open();
    expect(await store.change(add)).toBe(1);
    expect(store.read()).toEqual({ count: 1 });
    expect(await reopened()).toEqual({ count: 1 });
  });

  test(`${name}: a step that throws records nothing and stops nobody`, async () => {
    const { store, reopened } = await open();
    const torn = store.change(() => {
      throw new TypeError('halfway');
    });
    const [first, second] = await Promise.allSettled([torn, store.change(add)]);
    expect([first.status, second.status]).toEqual(['rejected', 'fulfilled']);
    expect(store.read()).toEqual({ count: 1 });
    expect(await reopened()).toEqual({ count: 1 });
  });

  test(`${name}: a write that fails changes nothing, and the next one goes on from there`, async () => {
    const { store, failNext, reopened } = await open();
    await store.change(add);
    failNext(1);
    await expect(store.change(add)).rejects.toBeInstanceOf(NotRecorded);
    expect(store.read()).toEqual({ count: 1 });
    expect(await reopened()).toEqual({ count: 1 });
    expect(await store.change(add)).toBe(2);
  });

  test(`${name}: a hundred changes that come together all count, each once`, async () => {
    const { store, reopened } = await open();
    const results = await Promise.all(Array.from({ length: 100 }, () => store.change(add)));
    expect(results).toEqual(Array.from({ length: 100 }, (_, index) => index + 1));
    expect(await reopened()).toEqual({ count: 100 });
  });

  test(`${name}: what was told is what is kept, also when some of many writes fail`, async () => {
    const { store, failNext, reopened } = await open();
    failNext(2);
    const told: number[] = [];
    for (let round = 0; round < 5; round += 1) {
      const results = await Promise.allSettled([store.change(add), store.change(add), store.change(add)]);
      told.push(...results.flatMap((result) => (result.status === 'fulfilled' ? [result.value] : [])));
    }
    expect(told).toEqual(Array.from({ length: told.length }, (_, index) => index + 1));
    expect(await reopened()).toEqual({ count: told.length });
  });

  test(`${name}: a change that changes nothing is answered without a write`, async () => {
    const { store, failNext } = await open();
    failNext(1);
    expect(await store.change((value) => ({ next: value, result: 'same' }))).toBe('same');
  });
}
