import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import law from '../../../data/lead-law.json' with { type: 'json' };
import { isWithin } from '../../../src/domain/law/place.ts';
import { lawRow, lawSchema, type LawRow } from '../../../src/domain/law/row.ts';
import { gravest, lawFor, type Made } from '../../../src/domain/law/rule.ts';

const { rows } = lawSchema.parse(law);
const head = (over: Partial<Made>): Made => ({ grams: 10, lengthInches: null, leadShare: 1, ...over });

const row = (over: object): LawRow =>
  lawRow.parse({
    id: 'test-row',
    places: ['US-NH'],
    kind: 'sale',
    coversHead: 'yes',
    citation: 'a rule of this test',
    since: '2020-01-01',
    asOf: '2026-07',
    tag: 'V',
    act: 'refuse',
    fact: { en: 'x', es: 'y' },
    ...over,
  });
const oneInch = { anyOf: [{ on: 'length-in', compare: '<=', value: 1 }] };

test('metal without lead is never ruled, whatever its weight, length, place and day', () =>
  fc.assert(
    fc.property(
      fc.constantFrom(...rows.flatMap(({ places }) => places)),
      fc.double({ min: 0.01, max: 200, noNaN: true }),
      fc.option(fc.double({ min: 0.1, max: 5, noNaN: true })),
      fc.constantFrom('1990-01-01', '2026-11-25', '2040-01-01'),
      (place, grams, lengthInches, day) =>
        void expect(lawFor(rows, place, { grams, lengthInches, leadShare: 0 }, day)).toEqual([]),
    ),
  ));

test('every ruling carries the citation, the date of its source and how it is known', () => {
  for (const place of new Set(rows.flatMap(({ places }) => places)))
    for (const { row } of lawFor(rows, place, head({ lengthInches: 1 }), '2026-11-25')) {
      expect(row.citation).not.toBe('');
      expect(row.asOf).toMatch(/^\d{4}/);
      expect(['V', 'V2', 'M']).toContain(row.tag);
    }
});

test('a length nobody has measured is for the maker to settle', () =>
  expect(lawFor([row(oneInch)], 'US-NH', head({}), '2026-11-25')).toMatchObject([
    { act: 'hold', why: 'length-unknown' },
  ]));

test('an unmeasured length where the rule itself is only a notice stays a notice', () =>
  expect(lawFor([row({ ...oneInch, act: 'notice' })], 'US-NH', head({}), '2026-11-25')).toMatchObject([
    { act: 'notice', why: 'length-unknown' },
  ]));

test('a weight that is enough by itself makes the length needless', () => {
  const either = row({ anyOf: [...oneInch.anyOf, { on: 'weight-g', compare: '<', value: 20 }] });
  expect(lawFor([either], 'US-NH', head({}), '2026-11-25')).toMatchObject([{ act: 'refuse', why: 'in-force' }]);
});

test('a rule that begins later is told with its date, and bites on that very day', () => {
  const later = row({ since: '2027-07-01' });
  expect(lawFor([later], 'US-NH', head({}), '2027-06-30')).toMatchObject([
    { act: 'notice', why: 'from-later', row: { since: '2027-07-01' } },
  ]);
  expect(lawFor([later], 'US-NH', head({}), '2027-07-01')).toMatchObject([{ act: 'refuse', why: 'in-force' }]);
});

test('a rule known only by its year is taken to hold from the first of January', () => {
  expect(lawFor([row({ since: '1997' })], 'US-NH', head({}), '1996-12-31')[0]?.why).toBe('from-later');
  expect(lawFor([row({ since: '1997' })], 'US-NH', head({}), '1997-01-01')[0]?.why).toBe('in-force');
});

test('a rule that may or may not cover a jig head must be written to hold', () => {
  expect(lawRow.safeParse({ ...row({}), coversHead: 'unclear' }).success).toBe(false);
  const unclear = row({ coversHead: 'unclear', act: 'hold' });
  expect(lawFor([unclear], 'US-NH', head({}), '2026-11-25')).toMatchObject([{ act: 'hold', why: 'unclear-cover' }]);
});

test('a head that only its hook lifts over the limit is held for the maker', () => {
  const ounce = row({ anyOf: [{ on: 'weight-oz', compare: '<=', value: 1 }] });
  const made = { grams: 29.4, metalGrams: 28.2 };
  expect(lawFor([ounce], 'US-NH', head(made), '2026-11-25')).toMatchObject([
    { act: 'hold', why: 'only-hook-clears-it' },
  ]);
  expect(lawFor([ounce], 'US-NH', head({ ...made, metalGrams: 28.4 }), '2026-11-25')).toEqual([]);
});

test('the gravest rule comes first', () => {
  const mixed = [row({ act: 'notice' }), row({ act: 'refuse' }), row({ act: 'hold' })];
  const rulings = lawFor(mixed, 'US-NH', head({}), '2026-11-25');
  expect(rulings.map(({ act }) => act)).toEqual(['refuse', 'hold', 'notice']);
  expect(gravest(rulings)).toBe('refuse');
  expect(gravest([])).toBeUndefined();
});

test('a rule of the Union holds in Denmark, one of Canada in Ontario, one of Maine nowhere else', () => {
  expect(isWithin('DK', 'EU')).toBe(true);
  expect(isWithin('DE-BY', 'EU')).toBe(true);
  expect(isWithin('NO', 'EU')).toBe(false);
  expect(isWithin('CA-ON', 'CA')).toBe(true);
  expect(isWithin('US-CA', 'CA')).toBe(false);
  expect(isWithin('US', 'US-ME')).toBe(false);
});

test('two rows of one id are refused on load', () =>
  expect(lawSchema.safeParse({ ...law, rows: [law.rows[0], law.rows[0]] }).error?.message).toContain(
    'ids that differ',
  ));
