import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/** The floors of the house, from the top down; within `domain/`, the rooms. A file imports from its own floor or below. */
const FLOORS: readonly (readonly string[])[] = [
  ['main.ts', 'jigwright.ts', 'demo.ts'],
  ['rehearse.ts'],
  ['program.ts'],
  ['keepBook.ts', 'rules.ts', 'chores.ts', 'bookVersions.ts'],
  ['shopFile.ts', 'settings.ts', 'terminal.ts', 'version.ts'],
  ['adapters/'],
  ['app/', 'wording/'],
  ['domain/desk/'],
  ['domain/bench/'],
  ['domain/plan/', 'domain/quote/', 'domain/stock/'],
  ['domain/order/', 'domain/law/'],
  ['domain/shop/'],
  ['domain/craft/'],
];

const SRC = join(import.meta.dirname, '..', 'src');
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));

const floorOf = (file: string): number =>
  FLOORS.findIndex((names) => names.some((name) => file === name || (name.endsWith('/') && file.startsWith(name))));

const importsOf = (file: string): readonly string[] =>
  [...readFileSync(join(SRC, file), 'utf8').matchAll(/from '(\.{1,2}\/[^']+)'/g)].map(([, to = '']) =>
    relative(SRC, join(SRC, dirname(file), to)),
  );

const packagesOf = (file: string): readonly string[] =>
  [...readFileSync(join(SRC, file), 'utf8').matchAll(/from '([^.'][^']*)'/g)].map(([, name = '']) => name);

/** Pure libraries that the domain may use. */
const PURE = ['zod', 'temporal-polyfill', 'fastest-levenshtein'];

describe('the house stands as it was drawn', () => {
  test.each(files)('%s has a floor', (file) => expect(floorOf(file)).toBeGreaterThanOrEqual(0));

  test.each(files)('%s imports only downwards', (file) => {
    for (const to of importsOf(file)) expect(floorOf(to), `${file} → ${to}`).toBeGreaterThanOrEqual(floorOf(file));
  });

  test.each(files.filter((file) => file.startsWith('adapters/')))('%s knows no sibling adapter', (file) => {
    const own = file.split('/')[1];
    for (const to of importsOf(file)) if (to.startsWith('adapters/')) expect(to.split('/')[1]).toBe(own);
  });

  test.each(files.filter((file) => file.startsWith('app/')))('%s knows no words', (file) => {
    for (const to of importsOf(file)) expect(to.startsWith('wording/')).toBe(false);
  });

  test.each(files.filter((file) => file.startsWith('wording/')))('%s knows no app but the letter it writes', (file) => {
    for (const to of importsOf(file)) expect(to.startsWith('app/') && to !== 'app/letter.ts').toBe(false);
  });

  test.each(files.filter((file) => file.startsWith('domain/')))(
    '%s is pure: no clock, no chance, no I/O, no waiting',
    (file) => {
      const text = readFileSync(join(SRC, file), 'utf8').replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      expect(text).not.toMatch(
        /\bDate\.|new Date\b|Math\.random|\bprocess\.|\bawait\b|\basync\b|setTimeout|\bfetch\(|Temporal\.Now|console\./,
      );
      for (const name of packagesOf(file)) expect(PURE).toContain(name);
    },
  );

  test('no file imports itself in a circle', () => {
    const walk = (file: string, path: readonly string[]): void => {
      expect(path, [...path, file].join(' → ')).not.toContain(file);
      if (done.has(file)) return;
      for (const to of importsOf(file)) walk(to, [...path, file]);
      done.add(file);
    };
    const done = new Set<string>();
    for (const file of files) walk(file, []);
  });

  test('there are no barrels and no drawers for odds and ends', () => {
    for (const file of files)
      expect(file).not.toMatch(/(^|\/)(index|utils?|helpers?|types|interfaces|common|misc)\.ts$/);
  });

  test('the top level holds what the design card names and no more', () => {
    const top = readdirSync(join(SRC, '..')).filter(
      (name) => !name.startsWith('.') && name !== 'node_modules' && name !== 'coverage',
    );
    expect(top.toSorted()).toEqual([
      'DEVELOPERS.md',
      'LICENSE',
      'README.md',
      'data',
      'package-lock.json',
      'package.json',
      'src',
      'tests',
      'tsconfig.json',
    ]);
  });
});
