import { expect, test } from 'vitest';
import { placeName } from '../../src/wording/places.ts';

test.each([
  ['US-MN', 'en', 'Minnesota'],
  ['US-NY', 'es', 'Nueva York'],
  ['CA-QC', 'en', 'Quebec'],
  ['US', 'es', 'Estados Unidos'],
  ['CA', 'en', 'Canada'],
  ['DE-BY', 'en', 'BY, Germany'],
] as const)('%s is called so by people who speak %s: %s', (code, language, name) => {
  expect(placeName(code, language)).toBe(name);
});
