import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { ACTS } from '../../src/domain/desk/tap.ts';
import { TAP_BYTES, parseTap, writeTap } from '../../src/wording/buttons.ts';

const taps = fc.record({
  act: fc.constantFrom(...ACTS),
  on: fc.stringMatching(/^[A-Za-z0-9\-:/#.]{1,14}$/),
  version: fc.integer({ min: 0, max: 2 ** 30 }),
  arg: fc.oneof(fc.stringMatching(/^[a-z0-9/.|-]{0,24}$/), fc.constantFrom('', '3/8', 'grün', '🎣', 'a|b')),
});

test.each(ACTS)('a button for "%s" survives being written and read', (act) => {
  const tap = { act, on: 'K-1042', version: 7, arg: '3/8' };
  expect(parseTap(writeTap(tap))).toEqual(tap);
});

test('every tap that fits on a button comes back as it was', () => {
  fc.assert(
    fc.property(taps, (tap) => {
      expect(parseTap(writeTap(tap))).toEqual(tap);
    }),
  );
});

test('no button carries more than 64 bytes', () => {
  fc.assert(
    fc.property(taps, (tap) => {
      expect(Buffer.byteLength(writeTap(tap))).toBeLessThanOrEqual(TAP_BYTES);
    }),
  );
  expect(() => writeTap({ act: 'refuse-cancel', on: 'K-1042', version: 1, arg: 'é'.repeat(30) })).toThrow(RangeError);
});

test.each([
  ['', 'nothing'],
  ['order', 'too little'],
  ['order|K-1042|14', 'no last part'],
  ['steal|K-1042|14|', 'an act there is not'],
  ['order||14|', 'no id'],
  ['order|K 1042|14|', 'an id with a space'],
  ['order|K-1042|-1|', 'a version below none'],
  ['order|K-1042|014|', 'a version written in another way'],
  ['order|K-1042|1e|x'.padEnd(65, 'x'), 'too much'],
  ['__proto__|constructor|0|', 'words of the language'],
])('%j is no button of ours: %s', (data) => expect(parseTap(data)).toBeNull());

test('whatever is sent as button data, it is read as exactly what our buttons carry or not at all', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ maxLength: 70 }), fc.string({ unit: 'binary', maxLength: 70 })), (data) => {
      const tap = parseTap(data);
      expect(tap === null || writeTap(tap) === data).toBe(true);
    }),
  );
});
