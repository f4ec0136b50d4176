import { type Disk, openDisk } from '../../../src/adapters/lowdb/disk.ts';

export type DiskCall = keyof Disk;

/** Decides for the n-th call (from 1) of all, whether it fails and with which code of the system; `short` writes half before it does. */
export type Trouble = (call: DiskCall, n: number, name: string) => string | undefined;

/** A real folder whose disk fails where `trouble` says so. */
export function badDisk(folder: string, trouble: Trouble): Disk {
  const good = openDisk(folder);
  let n = 0;
  const check = (call: DiskCall, name: string): string | undefined => trouble(call, (n += 1), name);
  const throwing = (code: string | undefined): void => {
    if (code !== undefined) throw Object.assign(new Error(`${code}: the disk fails`), { code });
  };
  const written = (call: 'write' | 'append') => async (name: string, bytes: Uint8Array) => {
    const code = check(call, name);
    if (code === 'short') await good[call](name, bytes.subarray(0, bytes.length / 2));
    throwing(code === 'short' ? 'ENOSPC' : code);
    await good[call](name, bytes);
  };
  return {
    ...good,
    read: (name) => (throwing(check('read', name)), good.read(name)),
    write: written('write'),
    append: written('append'),
    rename: (from, to) => (throwing(check('rename', to)), good.rename(from, to)),
    link: (from, to) => (throwing(check('link', to)), good.link(from, to)),
    remove: (name) => (throwing(check('remove', name)), good.remove(name)),
    sync: async () => (throwing(check('sync', '')), good.sync()),
    cut: async (name, bytes) => (throwing(check('cut', name)), good.cut(name, bytes)),
  };
}
