import { createInterface } from 'node:readline';
import { booksRow } from './adapters/doors/books.ts';
import { quoteRow } from './adapters/doors/quote.ts';
import { planRow } from './adapters/doors/plan.ts';
import { readRow } from './adapters/doors/read.ts';
import { Halt } from './app/exit.ts';
import { readerFor } from './domain/order/reader/read.ts';
import { KEEPINGS } from './keepBook.ts';
import { readSettings } from './settings.ts';
import { openLawFile, openShopFile } from './shopFile.ts';
import { print, printInTurn, runAsProgram } from './terminal.ts';

/** One JSON row in, one out, through the same functions that the chat uses. */
type Door = (row: unknown) => unknown;

const shop = () => openShopFile(settingsOf().shopFile);

/** Commands beside the chat; each is made only when it is named, so that a plan needs no shop file. */
const DOORS: Readonly<Record<string, () => Door>> = {
  read: () => {
    const reader = readerFor(shop());
    return (row) => readRow(reader, row);
  },
  quote: () => {
    const trade = { shop: shop(), law: openLawFile() };
    return (row) => quoteRow(trade, row);
  },
  books: () => {
    const own = shop();
    return (row) => booksRow(own, row);
  },
  plan: () => (row) => planRow(row, () => performance.now()),
};

async function main(): Promise<void> {
  const name = process.argv[2] ?? '';
  const keeping = Object.entries(KEEPINGS).find(([named]) => named === name)?.[1];
  if (keeping !== undefined) return keeping(settingsOf(), process.argv[3] ?? '', print);
  const door = Object.hasOwn(DOORS, name) ? DOORS[name]?.() : undefined;
  if (door === undefined)
    throw new Halt(
      'settings',
      `Name what to do: ${[...Object.keys(DOORS), ...Object.keys(KEEPINGS)].join(', ')}. For example: npm run --silent jigwright -- read < messages.jsonl`,
    );
  for await (const text of createInterface({ input: process.stdin }))
    if (text.trim() !== '') await printInTurn(JSON.stringify(answer(door, text)));
}

function answer(door: Door, text: string): unknown {
  try {
    return door(JSON.parse(text) as unknown);
  } catch (error) {
    if (error instanceof SyntaxError) return { error: `This row is not JSON: ${error.message}` };
    throw error;
  }
}

function settingsOf() {
  const read = readSettings({ ...process.env, BOT_TOKEN: undefined });
  if (!read.ok) throw new Halt('settings', read.faults.join('\n'));
  return read.settings;
}

runAsProgram(main);
