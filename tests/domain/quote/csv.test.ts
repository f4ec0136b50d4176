import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeCsv } from '../../../src/domain/quote/csv.ts';

/** A reader from the registry that knows nothing of our writer. */
const read = (text: string): string[][] => parse(text, { relax_column_count: false });

describe('a table that any spreadsheet opens (RFC 4180)', () => {
  test('every line ends with CR and LF, the header too (2.1, 2.3)', () =>
    expect(writeCsv(['a', 'b'], [['x', 1]])).toBe('a,b\r\nx,1\r\n'));
  test('commas, quotes and line breaks stand in quotes (2.6), quotes twice (2.7)', () =>
    expect(writeCsv(['a'], [['x,y'], ['say "hi"'], ['two\nlines']])).toBe(
      'a\r\n"x,y"\r\n"say ""hi"""\r\n"two\nlines"\r\n',
    ));
  test('nothing is an empty field, and a number stays a number', () =>
    expect(writeCsv(['a', 'b', 'c'], [[null, -5, '-12.05']])).toBe('a,b,c\r\n,-5,-12.05\r\n'));
  test.each(['=1+1', '+1 555 0100 0', '-2+3', '@sum', '\tx', '＝1'])('“%s” calculates nothing', (text) =>
    expect(read(writeCsv(['a'], [[text]]))[1]).toEqual([`'${text}`]),
  );

  test('whatever is written is read back by a general-purpose reader', () =>
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 2, maxLength: 2 }), {
          minLength: 1,
          maxLength: 8,
        }),
        (rows) => {
          const back = read(writeCsv(['one', 'two'], rows));
          expect(back[0]).toEqual(['one', 'two']);
          expect(back.slice(1).map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r＝＋－＠])/u, '')))).toEqual(
            rows.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@\t\r＝＋－＠])/u, ''))),
          );
        },
      ),
    ));
});
