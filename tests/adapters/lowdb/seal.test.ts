import { expect, test } from 'vitest';
import { open, seal } from '../../../src/adapters/lowdb/seal.ts';
import { KEY, NOON } from './counting.ts';

const LABEL = { format: 'jigwright book', version: 3, serial: 12, writtenAt: NOON };
const JSON_TEXT = JSON.stringify({ name: 'Ann Möller', address: '12 Pine St' });

test('what is sealed comes back with its label', () => {
  expect(open(seal(JSON_TEXT, LABEL, KEY), KEY)).toEqual({ ok: true, label: LABEL, json: JSON_TEXT });
});

test('nothing of what is sealed can be read, and sealing the same twice does not look the same', () => {
  const sealed = seal(JSON_TEXT, LABEL, KEY);
  expect(sealed.toString('latin1')).not.toMatch(/Ann M|Pine St|address/);
  expect(sealed.equals(seal(JSON_TEXT, LABEL, KEY))).toBe(false);
});

test('another key is told from damage', () => {
  expect(open(seal(JSON_TEXT, LABEL, KEY), Buffer.alloc(32, 8))).toEqual({ ok: false, why: 'key', label: LABEL });
});

test('no single flipped bit goes unnoticed', () => {
  const sealed = seal(JSON_TEXT, LABEL, KEY);
  for (let bit = 0; bit < sealed.length * 8; bit += 1) {
    const bad = Buffer.from(sealed);
    bad[bit >> 3] = (bad[bit >> 3] ?? 0) ^ (1 << (bit & 7));
    expect(open(bad, KEY).ok).toBe(false);
  }
});

test('a file that was cut off anywhere is noticed', () => {
  const sealed = seal(JSON_TEXT, LABEL, KEY);
  for (let length = 0; length < sealed.length; length += 1)
    expect(open(sealed.subarray(0, length), KEY).ok).toBe(false);
  expect(open(Buffer.concat([sealed, Buffer.alloc(1)]), KEY).ok).toBe(false);
});

test('a label cannot be changed: an old book does not pass for a new one', () => {
  const text = seal(JSON_TEXT, LABEL, KEY).toString('latin1').replace('"serial":12', '"serial":13');
  expect(open(Buffer.from(text, 'latin1'), KEY)).toMatchObject({ ok: false, why: 'damaged' });
});
