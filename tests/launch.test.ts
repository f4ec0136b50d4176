import { execFile } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '..');
const run = promisify(execFile);

/** A program of two files in a folder of its own, with the launcher beside it. */
let home = '';
const write = (name: string, text: string): void => writeFileSync(join(home, 'src', name), text);
const made = (): readonly string[] => readdirSync(join(home, '.cache'));
const starts = async (...words: readonly string[]): Promise<string> =>
  (await run('node', [join(home, 'src', 'launch.js'), ...words], { cwd: tmpdir() })).stdout.trim();

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'jig-launch-'));
  mkdirSync(join(home, 'src', 'deep'), { recursive: true });
  copyFileSync(join(ROOT, 'src', 'launch.js'), join(home, 'src', 'launch.js'));
  copyFileSync(join(ROOT, 'package-lock.json'), join(home, 'package-lock.json'));
  symlinkSync(join(ROOT, 'node_modules'), join(home, 'node_modules'));
  writeFileSync(join(home, 'package.json'), '{"type":"module"}');
  for (const name of ['main', 'jigwright', 'demo'])
    write(
      `${name}.ts`,
      `import { WORD } from './deep/word.ts';\nconst said: string = [WORD, ...process.argv.slice(2)].join(' ');\nconsole.log('${name}', said);\n`,
    );
  write('deep/word.ts', `export const WORD = 'one ' + import.meta.dirname.split('/').at(-1);\n`);
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

describe('the launcher', { timeout: 30_000 }, () => {
  test('starts main unless another program is named, and hands on the words after it', async () => {
    expect(await starts()).toBe('main one deep');
    expect(await starts('jigwright', 'check', 'it')).toBe('jigwright one deep check it');
    await expect(starts('check')).rejects.toMatchObject({
      code: 2,
      stderr: expect.stringMatching(/main, jigwright, demo/),
    });
  });

  test('runs what the sources say today, keeps one made file a program, and uses it again', async () => {
    await starts();
    const first = made();
    await starts();
    expect(made()).toEqual(first);
    write('deep/word.ts', `export const WORD = 'two';\n`);
    expect(await starts()).toBe('main two');
    expect(made()).toHaveLength(1);
    expect(made()).not.toEqual(first);
  });

  test('makes all beforehand for a place that will be read-only', async () => {
    expect(await starts('--ready')).toBe('');
    expect(made().map((name) => name.split('-')[0])).toEqual(['demo', 'jigwright', 'main']);
  });

  test('runs the sources as they are where nothing can be kept', async () => {
    // A file where the folder would be: even an administrator cannot write into it.
    writeFileSync(join(home, '.cache'), '');
    expect(await starts('main', 'all', 'the', 'same')).toBe('main one deep all the same');
  });

  test('says what is wrong in a source instead of running something else', async () => {
    write('deep/word.ts', `export const WORD = ;\n`);
    await expect(starts()).rejects.toThrow(/word\.ts:1/);
  });
});
