import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { startTicking } from '../../../src/adapters/cron/tick.ts';

beforeEach(() => vi.useFakeTimers({ now: Date.UTC(2026, 9, 25, 0, 58, 30) }));
afterEach(() => vi.useRealTimers());

test('it ticks at once, then once a minute, also through the hour that a clock change repeats', async () => {
  let ticks = 0;
  const ticking = await startTicking(
    async () => void (ticks += 1),
    () => {},
  );
  expect(ticks).toBe(1);
  await vi.advanceTimersByTimeAsync(120 * 60_000);
  expect(ticks).toBe(121);
  await ticking.stop();
  await vi.advanceTimersByTimeAsync(5 * 60_000);
  expect(ticks).toBe(121);
});

test('a tick that takes long is not begun a second time meanwhile', async () => {
  let running = 0;
  let most = 0;
  const slow = async () => {
    most = Math.max(most, (running += 1));
    await new Promise((resolve) => setTimeout(resolve, 150_000));
    running -= 1;
  };
  const started = startTicking(slow, () => {});
  await vi.advanceTimersByTimeAsync(160_000);
  const ticking = await started;
  await vi.advanceTimersByTimeAsync(20 * 60_000);
  expect(most).toBe(1);
  await ticking.stop();
});

test('a tick that fails is logged by its code, and the next one comes', async () => {
  const logged: unknown[] = [];
  let ticks = 0;
  const fails = async () => {
    ticks += 1;
    throw Object.assign(new Error('private words'), { code: 'ENOSPC' });
  };
  const ticking = await startTicking(fails, (event, facts) => logged.push([event, facts]));
  await vi.advanceTimersByTimeAsync(60_000);
  expect(ticks).toBe(2);
  expect(logged[0]).toEqual(['tick-failed', { code: 'ENOSPC' }]);
  await ticking.stop();
});
