import Holidays from 'date-holidays';
import { expect, test } from 'vitest';
import { FEDERAL_HOLIDAYS, federalHolidays, observed } from '../../src/domain/craft/holidays.ts';
import { addDays, HOUR, instantOf, later, localClock, localDay, weekdayOf } from '../../src/domain/craft/time.ts';

const CHICAGO = 'America/Chicago';

/** True hours from one local midnight to the next. */
const hoursOf = (day: string, zone: string): number =>
  (instantOf(addDays(day, 1), '00:00', zone) - instantOf(day, '00:00', zone)) / HOUR;

// 15 U.S.C. §260a(a), as amended by the Energy Policy Act of 2005 §110: 2 a.m. on the second Sunday of March to 2 a.m. on the
// first Sunday of November. 2007 to 2015 from a published list; 2025 to 2030 worked out from the statute.
test.each([
  ['2007-03-11', '2007-11-04'],
  ['2015-03-08', '2015-11-01'],
  ['2025-03-09', '2025-11-02'],
  ['2026-03-08', '2026-11-01'],
  ['2027-03-14', '2027-11-07'],
  ['2028-03-12', '2028-11-05'],
  ['2029-03-11', '2029-11-04'],
  ['2030-03-10', '2030-11-03'],
])('clocks go forward on %s and back on %s', (spring, autumn) => {
  expect([weekdayOf(spring), weekdayOf(autumn)]).toEqual(['sun', 'sun']);
  expect([hoursOf(spring, CHICAGO), hoursOf(autumn, CHICAGO)]).toEqual([23, 25]);
  expect(hoursOf(addDays(spring, 7), CHICAGO)).toBe(24);
  expect(hoursOf(addDays(autumn, -7), CHICAGO)).toBe(24);
  expect(localClock(later(instantOf(spring, '01:59', CHICAGO), 1), CHICAGO)).toBe('03:00');
});

// Worked out from the same statute.
test.each([
  ['2026-03-07', '17:00'],
  ['2026-10-31', '15:00'],
  ['2026-11-25', '16:00'],
])('a 24-hour cure begun at 16:00 on %s is over at %s by the wall clock', (day, clock) => {
  const over = later(instantOf(day, '16:00', CHICAGO), 24 * 60);
  expect(localClock(over, CHICAGO)).toBe(clock);
  expect(localDay(over, CHICAGO)).toBe(addDays(day, 1));
});

// Arizona: tz release 2025a, quoted on a public page. Navajo Nation (America/Denver) and Hawaii: from memory of the tz comments.
test('Arizona and Hawaii keep one time all year, the Navajo Nation does not', () => {
  expect(hoursOf('2026-03-08', 'America/Phoenix')).toBe(24);
  expect(hoursOf('2026-03-08', 'Pacific/Honolulu')).toBe(24);
  expect(hoursOf('2026-03-08', 'America/Denver')).toBe(23);
  expect(localClock(instantOf('2026-07-01', '12:00', 'America/Denver'), 'America/Phoenix')).toBe('11:00');
});

// 5 U.S.C. §6103(a); US Naval Observatory, "Federal Holidays".
test('there are eleven federal holidays, on these days in 2026', () => {
  expect(Object.values(federalHolidays(2026))).toEqual([
    '2026-01-01',
    '2026-01-19',
    '2026-02-16',
    '2026-05-25',
    '2026-06-19',
    '2026-07-04',
    '2026-09-07',
    '2026-10-12',
    '2026-11-11',
    '2026-11-26',
    '2026-12-25',
  ]);
});

// The same: Saturday is kept on Friday, Sunday on Monday, by offices that work Monday to Friday. The mail does not simply follow.
test.each([
  ['2026-06-19', 'fri', '2026-06-19'],
  ['2026-07-04', 'sat', '2026-07-03'],
  ['2026-11-11', 'wed', '2026-11-11'],
  ['2027-06-19', 'sat', '2027-06-18'],
  ['2027-07-04', 'sun', '2027-07-05'],
  ['2027-12-25', 'sat', '2027-12-24'],
  ['2028-01-01', 'sat', '2027-12-31'],
])('%s is a %s, and federal offices keep it on %s', (day, weekday, kept) => {
  expect(weekdayOf(day)).toBe(weekday);
  expect(observed(day)).toBe(kept);
});

// A second witness: the package date-holidays, which has the rules of each country.
test.each([2021, 2024, 2025, 2026, 2027, 2028, 2030, 2035])('the holidays of %d are those of date-holidays', (year) => {
  const witness = new Holidays('US', { types: ['public'] })
    .getHolidays(year)
    .filter(({ substitute }) => !substitute)
    .map(({ date }) => date.slice(0, 10));
  const ours = federalHolidays(year);
  for (const holiday of FEDERAL_HOLIDAYS) expect(witness, holiday).toContain(ours[holiday]);
});
