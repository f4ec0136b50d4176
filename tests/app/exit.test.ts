import { expect, test } from 'vitest';
import { EXITS, Halt, exitCode } from '../../src/app/exit.ts';

test('each cause has a number of its own', () => {
  const codes = Object.values(EXITS).map(({ code }) => code);
  expect(new Set(codes).size).toBe(codes.length);
});

test.each([
  [new Halt('settings', 'x'), 2],
  [new Halt('taken', 'x'), 3],
  [new Halt('token', 'x'), 4],
  [new Halt('rival', 'x'), 5],
  [new Halt('disk', 'x'), 6],
  [new TypeError('x'), 1],
  ['thrown', 1],
])('%s ends the program with %i', (error, code) => expect(exitCode(error)).toBe(code));
