import { expect } from 'vitest';
import type { Desk } from '../../src/domain/desk/state.ts';
import { MAKER, type Story } from '../stories/story.ts';

/** How many taps were answered with a refusal so far. */
export const refusals = ({ rehearsal }: Story): number =>
  rehearsal.calls.filter(({ method, payload }) => method === 'answerCallbackQuery' && payload['text'] === NOT_YOURS)
    .length;
const NOT_YOURS = 'There is no such order of yours.';

/** A minute after the last act, so that it is never turned away for its haste alone. */
export async function unhurried(story: Story, act: () => Promise<unknown>): Promise<void> {
  await story.later(1);
  await act();
}

/** The maker works for a while; then somebody else sends each button that the maker was ever shown, and is refused each time. */
export async function replaysTheMaker(story: Story, guarded: (desk: Desk) => unknown): Promise<void> {
  const { maker, other, desk, rehearsal } = story;
  await maker.says('bench');
  await maker.taps('Pour');
  for (const words of ['queue', 'stock', 'timers', 'digest', 'K-1001']) await maker.says(words);
  const shown = new Set(
    rehearsal.calls
      .filter(({ payload }) => Number(payload['chat_id']) === MAKER)
      .flatMap(({ payload }) => [...JSON.stringify(payload).matchAll(/callback_data\\*":\\*"([^"\\]+)/g)])
      .map(([, data = '']) => data),
  );
  // Anyone may look at an order by its number, and is told that it is none of theirs.
  for (const data of shown) if (data.startsWith('order|')) shown.delete(data);
  expect(shown.size).toBeGreaterThan(8);
  const before = guarded(desk());
  const told = refusals(story);
  for (const data of shown) {
    const seen = other.chat().length;
    await unhurried(story, () => other.forges(data));
    expect(guarded(desk()), data).toEqual(before);
    expect(other.chat().length, data).toBe(seen);
  }
  await expect.poll(() => refusals(story) - told).toBe(shown.size);
}
