import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { startTicking } from './adapters/cron/tick.ts';
import { pushedClock, type PushedClock } from './adapters/rehearsal/pushedClock.ts';
import { openRehearsal, parseSaved, type Rehearsal, type Saved } from './adapters/rehearsal/rehearsal.ts';
import { codeOf, type Log } from './app/log.ts';
import { addDays, instantOf, localDay } from './domain/craft/time.ts';
import { nextDue } from './domain/desk/due.ts';
import type { Shop } from './domain/shop/shop.ts';
import { openProgram, type Program } from './program.ts';
import type { Settings } from './settings.ts';
import { openLawFile, openShopFile } from './shopFile.ts';
import { onStop, print } from './terminal.ts';

/** A token that only the stand-in on this computer takes. */
export const REHEARSAL_TOKEN = '100000001:rehearsal-on-this-computer-only-00';
export const BUYER = { id: 201, firstName: 'Sam', languageCode: 'en' } as const;
export const MAKER = { id: 101, firstName: 'Kettle Bay', languageCode: 'en' } as const;

export type Stage = Readonly<{
  program: Program;
  rehearsal: Rehearsal;
  clock: PushedClock;
  close: () => Promise<void>;
}>;

export type StageParts = Readonly<{
  settings: Settings;
  shop: Shop;
  clock: PushedClock;
  saved: Saved | undefined;
  log: Log;
  say: (sentence: string) => void;
}>;

/** The same program as the real thing, against a stand-in for the chat platform on this computer. */
export async function openStage({ settings, shop, clock, saved, log, say }: StageParts): Promise<Stage> {
  const makers = settings.makers.length > 0 ? settings.makers : [MAKER.id];
  let program: Program | undefined;
  const rehearsal = await openRehearsal({
    token: REHEARSAL_TOKEN,
    people: [BUYER, MAKER],
    maker: makers[0] ?? MAKER.id,
    zone: shop.zone,
    clock,
    nextDue: () => program && nextDue(shop, program.desk(), clock.now()),
    onPush: async () => program?.tick(),
    tomorrowMorning: (now) => instantOf(addDays(localDay(now, shop.zone), 1), shop.digestAt, shop.zone),
    port: settings.port,
    ...(saved ? { saved } : {}),
  });
  program = await openProgram({
    ...settings,
    shop,
    law: openLawFile(),
    token: REHEARSAL_TOKEN,
    apiRoot: rehearsal.apiRoot,
    makers,
    clock: clock.now,
    log,
    say,
  });
  const opened = program;
  const close = async (): Promise<void> => {
    await opened.close();
    await rehearsal.close();
  };
  return { program: opened, rehearsal, clock, close };
}

/** A rehearsal is watched on its page; lines of a log would only bury the address. */
const quietLog: Log = () => {};

/** Opens the rehearsal for a person with a browser, and keeps its chats for the next time. */
export async function rehearse(settings: Settings): Promise<void> {
  const shop = openShopFile(settings.shopFile);
  const file = join(settings.dataDir, '..', 'rehearsal-chats.json');
  const saved = readSaved(file);
  const log = quietLog;
  const clock = pushedClock({ ahead: saved?.ahead ?? 0 });
  const stage = await openStage({ settings, shop, clock, saved, log, say: print });
  const { program, rehearsal } = stage;
  const ticking = await startTicking(program.tick, log);
  const keep = keeper(file);
  const keeping = setInterval(() => keep(rehearsal.snapshot()), 2_000);
  onStop(program.stop);
  // Whoever makes a bot has written to it; else the first order would find nobody to tell.
  if (saved === undefined) rehearsal.chats.start(settings.makers[0] ?? MAKER.id);
  welcome(shop, rehearsal.url);
  try {
    await program.listen(() => {});
  } finally {
    clearInterval(keeping);
    keep(rehearsal.snapshot());
    await ticking.stop();
    await stage.close();
  }
}

function welcome(shop: Shop, url: string): void {
  print(`${shop.name}: rehearsal on this computer, no account needed.`);
  print(`Open ${url}`);
  print('Three things to try:');
  print('  1. As the buyer type: 25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
  print('  2. Tap the order through, accept it, and as the maker type: bench');
  print('  3. Start the pour, tap done, go on to the oven, and push the clock to the next reminder.');
  print('Stop it with Ctrl-C; order book and chats are kept for the next start.');
}

function readSaved(file: string): Saved | undefined {
  try {
    return parseSaved(JSON.parse(readFileSync(file, 'utf8')));
  } catch {
    // No chats yet, or a file that is not whole: the chats begin anew. The order book is elsewhere and keeps its own watch.
    return undefined;
  }
}

/** Keeps the chats for the next start. That they cannot be kept is said once and ends nothing: the order book keeps its own watch. */
function keeper(file: string): (saved: Saved) => void {
  let isSaid = false;
  return (saved) => {
    try {
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(`${file}.new`, JSON.stringify(saved), { mode: 0o600 });
      renameSync(`${file}.new`, file);
    } catch (error) {
      if (!isSaid) print(`The chats of the rehearsal cannot be kept in ${file} (${codeOf(error)}).`);
      isSaid = true;
    }
  };
}
