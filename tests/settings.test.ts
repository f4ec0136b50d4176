import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSettings } from '../src/settings.ts';

const TOKEN = '123456789:AAF-realistic_but_invented-token-000';
const settings = (env: Record<string, string>) => {
  const read = readSettings(env);
  return read.ok ? read.settings : read.faults;
};

test('with nothing set the program rehearses on this computer', () => {
  expect(settings({})).toMatchObject({
    token: null,
    makers: [],
    dataDir: 'data/live',
    shopFile: 'data/demo-shop.json',
    port: 8080,
  });
  expect(settings({ BOT_TOKEN: '', MAKER_IDS: ' ' })).toMatchObject({ token: null, makers: [] });
});

test('what is set is taken', () => {
  expect(
    settings({
      BOT_TOKEN: TOKEN,
      MAKER_IDS: '12, 34',
      BOT_API_ROOT: 'http://127.0.0.1:81/',
      DATA_DIR: '/d/live',
      PORT: '0',
    }),
  ).toEqual({
    token: TOKEN,
    apiRoot: 'http://127.0.0.1:81',
    makers: [12, 34],
    dataDir: '/d/live',
    shopFile: 'data/demo-shop.json',
    addressDays: 90,
    paymentToken: null,
    backupToChat: false,
    port: 0,
    key: { file: '/d/jigwright.key' },
  });
  expect(settings({ JIGWRIGHT_KEY: 'ab'.repeat(32) })).toMatchObject({ key: { hex: 'ab'.repeat(32) } });
  expect(settings({ KEY_FILE: '/k' })).toMatchObject({ key: { file: '/k' } });
});

test.each([
  ['BOT_TOKEN', 'my token'],
  ['BOT_API_ROOT', 'telegram'],
  ['BOT_API_ROOT', 'file:///etc/passwd'],
  ['MAKER_IDS', '@maker'],
  ['MAKER_IDS', '0'],
  ['MAKER_IDS', '99999999999999999'],
  ['PORT', '80a'],
  ['PORT', '70000'],
  ['JIGWRIGHT_KEY', 'abc'],
])('%s set to %j is refused by name, and what was set is not repeated', (name, value) => {
  const faults = settings({ MAKER_IDS: '12', [name]: value });
  expect(faults).toEqual([expect.stringMatching(new RegExp(`^${name} `))]);
  expect(String(faults)).not.toContain(value === '0' ? 'never' : value);
});

test('all faults are said at once', () => {
  expect(settings({ BOT_TOKEN: 'x', PORT: 'x' })).toEqual([
    expect.stringMatching(/^BOT_TOKEN /),
    expect.stringMatching(/^PORT /),
    expect.stringMatching(/^MAKER_IDS is not set/),
  ]);
});

test('with a token somebody has to be the maker', () => {
  expect(settings({ BOT_TOKEN: TOKEN })).toEqual([expect.stringMatching(/^MAKER_IDS is not set/)]);
});

test('.env.example names every setting that is read, and no other', () => {
  const example = readFileSync(new URL('../.env.example', import.meta.url), 'utf8');
  const source = readFileSync(new URL('../src/settings.ts', import.meta.url), 'utf8');
  const named = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].map((found) => found[1]).sort();
  expect(named(example, /^#([A-Z_]+)=/gm)).toEqual(named(source, /^ {2}([A-Z_]+):/gm));
});
