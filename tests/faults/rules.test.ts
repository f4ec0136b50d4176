import { expect, test } from 'vitest';
import { CHAT_RULES } from './chatRules.ts';
import { SECRET_RULES } from './secretRules.ts';

/** The eighteen rules of a bot that strangers may write to. */
const RULES = [...CHAT_RULES, ...SECRET_RULES].toSorted(([a], [b]) => a - b);

test.each(RULES)('rule %i: %s', { timeout: 20_000 }, (_number, _says, prove) => prove());

test('none of the eighteen is left out', () =>
  expect(RULES.map(([number]) => number)).toEqual(Array.from({ length: 18 }, (_, index) => index + 1)));
