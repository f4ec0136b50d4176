import fs from 'node:fs';
import os from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { Halt } from '../../app/exit.ts';
import { codeOf } from '../../app/log.ts';

const NAME = 'lock';
const TAKING_OVER = 'lock.taking-over';
const BEAT_MS = 5_000;
/** A lock from another machine or container says nothing about its process; after this long without a sign it is over. */
const SILENT_MS = 30_000;

const holderSchema = z.object({ pid: z.number(), started: z.string(), machine: z.string() });
type Holder = z.infer<typeof holderSchema>;

export type Lock = Readonly<{ release(): void }>;

/** Makes this process the only one on the folder, until it releases the lock or ends.
 *  @throws Halt when another process has it. */
export function takeLock(folder: string): Lock {
  const path = join(folder, NAME);
  const mine = JSON.stringify(self());
  takeAt(folder, path, mine);
  const beat = setInterval(() => touch(path), BEAT_MS).unref();
  return {
    release: () => {
      clearInterval(beat);
      if (text(path) === mine) fs.rmSync(path, { force: true });
    },
  };
}

/** @throws Halt also where nothing can be written; an empty lock, which such a disk may leave, is taken away. */
function takeAt(folder: string, path: string, mine: string): void {
  try {
    fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    if (!put(path, mine)) takeOver(folder, path, mine);
  } catch (error) {
    if (error instanceof Halt) throw error;
    if (text(path) === '') orEmpty(() => (fs.rmSync(path, { force: true }), ''));
    throw new Halt(
      'disk',
      `The folder ${folder} (DATA_DIR) cannot be written (${codeOf(error)}). Make room or mount it for writing, then start again. Nothing was changed.`,
    );
  }
}

/** Two that both find the lock stale must not both take it: whoever makes the second file first looks again, alone. */
function takeOver(folder: string, path: string, mine: string): void {
  const guard = join(folder, TAKING_OVER);
  refuseIfHeld(path);
  if (age(guard) > SILENT_MS) fs.rmSync(guard, { force: true });
  if (!put(guard, mine)) throw taken('another one that is just starting');
  try {
    refuseIfHeld(path);
    fs.rmSync(path, { force: true });
    if (!put(path, mine)) throw taken('another one that is just starting');
  } finally {
    fs.rmSync(guard, { force: true });
  }
}

function refuseIfHeld(path: string): void {
  const holder = read(path);
  if (holder === null ? age(path) < SILENT_MS && text(path) !== '' && text(path) !== null : isAlive(holder, age(path)))
    throw taken(holder?.machine === self().machine ? `process ${holder.pid}` : ELSEWHERE);
}

/** What cannot be asked whether it still runs is over when it has been silent for a while. */
const ELSEWHERE = `another one, perhaps on another computer; if none runs, start again in ${SILENT_MS / 1000} seconds`;

const taken = (who: string): Halt =>
  new Halt(
    'taken',
    `The book is in use by ${who}. Two programs on one book would lose orders, so this one stops. Stop the other one first.`,
  );

function isAlive(holder: Holder, silentMs: number): boolean {
  if (holder.machine !== self().machine) return silentMs < SILENT_MS;
  return startOf(holder.pid) === holder.started && responds(holder.pid);
}

const self = (): Holder => ({ pid: process.pid, started: startOf(process.pid), machine: machine() });

/** The machine since its last start, and which process numbers are meant (a container has its own). */
const machine = (): string =>
  [
    os.hostname(),
    orEmpty(() => fs.readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()),
    orEmpty(() => fs.readlinkSync('/proc/self/ns/pid')),
  ].join(' ');

/** When a process started, in the system's ticks; empty where the system does not say. Process numbers are given out again, starts are not. */
const startOf = (pid: number): string =>
  orEmpty(() => fs.readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ')[19] ?? '');

const orEmpty = (read: () => string): string => {
  try {
    return read();
  } catch {
    return '';
  }
};

function responds(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/** Only one of many makes the file. */
function put(path: string, content: string): boolean {
  try {
    fs.writeFileSync(path, content, { flag: 'wx', mode: 0o600 });
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

const text = (path: string): string | null => {
  try {
    return fs.readFileSync(path, 'utf8');
  } catch {
    return null;
  }
};

const read = (path: string): Holder | null => {
  try {
    return holderSchema.safeParse(JSON.parse(text(path) ?? '')).data ?? null;
  } catch {
    return null;
  }
};

const age = (path: string): number =>
  Date.now() - (fs.statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());

function touch(path: string): void {
  try {
    fs.utimesSync(path, new Date(), new Date());
  } catch {
    // The next beat tries again; a lock that cannot be touched for long is found out by whoever wants it.
  }
}
