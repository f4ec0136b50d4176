import { join } from 'node:path';
import { openDisk } from '../../src/adapters/lowdb/disk.ts';
import { connect } from '../../src/adapters/telegram/connect.ts';
import { openProgram } from '../../src/program.ts';
import { openLawFile, openShopFile } from '../../src/shopFile.ts';
import type { Measured } from './stopwatch.ts';

/** The bot that is measured, as a process of its own: the program on a book in `home`, or a bare bot that says everything back,
 *  at once or after it has made the words safe on the disk. */
async function main([kind = '', apiRoot = '', token = '', home = '']: readonly string[]): Promise<void> {
  const tell = (): void => void process.send?.({ rss: process.memoryUsage().rss } satisfies Measured);
  process.on('message', tell);
  if (kind === 'jigwright') await jigwright(apiRoot, token, home, tell);
  else await echo(apiRoot, token, kind === 'durable' ? safely(home) : async () => {});
}

async function echo(apiRoot: string, token: string, keep: (text: string) => Promise<void>): Promise<void> {
  const bot = connect(token, apiRoot);
  bot.on('message:text', async (ctx) => {
    await keep(ctx.msg.text);
    await ctx.reply(ctx.msg.text);
  });
  await bot.start();
}

/** As little as a write can be that a power cut does not undo. */
function safely(home: string): (text: string) => Promise<void> {
  const disk = openDisk(home);
  return async (text) => {
    await disk.write('new', Buffer.from(text));
    disk.rename('new', 'kept');
    await disk.sync();
  };
}

async function jigwright(apiRoot: string, token: string, home: string, tell: () => void): Promise<void> {
  const now = Number(process.env['NOW']);
  const program = await openProgram({
    shop: openShopFile(join(import.meta.dirname, '..', '..', 'data', 'demo-shop.json')),
    law: openLawFile(),
    token,
    apiRoot,
    makers: [101],
    dataDir: join(home, 'book'),
    key: { file: join(home, 'key') },
    clock: () => now + Math.round(performance.now()),
    log: () => {},
    say: () => {},
  });
  await program.listen(tell);
}

await main(process.argv.slice(2));
