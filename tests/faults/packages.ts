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

/** Twelve are asked for; the rest came with them. A name that is not here has to be looked at before it is let in. */
export const ALLOWED: readonly string[] = [
  '@grammyjs/types',
  '@noble/ciphers',
  '@noble/hashes',
  '@pinojs/redact',
  '@resvg/resvg-js',
  '@swc/helpers',
  'abort-controller',
  'atomic-sleep',
  'base64-js',
  'brotli',
  'clone',
  'debug',
  'dejavu-fonts-ttf',
  'dfa',
  'esbuild',
  'event-target-shim',
  'fast-deep-equal',
  'fastest-levenshtein',
  'fflate',
  'fontkit',
  'grammy',
  'linebreak',
  'lowdb',
  'ms',
  'node-cron',
  'node-fetch',
  'on-exit-leak-free',
  'pako',
  'pdfkit',
  'pino',
  'pino-abstract-transport',
  'pino-std-serializers',
  'png-js',
  'process-warning',
  'quick-format-unescaped',
  'real-require',
  'restructure',
  'safe-stable-stringify',
  'sonic-boom',
  'split2',
  'steno',
  'temporal-polyfill',
  'temporal-spec',
  'temporal-utils',
  'thread-stream',
  'tiny-inflate',
  'tr46',
  'tsx',
  'unicode-properties',
  'unicode-trie',
  'webidl-conversions',
  'whatwg-url',
  'zod',
];
