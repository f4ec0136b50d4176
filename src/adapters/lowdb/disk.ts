import fs from 'node:fs';
import { join } from 'node:path';

/** The few things the store asks of one folder, so that tests can make each of them fail. Names are plain file names in it. */
export interface Disk {
  names(): string[];
  /** @throws the system's error, `ENOENT` where there is none. */
  read(name: string): Buffer;
  /** The size of a file in bytes, and how many of its last bytes stand after the last line's end. */
  tail(name: string): Readonly<{ size: number; unfinished: number }>;
  /** A new or emptied file, for its owner only, with exactly these bytes, safe on the medium when it resolves. */
  write(name: string, bytes: Uint8Array): Promise<void>;
  /** The bytes at the end of the file (made if need be), safe on the medium when it resolves. */
  append(name: string, bytes: Uint8Array): Promise<void>;
  /** Cuts the file to `bytes` long. */
  cut(name: string, bytes: number): Promise<void>;
  rename(from: string, to: string): void;
  /** A second name for the same file. */
  link(from: string, to: string): void;
  remove(name: string): void;
  /** Makes renamed and removed names safe on the medium. */
  sync(): Promise<void>;
  close(): void;
}

/** The folder `path`, made for its owner only if it is not there.
 *  @throws Error if others may read or write in it. */
export function openDisk(path: string): Disk {
  fs.mkdirSync(path, { recursive: true, mode: 0o700 });
  const folder = fs.openSync(path, 'r');
  const at = (name: string): string => join(path, name);
  return {
    names: () => fs.readdirSync(path),
    read: (name) => fs.readFileSync(at(name)),
    tail: (name) => tailOf(at(name)),
    write: (name, bytes) => put(at(name), 'w', bytes),
    append: (name, bytes) => put(at(name), 'a', bytes),
    cut: (name, bytes) => shorten(at(name), bytes),
    rename: (from, to) => fs.renameSync(at(from), at(to)),
    link: (from, to) => fs.linkSync(at(from), at(to)),
    remove: (name) => fs.rmSync(at(name)),
    sync: () => synced(folder),
    close: () => fs.closeSync(folder),
  };
}

/** Whether only its owner can look into the folder. */
export const isPrivate = (path: string): boolean => (fs.statSync(path).mode & 0o077) === 0;

async function put(path: string, how: 'w' | 'a', bytes: Uint8Array): Promise<void> {
  const file = fs.openSync(path, how, 0o600);
  try {
    for (let done = 0; done < bytes.length;) done += fs.writeSync(file, bytes, done);
    await synced(file);
  } finally {
    fs.closeSync(file);
  }
}

async function shorten(path: string, bytes: number): Promise<void> {
  const file = fs.openSync(path, 'r+');
  try {
    fs.ftruncateSync(file, bytes);
    await synced(file);
  } finally {
    fs.closeSync(file);
  }
}

function tailOf(path: string): Readonly<{ size: number; unfinished: number }> {
  const file = fs.openSync(path, 'r');
  try {
    const { size } = fs.fstatSync(file);
    return { size, unfinished: unfinishedIn(file, size) };
  } finally {
    fs.closeSync(file);
  }
}

/** Looks back from the end, a block at a time, so that a long file costs no more than a short one. */
function unfinishedIn(file: number, size: number): number {
  const block = Buffer.alloc(64 * 1024);
  for (let end = size; end > 0; end -= block.length) {
    const start = Math.max(0, end - block.length);
    const last = block.subarray(0, fs.readSync(file, block, 0, end - start, start)).lastIndexOf('\n');
    if (last >= 0) return size - (start + last + 1);
  }
  return size;
}

/** Waiting for the medium is the slow part, so only that is left to the thread pool. */
const synced = (file: number): Promise<void> =>
  new Promise((resolve, reject) => fs.fsync(file, (error) => (error === null ? resolve() : reject(error))));
