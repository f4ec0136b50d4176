import { startTicking } from './adapters/cron/tick.ts';
import { pinoLog } from './adapters/log/pinoLog.ts';
import { Halt } from './app/exit.ts';
import { openProgram } from './program.ts';
import { rehearse } from './rehearse.ts';
import { readSettings, type Settings } from './settings.ts';
import { openLawFile, openShopFile } from './shopFile.ts';
import { onStop, print, runAsProgram } from './terminal.ts';

/** The real thing with a token, the rehearsal on this computer without one. */
async function main(): Promise<void> {
  const read = readSettings(process.env);
  if (!read.ok) throw new Halt('settings', read.faults.join('\n'));
  const { settings } = read;
  await (settings.token === null ? rehearse(settings) : serve(settings, settings.token));
}

async function serve(settings: Settings, token: string): Promise<void> {
  const shop = openShopFile(settings.shopFile);
  const log = pinoLog();
  const program = await openProgram({ ...settings, shop, law: openLawFile(), token, clock: Date.now, log, say: print });
  const ticking = await startTicking(program.tick, log);
  onStop(program.stop);
  print(`${shop.name} is open. Stop it with Ctrl-C.`);
  try {
    await program.listen(() => log('listening'));
  } finally {
    await ticking.stop();
    await program.close();
  }
}

runAsProgram(main);
