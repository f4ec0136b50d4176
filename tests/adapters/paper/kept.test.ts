import { expect, test } from 'vitest';
import { kept } from '../../../src/adapters/paper/kept.ts';

test('what was drawn lately is not drawn again, and what was asked for longest ago is forgotten first', () => {
  const drawn: string[] = [];
  const draw = kept((of: Readonly<{ head: string }>) => (drawn.push(of.head), of.head.toUpperCase()), 2);
  for (const head of ['ball', 'swim', 'ball', 'football', 'ball', 'swim'])
    expect(draw({ head })).toBe(head.toUpperCase());
  expect(drawn).toEqual(['ball', 'swim', 'football', 'swim']);
});
