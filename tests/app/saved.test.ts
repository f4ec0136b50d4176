import { expect, test } from 'vitest';
import { z } from 'zod';
import { upgraded, versionOf } from '../../src/app/saved.ts';

const VERSIONS = {
  steps: [
    (old: unknown) => ({ names: [(old as { name: string }).name] }),
    (old: unknown) => ({ ...(old as object), count: 0 }),
  ],
  schema: z.strictObject({ names: z.array(z.string()), count: z.number() }),
};

test.each([
  [0, { name: 'Ann' }],
  [1, { names: ['Ann'] }],
  [2, { names: ['Ann'], count: 0 }],
])('what version %i stored becomes what is written today', (version, stored) => {
  expect(upgraded(VERSIONS, version, stored)).toEqual({ ok: true, value: { names: ['Ann'], count: 0 } });
});

test('today is the number of steps there are', () => expect(versionOf(VERSIONS)).toBe(2));

test('what a newer version stored is refused', () => {
  expect(upgraded(VERSIONS, 3, {})).toMatchObject({
    ok: false,
    why: 'newer',
    says: expect.stringMatching(/Update jigwright/),
  });
});

test('what holds more than is known today was stored by a newer one, though under the same version', () => {
  expect(upgraded(VERSIONS, 2, { names: [], count: 0, tips: 1 })).toMatchObject({ ok: false, why: 'newer' });
  expect(upgraded(VERSIONS, 2, { names: [], tips: 1 })).toMatchObject({ ok: false, why: 'unreadable' });
});

test('what does not fit is refused by its place, and is not repeated', () => {
  const found = upgraded(VERSIONS, 2, { names: ['Ann', 12], count: 'secret street' });
  expect(found).toMatchObject({
    ok: false,
    why: 'unreadable',
    says: expect.stringMatching(/at names\.1 \(2 faults\)/),
  });
  expect(JSON.stringify(found)).not.toMatch(/secret/);
});

test('a step that falls over what is stored refuses it', () => {
  expect(upgraded(VERSIONS, 0, null)).toMatchObject({ ok: false, why: 'unreadable' });
});
