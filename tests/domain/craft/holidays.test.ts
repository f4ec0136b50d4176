import { expect, test } from 'vitest';
import { FEDERAL_HOLIDAYS, federalHolidays, observed } from '../../../src/domain/craft/holidays.ts';
import { weekdayOf } from '../../../src/domain/craft/time.ts';

const YEARS = Array.from({ length: 80 }, (_, at) => 2021 + at);

test('a holiday that is a Monday or a Thursday by law is one in every year', () => {
  for (const year of YEARS) {
    const days = federalHolidays(year);
    for (const holiday of ['martin-luther-king', 'washington', 'memorial', 'labor', 'columbus'] as const)
      expect(weekdayOf(days[holiday])).toBe('mon');
    expect(weekdayOf(days.thanksgiving)).toBe('thu');
  }
});

test('Memorial Day is the last Monday: a week later is June', () => {
  for (const year of YEARS) expect(Number(federalHolidays(year).memorial.slice(8))).toBeGreaterThan(24);
});

test('an office never keeps a holiday on a weekend', () => {
  for (const year of YEARS)
    for (const holiday of FEDERAL_HOLIDAYS)
      expect(['sat', 'sun']).not.toContain(weekdayOf(observed(federalHolidays(year)[holiday])));
});
