import { expect, test } from 'vitest';
import { dailyBackup } from '../../src/app/dailyBackup.ts';
import { ailments, healthOf } from '../../src/app/health.ts';
import { queue } from '../../src/app/outbox.ts';
import { memoryStore } from './memoryStore.ts';
import { emptyToy, letter } from './toyShop.ts';

const NOW = 10_000_000;
const PULSE = { version: '1.0.0', startedAt: NOW - 1_000_000, lastPoll: NOW - 20_000, lastWrite: null };

test('the status counts what waits and says how long', () => {
  const book = queue(queue(emptyToy, [letter(1, 'a')], '1', NOW - 5000), [letter(2, 'b')], '2', NOW - 1000);
  expect(healthOf(book, PULSE, NOW)).toMatchObject({ waiting: 2, waitingMs: 5000, undelivered: 0, lastBackup: null });
});

test('when all is well nothing is said', () => expect(ailments(healthOf(emptyToy, PULSE, NOW), NOW)).toEqual([]));

test.each([
  ['no poll for minutes', 'no-poll', emptyToy, { ...PULSE, lastPoll: NOW - 200_000 }],
  ['never a poll since the start', 'no-poll', emptyToy, { ...PULSE, lastPoll: null }],
  ['letters that do not go out', 'letters-wait', queue(emptyToy, [letter(1, 'a')], '1', NOW - 200_000), PULSE],
] as const)('%s is something to look at', (_, ailment, book, pulse) => {
  expect(ailments(healthOf(book, pulse, NOW), NOW)).toEqual([ailment]);
});

test('a backup goes out once a day, and again the same day only if it did not arrive', async () => {
  const store = memoryStore(emptyToy);
  const sent: string[] = [];
  let down = true;
  const parts = {
    store,
    make: async () => Buffer.from('sealed'),
    send: async (_bytes: Uint8Array, name: string) => {
      if (down) throw new Error('The backup was not sent (unsent).');
      sent.push(name);
    },
  };
  await expect(dailyBackup(parts, '2026-11-25', NOW)).rejects.toThrow(/not sent/);
  down = false;
  for (const day of ['2026-11-25', '2026-11-25', '2026-11-26']) await dailyBackup(parts, day, NOW);
  expect(sent).toEqual(['jigwright-2026-11-25.backup', 'jigwright-2026-11-26.backup']);
  expect(healthOf(store.read(), PULSE, NOW).lastBackup).toBe(NOW);
});
