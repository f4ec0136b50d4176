import fs from 'node:fs';
import { nextDue } from '../../src/domain/desk/due.ts';
import { pinoLog } from '../../src/adapters/log/pinoLog.ts';
import { exitCode } from '../../src/app/exit.ts';
import { safely } from '../../src/app/log.ts';
import { openProgram, type Program } from '../../src/program.ts';
import { openLawFile, openShopFile } from '../../src/shopFile.ts';

export type Life = Readonly<{
  apiRoot: string;
  token: string;
  home: string;
  shopFile: string;
  maker: number;
  /** What the shop's clock says; it stands still until it is pushed, so that a slow restart changes nothing. */
  now: number;
  dies: Death | null;
}>;
/** Killed at the n-th thing that the program does to a disk from now on, before or after it is done. */
export type Death = Readonly<{ nth: number; when: 'before' | 'after' }>;

export type Ask = Readonly<{ id: number }> &
  (
    | Readonly<{ ask: 'look' }>
    | Readonly<{ ask: 'push'; now: number }>
    | Readonly<{ ask: 'die'; dies: Death }>
    | Readonly<{ ask: 'stop' }>
  );
export type Sight = Readonly<{ id: number; waiting: number; due: number; timers: readonly string[]; unpacked: number }>;

/** The real program as a process of its own, on a clock that its parent pushes. */
async function main(life: Life): Promise<void> {
  let { now } = life;
  const clock = (): number => now;
  const shop = openShopFile(life.shopFile);
  if (life.dies) dieAt(life.dies);
  const program = await openProgram({
    shop,
    law: openLawFile(),
    token: life.token,
    apiRoot: life.apiRoot,
    makers: [life.maker],
    dataDir: `${life.home}/book`,
    key: { file: `${life.home}/key` },
    clock,
    log: pinoLog(),
    say: (sentence) => void process.stderr.write(`${sentence}\n`),
  });
  const sight = (id: number): Sight => {
    const desk = program.desk();
    const due = nextDue(shop, desk, clock());
    const timers = Object.values(desk.timers).map((timer) => `${timer.id}@${timer.dueAt}`);
    const unpacked = Object.values(desk.orders).filter(({ state }) => state !== 'packed').length;
    return { id, waiting: program.waiting(), due, timers, unpacked };
  };
  process.on('message', (ask: Ask) => {
    if (ask.ask === 'push') now = Math.max(now, ask.now);
    void answered(program, ask).then(() => process.send?.(sight(ask.id)));
  });
  await program.tick();
  await program.listen(() => process.send?.(sight(0)));
  await program.close();
}

async function answered(program: Program, ask: Ask): Promise<void> {
  if (ask.ask === 'push') await program.tick();
  if (ask.ask === 'die') dieAt(ask.dies);
  if (ask.ask === 'stop') await program.stop();
}

let left = 0;
let death: Death['when'] = 'before';

function dieAt({ nth, when }: Death): void {
  left = nth;
  death = when;
}

const die = (when: Death['when']): void => {
  if (left === 0 && death === when) process.kill(process.pid, 'SIGKILL');
};

/** Each change to the disk is counted, and the last one is the program's last. */
function watched<A extends unknown[], R>(call: (...args: A) => R): (...args: A) => R {
  return (...args) => {
    const isLast = left > 0 && (left -= 1) === 0;
    if (isLast) die('before');
    const result = call(...args);
    if (isLast) die('after');
    return result;
  };
}

fs.openSync = watched(fs.openSync);
fs.writeSync = watched(fs.writeSync as (...args: unknown[]) => number) as typeof fs.writeSync;
fs.renameSync = watched(fs.renameSync);
fs.linkSync = watched(fs.linkSync);
fs.rmSync = watched(fs.rmSync);
fs.fsync = watched(fs.fsync) as typeof fs.fsync;

main(JSON.parse(process.argv[2] ?? '{}') as Life).then(
  () => process.exit(0),
  (error: unknown) => {
    process.stderr.write(`${safely(error)}\n`);
    process.exit(exitCode(error));
  },
);
