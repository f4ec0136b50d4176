import { expect, test } from 'vitest';
import { LETTER_KINDS, type Letter } from '../../src/app/letter.ts';
import { type Outcome, verdict } from '../../src/app/outcome.ts';
import { HOUR, MINUTE } from '../../src/domain/craft/time.ts';
import { letter } from './toyShop.ts';

const NOW = 1_000_000_000;
const out = (more: Partial<Letter> = {}): Letter => ({
  ...letter(1, 'x', { rows: [[{ label: 'Help', data: 'help|-|0|' }]] }),
  key: '1:1',
  queuedAt: NOW - 4000,
  notBefore: 0,
  attempts: 1,
  sendingSince: NOW,
  ...more,
});
const fate = (outcome: Outcome, more: Partial<Letter> = {}, call: 'send' | 'edit' = 'send') =>
  verdict(out(more), call, outcome, NOW);

test.each<[string, Outcome, string]>([
  ['sent: done', { is: 'sent', message: 5, picture: false }, 'done'],
  ['not modified, or a query too old: what was wanted is so', { is: 'same' }, 'done'],
  ['the message to write over is gone: a new one', { is: 'gone' }, 'anew'],
  ['429: again', { is: 'wait', seconds: 7 }, 'again'],
  ['no connection came about: again', { is: 'unsent' }, 'again'],
  ['400 for another reason: once more without picture and buttons', { is: 'refused', code: 400 }, 'plain'],
  ['403, no such chat, deactivated: this person cannot be written to', { is: 'unreachable' }, 'give-up-chat'],
  ['401: the token is not valid any more', { is: 'revoked' }, 'stop'],
  ['5xx, network, time-out, for the first time: again', { is: 'unknown' }, 'again'],
])('%s', (_, outcome, then) => expect(fate(outcome).do).toBe(then));

test('after a 429 it waits as long as it was told, and that does not count as a try', () => {
  expect(fate({ is: 'wait', seconds: 7 })).toEqual({ do: 'again', notBefore: NOW + 7000, attempts: 0 });
});

test.each(LETTER_KINDS)(
  'a letter of kind "%s" goes out at most once more when nobody knows whether it arrived',
  (kind) => {
    expect(fate({ is: 'unknown' }, { kind, attempts: 1 }).do).toBe('again');
    expect(fate({ is: 'unknown' }, { kind, attempts: 2 }).do).toBe('give-up');
  },
);

test('writing over a message is repeated more often, for a repetition does no harm', () => {
  expect(fate({ is: 'unknown' }, { attempts: 5 }, 'edit').do).toBe('again');
  expect(fate({ is: 'unknown' }, { attempts: 6 }, 'edit').do).toBe('give-up');
});

test('a plain letter that is refused is given up', () => {
  expect(fate({ is: 'refused', code: 400 }, { rows: [], picture: null }).do).toBe('give-up');
});

test.each([
  [0, 1000],
  [4000, 2000],
  [HOUR, 5 * MINUTE],
])('unsent after %i ms, it is tried again in %i ms', (age, wait) => {
  expect(fate({ is: 'unsent' }, { queuedAt: NOW - age })).toEqual({ do: 'again', notBefore: NOW + wait, attempts: 0 });
});

test('what could not be sent for too long is given up: a reminder after half a day, a confirmation after three', () => {
  expect(fate({ is: 'unsent' }, { kind: 'reminder', queuedAt: NOW - 13 * HOUR }).do).toBe('give-up');
  expect(fate({ is: 'unsent' }, { kind: 'confirmation', queuedAt: NOW - 71 * HOUR }).do).toBe('again');
  expect(fate({ is: 'unsent' }, { kind: 'confirmation', queuedAt: NOW - 73 * HOUR }).do).toBe('give-up');
});
