import { expect, test } from 'vitest';
import { CAUTIONS, cautionsAt, MOMENTS, withoutLead } from '../../../src/domain/craft/care.ts';
import { cautionText } from '../../../src/wording/cautions.ts';

test.each(MOMENTS)('%s: what is repeated is part of what was said the first time, and is never nothing', (moment) => {
  const [full, short] = [cautionsAt(moment, []), cautionsAt(moment, [moment])];
  expect(short.length).toBeGreaterThan(0);
  expect(full).toEqual(expect.arrayContaining([...short]));
});

test('every caution has its moment', () =>
  expect(CAUTIONS.filter((caution) => !MOMENTS.some((moment) => cautionsAt(moment, []).includes(caution)))).toEqual(
    [],
  ));

test('having poured does not shorten the first bake', () => expect(cautionsAt('bake', ['pour'])).toContain('own-oven'));

test('the parcel of lead always gets its whole label, a parcel without lead only says it is not for children', () => {
  expect(cautionsAt('ship', ['ship'])).toEqual(['lead-label', 'age-label', 'local-rules']);
  expect(withoutLead(cautionsAt('ship', []))).toEqual(['age-label']);
});

test.each(CAUTIONS)('%s is said in each language, in words of its own', (caution) => {
  expect(cautionText(caution, 'en')).toMatch(/\.$|\?/);
  expect(cautionText(caution, 'es')).not.toBe(cautionText(caution, 'en'));
});
