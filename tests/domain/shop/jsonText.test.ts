import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readShopText } from '../../../src/domain/shop/faults.ts';
import { textFault } from '../../../src/domain/shop/jsonText.ts';
import { demoText } from './spoiled.ts';

describe('a text that is not JSON is told by line and column', () => {
  test.each([
    ['nothing at all', '', 'line 1, column 1', 'the end of the text'],
    ['only a byte order mark', '\uFEFF', 'line 1, column 1', 'the end of the text'],
    ['a comma before the closing bracket', '{\n  "a": 1,\n}', 'line 3, column 1', '"}"'],
    ['a comma forgotten', '{\r\n  "a": 1\r\n  "b": 2\r\n}', 'line 3, column 3', '"\\"b\\""'],
    ['a colon forgotten', '{ "a" 1 }', 'line 1, column 7', '"1"'],
    ['single quotes', "{ 'a': 1 }", 'line 1, column 3', '"\'a\':"'],
    ['a bare word', '{ "a": yes }', 'line 1, column 8', '"yes"'],
    ['a remark', '{\n  // prices\n}', 'line 2, column 3', '"//"'],
    ['a number that begins with zero', '[007]', 'line 1, column 2', '"007]"'],
    ['a line break inside quotes', '{ "a": "x\ny" }', 'line 1, column 8', '"\\"x"'],
    ['a bracket too few', '{ "a": [1, 2 ', 'line 1, column 14', 'the end of the text'],
    ['a bracket too many', '{}\n}', 'line 2, column 1', '"}"'],
    ['a name said twice', '{ "a": { "b": 1,\n"\\u0062": 2 } }', 'line 2, column 1', '"\\"\\\\u0062\\""'],
  ])('%s', (_title, text, path, found) => {
    const read = readShopText(text);
    expect(read.ok ? [] : read.faults).toEqual([{ path, found, allowed: expect.stringMatching(/\w/) }]);
  });

  test('a byte order mark before a good file is no fault', () => {
    expect(readShopText(`\uFEFF${demoText}`).ok).toBe(true);
  });

  test('the same name in two groups is no fault', () => {
    expect(textFault('[{"a":{"a":1}},{"a":2}]')).toBeUndefined();
  });

  test('brackets a hundred thousand deep are no trouble', () => {
    expect(textFault('['.repeat(100_000))?.path).toBe('line 1, column 100001');
  });
});

describe('the reader of JSON agrees with JSON.parse', () => {
  const isJson = (text: string) => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };
  const isTwice = (text: string) => textFault(text)?.allowed.startsWith('each name only once') ?? false;

  test('on whatever JSON.stringify writes', () => {
    fc.assert(
      fc.property(fc.json(), fc.nat(3), (json, indent) => {
        expect(textFault(JSON.stringify(JSON.parse(json), undefined, indent))).toBeUndefined();
      }),
    );
  });

  test('on texts with a letter put in, taken out or changed', () => {
    const marks = fc.constantFrom(
      '',
      '"',
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '0',
      '-',
      '.',
      'e',
      ' ',
      '\n',
      '\\',
      '\u0001',
      '\u00a0',
      'u',
      '\u2028',
    );
    fc.assert(
      fc.property(fc.json({ maxDepth: 3 }), fc.nat(), marks, fc.nat(1), (json, place, mark, taken) => {
        const at = place % json.length;
        const text = json.slice(0, at) + mark + json.slice(at + taken);
        if (!isTwice(text)) expect(textFault(text) === undefined).toBe(isJson(text));
      }),
      { numRuns: 2000 },
    );
  });
});
