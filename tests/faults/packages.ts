import { readFileSync } from 'node:fs';
import { join } from 'node:path';

type Lock = Readonly<{ packages: Readonly<Record<string, Readonly<{ dev?: boolean; optional?: boolean }>>> }>;

/** Names of everything that is installed for the program itself, from the lock file; what is built for one kind of computer only is left out. */
export function shippedPackages(): readonly string[] {
  const text = readFileSync(join(import.meta.dirname, '..', '..', 'package-lock.json'), 'utf8');
  const names = Object.entries((JSON.parse(text) as Lock).packages)
    .filter(([path, { dev, optional }]) => path !== '' && dev !== true && optional !== true)
    .map(([path]) => path.replace(/^.*node_modules\//, ''));
  return [...new Set(names)].toSorted();
}

/** Ten are asked for; the rest came with them and were looked at. */
export const ALLOWED: readonly string[] = [
  '@grammyjs/types',
  '@pinojs/redact',
  '@resvg/resvg-js',
  'abort-controller',
  'atomic-sleep',
  'debug',
  'dejavu-fonts-ttf',
  'esbuild',
  'event-target-shim',
  'fastest-levenshtein',
  'grammy',
  'lowdb',
  'ms',
  'node-cron',
  'node-fetch',
  'on-exit-leak-free',
  'pino',
  'pino-abstract-transport',
  'pino-std-serializers',
  'process-warning',
  'quick-format-unescaped',
  'real-require',
  'safe-stable-stringify',
  'sonic-boom',
  'split2',
  'steno',
  'temporal-polyfill',
  'temporal-spec',
  'temporal-utils',
  'thread-stream',
  'tr46',
  'tsx',
  'webidl-conversions',
  'whatwg-url',
  'zod',
];
