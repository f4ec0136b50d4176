import fs from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { Bot } from 'grammy';

/* As little as a bot can be: it says everything back, at once, or (when a folder is named) after the words are safe on the disk. */

const [apiRoot = '', token = '', folder] = process.argv.slice(2);
const fsync = promisify(fs.fsync);
const bot = new Bot(token, { client: { apiRoot } });

bot.on('message:text', async (ctx) => {
  if (folder !== undefined) await keep(ctx.msg.text);
  await ctx.reply(ctx.msg.text);
});
await bot.start();

/** As little as a write can be that a power cut does not undo. @param {string} text */
async function keep(text) {
  const file = fs.openSync(join(folder, 'new'), 'w', 0o600);
  fs.writeSync(file, text);
  await fsync(file);
  fs.closeSync(file);
  fs.renameSync(join(folder, 'new'), join(folder, 'kept'));
  const names = fs.openSync(folder, 'r');
  await fsync(names);
  fs.closeSync(names);
}
