import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { upgraded, versionOf } from '../src/app/saved.ts';
import { BOOK_VERSIONS } from '../src/bookVersions.ts';

const SAMPLES = join(import.meta.dirname, 'fixtures');
const versions = readdirSync(SAMPLES).flatMap((name) => /^book-(\d+)\.json$/.exec(name)?.[1] ?? []);
const sample = (version: string): unknown => JSON.parse(readFileSync(join(SAMPLES, `book-${version}.json`), 'utf8'));

test('there is a kept book of every version', () =>
  expect(versions.map(Number).toSorted((a, b) => a - b)).toEqual(
    Array.from({ length: versionOf(BOOK_VERSIONS) + 1 }, (_, version) => version),
  ));

test.each(versions)('a book of version %s is read today, with its order, its lot and its timers', (version) => {
  const read = upgraded(BOOK_VERSIONS, Number(version), sample(version));
  expect(read).toMatchObject({
    ok: true,
    value: {
      desk: {
        orders: { 'K-1001': { buyer: 201, address: 'Pat Shore\n12 Shore Road\nColumbus, OH 43004' } },
        lots: { 'K-1001-1': { order: 'K-1001' } },
        next: { order: 1002 },
      },
    },
  });
  if (read.ok) expect(Object.keys(read.value.desk.timers)).toHaveLength(2);
});
