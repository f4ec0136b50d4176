import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { openLowdb } from '../../src/adapters/lowdb/open.ts';
import { emptyBook } from '../../src/app/book.ts';
import { BOOK_VERSIONS } from '../../src/bookVersions.ts';
import { addDays, localDay } from '../../src/domain/craft/time.ts';
import { decide } from '../../src/domain/desk/decide.ts';
import { emptyDesk, type Desk } from '../../src/domain/desk/state.ts';
import { readerFor } from '../../src/domain/order/reader/read.ts';
import { LAW, SHOP } from '../demoShop.ts';
import { MAKER, openStopwatch, quantile, type Kind, type Running, type Stopwatch } from './stopwatch.ts';

const NOW = Date.now();
const WHOLE = '25 quarter ounce football, green pumpkin, 3/0, black guard, no skirt, to Ohio';
const BUYERS = Number(process.env['TURNS'] ?? 30);
const FIRST_BUYER = 300;
/** Who only warms up the engine. */
const WARMING = 5;
/** Nobody types the next message in the same millisecond. */
const REST_MS = 15;

/** What a buyer says, by what it takes to answer: two questions, a plan and a price with a picture, an order, an address, a look;
 *  and what the answer must hold. The order is taken back afterwards, so that as many stay open as there were. */
const TALK = [
  ['question', '25 quarter ounce football heads, 3/0', /What color/],
  ['ship to', 'green pumpkin, black guard, no skirt', /ship to/],
  ['quote', 'Ohio', /TOTAL/],
  ['accept', 'order it', /is placed/],
  ['address', 'Pat Shore\n12 Shore Road\nColumbus, OH 43004', /goes to/],
  ['status', 'my orders', /Your orders/],
] as const;

type Timings = Record<string, number[]>;
type Row = Readonly<{
  name: string;
  ms: Timings;
  cpu: Readonly<{ start: number; turn: number }>;
  aSecond: number;
  startMs: number;
  megabytes: number;
}>;

/** A desk with so many open orders, alike but for their numbers and buyers, that knows everyone who is going to write. */
function deskWith(open: number): Desk {
  const decided = decide({ shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [MAKER] });
  const by = { id: 9, name: 'S', language: 'en' };
  const first = [WHOLE, 'order it'].reduce(
    (desk, text) => decided(desk, { type: 'said', by, text }, NOW).desk,
    emptyDesk,
  );
  const [order] = Object.values(first.orders);
  const [lot] = Object.values(first.lots);
  const person = first.people[9];
  if (order === undefined || lot === undefined || person === undefined)
    throw new Error('The first order was not taken.');
  const numbers = Array.from({ length: open }, (_, index) => index);
  // Late enough that none is in danger.
  const promise = { ...order.promise, ships: addDays(localDay(NOW, SHOP.zone), 300) };
  const buyers = Array.from({ length: WARMING + 2 * BUYERS }, (_, index) => FIRST_BUYER + index);
  const people = [...numbers.map((n) => 100_000 + n), ...buyers];
  return {
    ...emptyDesk,
    people: Object.fromEntries(people.map((id) => [id, { ...person, id, past: [], asked: null }])),
    orders: Object.fromEntries(
      numbers.map((n) => [`K-${5000 + n}`, { ...order, id: `K-${5000 + n}`, buyer: 100_000 + n, promise }]),
    ),
    lots: Object.fromEntries(
      numbers.map((n) => [`K-${5000 + n}-1`, { ...lot, id: `K-${5000 + n}-1`, order: `K-${5000 + n}` }]),
    ),
    // Nobody waits for a delivery.
    onHand: Object.fromEntries(Object.keys(lot.reserved).map((item) => [item, 1e6])),
    tickedAt: NOW,
    digestOn: localDay(NOW, SHOP.zone),
    next: { ...emptyDesk.next, order: 9000 },
  };
}

async function homeWith(open: number, archived: number): Promise<string> {
  const home = mkdtempSync(join(tmpdir(), 'jig-bench-'));
  const book = await openLowdb({
    folder: join(home, 'book'),
    key: { file: join(home, 'key') },
    versions: BOOK_VERSIONS,
    empty: emptyBook(emptyDesk),
    clock: () => NOW,
    say: () => {},
  });
  await book.store.change((old) => ({ next: { ...old, desk: deskWith(open) }, result: null }));
  const record = Object.values(deskWith(1).orders)[0];
  for (let row = 0; row < archived; row += 1000)
    await book.archive.append(
      Array.from({ length: 1000 }, (_, index) => ({ id: `A-${row + index}`, month: '2026-10', record })),
    );
  await book.close();
  return home;
}

async function measured(watch: Stopwatch, kind: Kind, name: string, home: string): Promise<Row> {
  const bot = await watch.start(kind, home);
  const start = bot.cpuMs();
  await talks(bot, kind, FIRST_BUYER, WARMING, 0);
  const warm = bot.cpuMs();
  const ms = await talks(bot, kind, FIRST_BUYER + WARMING, BUYERS, REST_MS);
  const begun = performance.now();
  await talks(bot, kind, FIRST_BUYER + WARMING + BUYERS, BUYERS, 0);
  const turns = BUYERS * (TALK.length + (kind === 'jigwright' ? 2 : 0));
  const aSecond = (1000 * turns) / (performance.now() - begun);
  const cpu = { start, turn: (bot.cpuMs() - warm) / (2 * turns) };
  const megabytes = bot.megabytes();
  await bot.end();
  return { name, ms, cpu, aSecond, startMs: bot.startMs, megabytes };
}

async function talks(bot: Running, kind: Kind, first: number, buyers: number, restMs: number): Promise<Timings> {
  const ms: Timings = {};
  for (let person = first; person < first + buyers; person += 1) {
    let order = '';
    for (const [what, text, expected] of TALK) {
      await new Promise((rested) => setTimeout(rested, restMs));
      const turn = await bot.says(person, text);
      if (kind === 'jigwright' && !expected.test(turn.body))
        throw new Error(`“${text}” was not answered as expected: ${turn.body.slice(0, 400)}`);
      order = /K-\d+/.exec(turn.body)?.[0] ?? order;
      (ms[what] ??= []).push(turn.ms);
    }
    if (kind === 'jigwright') await takeBack(bot, person, order);
  }
  return ms;
}

async function takeBack(bot: Running, person: number, order: string): Promise<void> {
  const asked = await bot.taps(person, `cancel|${order}|0|-`);
  const yes = /cancel-yes\|[^"\\]+/.exec(asked.body)?.[0];
  if (yes === undefined) throw new Error(`${order} could not be cancelled: ${asked.body.slice(0, 400)}`);
  await bot.taps(person, yes);
}

const PLACES: readonly Readonly<{ open: number; archived: number }>[] = [
  { open: 10, archived: 0 },
  { open: 10, archived: 1_000 },
  { open: 10, archived: 10_000 },
  ...(process.env['LONG'] === undefined ? [] : [{ open: 10, archived: 100_000 }]),
  { open: 50, archived: 0 },
  { open: 100, archived: 0 },
  { open: 500, archived: 0 },
];

/** Order turns with durable writes beside a bare bot that says everything back, on the same stand-in in the same run. */
export async function benchTurns(): Promise<void> {
  const watch = await openStopwatch();
  const echo = await measured(watch, 'echo', 'echo', '');
  const base = quantile(Object.values(echo.ms).flat(), 0.5);
  const heads = [...TALK.map(([what]) => what), 'all turns'].map((what) => what.padStart(20)).join('');
  console.info(`\n${BUYERS} buyers, ms p50/p95 (p50 in times echo)`);
  console.info(
    `${'open/archived'.padEnd(14)}${heads}${['turns/s', 'cpu ms', 'start ms', 'cpu ms', 'MB'].map((what) => what.padStart(9)).join('')}`,
  );
  print(echo, base);
  const folder = mkdtempSync(join(tmpdir(), 'jig-bench-'));
  print(await measured(watch, 'durable', 'echo + safe', folder), base);
  rmSync(folder, { recursive: true });
  for (const { open, archived } of PLACES) {
    const home = await homeWith(open, archived);
    print(await measured(watch, 'jigwright', `${open}/${archived}`, home), base);
    rmSync(home, { recursive: true, force: true });
  }
  watch.close();
}

function print({ name, ms, cpu, aSecond, startMs, megabytes }: Row, base: number): void {
  const cells = [...TALK.map(([what]) => ms[what] ?? []), Object.values(ms).flat()].map((values) => {
    const half = quantile(values, 0.5);
    return `${half.toFixed(1)}/${quantile(values, 0.95).toFixed(1)} (${(half / base).toFixed(1)}×)`.padStart(20);
  });
  const numbers = [
    aSecond.toFixed(0),
    cpu.turn.toFixed(1),
    startMs.toFixed(0),
    cpu.start.toFixed(0),
    megabytes.toFixed(0),
  ];
  console.info(`${name.padEnd(14)}${cells.join('')}${numbers.map((one) => one.padStart(9)).join('')}`);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await benchTurns();
