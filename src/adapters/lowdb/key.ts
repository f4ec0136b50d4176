import { randomBytes } from 'node:crypto';
import fs from 'node:fs';
import { dirname } from 'node:path';
import { Halt } from '../../app/exit.ts';
import { codeOf } from '../../app/log.ts';

export type KeyFrom = Readonly<{ hex: string }> | Readonly<{ file: string }>;

export type KeyParts = Readonly<{
  from: KeyFrom;
  /** What is stored already, if anything: then a key that is missing must not be made anew. */
  inUse: 'book' | 'backup' | null;
  /** Told once, when a key is made. */
  say: (sentence: string) => void;
}>;

/** The 32 bytes that the book is sealed with: from the environment, or from a file that only its owner can read, made at the first start.
 *  @throws Halt when there is none for a book that is there, when it is not 64 hex digits, or when others can read it. */
export function readKey({ from, inUse, say }: KeyParts): Uint8Array {
  if ('hex' in from) return bytesOf(from.hex, 'JIGWRIGHT_KEY');
  if (fs.existsSync(from.file)) return keyInFile(from.file);
  if (inUse !== null)
    throw new Halt(
      'settings',
      `There is a ${inUse}, but no key at ${from.file}. Put the key back there, or name it with JIGWRIGHT_KEY or KEY_FILE.`,
    );
  return newKey(from.file, say);
}

function keyInFile(file: string): Uint8Array {
  try {
    if (fs.statSync(file).isDirectory())
      throw new Halt('settings', `KEY_FILE (${file}) is a folder. Name a file in it.`);
    if ((fs.statSync(file).mode & 0o077) !== 0)
      throw new Halt('settings', `Others can read the key at ${file}. Run: chmod 600 ${file}`);
    return bytesOf(fs.readFileSync(file, 'utf8').trim(), file);
  } catch (error) {
    if (error instanceof Halt) throw error;
    throw new Halt('settings', `The key at ${file} cannot be read (${codeOf(error)}).`);
  }
}

function newKey(file: string, say: (sentence: string) => void): Uint8Array {
  const key = randomBytes(32);
  try {
    fs.mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    fs.writeFileSync(file, `${key.toString('hex')}\n`, { flag: 'wx', mode: 0o600, flush: true });
  } catch (error) {
    throw new Halt(
      'settings',
      `No key could be made at ${file} (${codeOf(error)}). Set KEY_FILE to a place that can be written.`,
    );
  }
  say(
    `A key was made at ${file}. Keep a copy of it somewhere else: without it neither the book nor its backups can be read.`,
  );
  return key;
}

function bytesOf(hex: string, where: string): Uint8Array {
  if (!/^[0-9a-f]{64}$/i.test(hex)) throw new Halt('settings', `The key in ${where} is not 64 hex digits.`);
  return Buffer.from(hex, 'hex');
}
