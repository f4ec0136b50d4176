import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { EXITS } from '../src/app/exit.ts';

const ROOT = join(import.meta.dirname, '..');
const read = (name: string): string => readFileSync(join(ROOT, name), 'utf8');
const pkg = JSON.parse(read('package.json')) as {
  scripts: Record<string, string>;
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
};

/** Settings as the program reads them. */
const settings = [
  ...new Set(
    [...read('src/settings.ts').matchAll(/\b([A-Z][A-Z_]{3,}): (?:optional|z)/g)].map(([, name = '']) => name),
  ),
];

describe('the papers say what the program does', () => {
  test('there are settings to check', () => expect(settings).toContain('BOT_TOKEN'));
  test.each(settings)('%s stands in the README and in .env.example', (name) => {
    expect(read('README.md')).toContain(`\`${name}\``);
    expect(read('.env.example')).toContain(name);
  });

  test.each([...read('README.md').matchAll(/npm run (?:--silent )?([a-z]+)/g)].map(([, name = '']) => name))(
    'the README’s npm run %s exists',
    (name) => expect(pkg.scripts).toHaveProperty(name),
  );

  test.each(
    [...read('DEVELOPERS.md').matchAll(/`((?:src|tests|domain|app|wording|adapters)\/[\w/-]+\.ts)`/g)].map(
      ([, name = '']) => name,
    ),
  )('DEVELOPERS.md names %s, which is there', (name) =>
    expect(read(/^(src|tests)\//.test(name) ? name : `src/${name}`).length).toBeGreaterThan(0),
  );

  test.each(Object.keys(pkg.dependencies))('the reason for %s is written down', (name) =>
    expect(read('DEVELOPERS.md')).toContain(name),
  );
  test.each(Object.keys(pkg.devDependencies).filter((name) => !name.startsWith('@types/')))(
    '%s is named among what development needs',
    (name) => expect(read('DEVELOPERS.md')).toContain(name),
  );
  test('every package is pinned to one version', () => {
    for (const version of Object.values({ ...pkg.dependencies, ...pkg.devDependencies }))
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
  });
  test('a picture named in the README is there', () =>
    expect(readFileSync(join(ROOT, 'tests/browser/rehearsal.png')).length).toBeGreaterThan(10_000));
  test('each exit number stands for one cause', () =>
    expect(new Set(Object.values(EXITS).map(({ code }) => code)).size).toBe(Object.keys(EXITS).length));
});
