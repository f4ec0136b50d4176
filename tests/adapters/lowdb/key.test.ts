import { chmodSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readKey } from '../../../src/adapters/lowdb/key.ts';
import { newFolder } from './folder.ts';

const HEX = '0f'.repeat(32);
const silent = (): void => {};

test('at the first start a key is made for its owner only, with a sentence about keeping it', () => {
  const file = join(newFolder(), 'keys', 'key');
  const said: string[] = [];
  const key = readKey({ from: { file }, inUse: null, say: (sentence) => said.push(sentence) });
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readFileSync(file, 'utf8').trim()).toBe(Buffer.from(key).toString('hex'));
  expect(said.join()).toMatch(/Keep a copy of it somewhere else/);
  expect(said.join()).not.toContain(Buffer.from(key).toString('hex'));
  expect(readKey({ from: { file }, inUse: 'book', say: silent })).toEqual(key);
});

test('the key may come from the environment', () => {
  expect(readKey({ from: { hex: HEX }, inUse: 'book', say: silent })).toEqual(Buffer.from(HEX, 'hex'));
});

test('when there is a book but its key is gone, none is made', () => {
  const file = join(newFolder(), 'key');
  expect(() => readKey({ from: { file }, inUse: 'book', say: silent })).toThrow(
    /no key at .*JIGWRIGHT_KEY or KEY_FILE/,
  );
});

test.each([
  ['short', HEX.slice(2)],
  ['long', `${HEX}00`],
  ['not hex', `${HEX.slice(2)}zz`],
  ['empty', ''],
])('a key that is %s is refused, and is not repeated in the sentence', (_, hex) => {
  const file = join(newFolder(), 'key');
  writeFileSync(file, hex, { mode: 0o600 });
  const read = () => readKey({ from: { file }, inUse: 'book', say: silent });
  expect(read).toThrow(/not 64 hex digits/);
  expect(read).not.toThrow(new RegExp(hex.slice(0, 20) || 'never'));
});

test('a key that others can read is refused with the way to mend it', () => {
  const file = join(newFolder(), 'key');
  writeFileSync(file, HEX);
  chmodSync(file, 0o644);
  expect(() => readKey({ from: { file }, inUse: 'book', say: silent })).toThrow(`chmod 600 ${file}`);
});
