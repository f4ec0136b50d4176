import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openLowdb } from '../../src/adapters/lowdb/open.ts';
import { emptyBook } from '../../src/app/book.ts';
import { BOOK_VERSIONS } from '../../src/bookVersions.ts';
import { decide } from '../../src/domain/desk/decide.ts';
import { emptyDesk, type Desk } from '../../src/domain/desk/state.ts';
import { readerFor } from '../../src/domain/order/reader/read.ts';
import { LAW, SHOP } from '../demoShop.ts';
import { pathToFileURL } from 'node:url';
import { openStopwatch, quantile, type Kind } from './stopwatch.ts';

const NOW = Date.UTC(2026, 10, 30, 23);
const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const TURNS = Number(process.env['TURNS'] ?? 30);

/** What a buyer says, by what it takes to answer: a question, a plan and a price with a picture, an order, an address, a look. */
const TALK = [
  ['question', '30 swim heads'],
  ['quote', WHOLE],
  ['accept', 'order it'],
  ['address', 'Pat Shore\n12 Shore Road\nColumbus, OH 43004'],
  ['status', 'my orders'],
] as const;

/** A desk with so many open orders, alike but for their numbers and buyers; half of them await their pour, half are further on. */
function deskWith(open: number): Desk {
  const decided = decide({ shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [101] });
  const by = { id: 9, name: 'S', language: 'en' };
  const first = [WHOLE, 'order it'].reduce(
    (desk, text) => decided(desk, { type: 'said', by, text }, NOW).desk,
    emptyDesk,
  );
  const [order] = Object.values(first.orders);
  const [lot] = Object.values(first.lots);
  if (order === undefined || lot === undefined) throw new Error('The first order was not taken.');
  const numbers = Array.from({ length: open }, (_, index) => index);
  return {
    ...emptyDesk,
    orders: Object.fromEntries(
      numbers.map((n) => [`K-${5000 + n}`, { ...order, id: `K-${5000 + n}`, buyer: 100_000 + n }]),
    ),
    lots: Object.fromEntries(
      numbers.map((n) => [`K-${5000 + n}-1`, { ...lot, id: `K-${5000 + n}-1`, order: `K-${5000 + n}` }]),
    ),
    tickedAt: NOW,
    digestOn: '2026-11-30',
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
  for (let row = 0; row < archived; row += 100)
    await book.archive.append(
      Array.from({ length: 100 }, (_, index) => ({ id: `A-${row + index}`, month: '2026-10', record })),
    );
  await book.close();
  return home;
}

type Watch = Awaited<ReturnType<typeof openStopwatch>>;
type Row = Readonly<{
  name: string;
  ms: Readonly<Record<string, readonly number[]>>;
  startMs: number;
  megabytes: number;
}>;

async function measured(watch: Watch, kind: Kind, name: string, home: string): Promise<Row> {
  const { child, startMs } = await watch.start(kind, home, NOW);
  const ms: Record<string, number[]> = {};
  for (let person = 300; person < 300 + TURNS + 3; person += 1)
    for (const [what, text] of TALK) {
      const turn = await watch.turn(person, text);
      // The first few warm up the engine.
      if (person >= 303) (ms[what] ??= []).push(turn.ms);
    }
  const megabytes = (await watch.rss(child)) / 1024 / 1024;
  await watch.end(child);
  return { name, ms, startMs, megabytes };
}

const PLACES: readonly Readonly<{ open: number; archived: number }>[] = [
  { open: 10, archived: 0 },
  { open: 10, archived: 1_000 },
  { open: 10, archived: 10_000 },
  { open: 50, archived: 0 },
  { open: 100, archived: 0 },
  { open: 500, archived: 0 },
];

/** Order turns with durable writes beside a bare bot that says everything back, on the same stand-in in the same run. */
export async function benchTurns(): Promise<void> {
  const watch = await openStopwatch();
  const echo = await measured(watch, 'echo', 'echo', '');
  const all = Object.values(echo.ms).flat();
  const base = quantile(all, 0.5);
  console.info(
    `echo: p50 ${base.toFixed(1)} ms, p95 ${quantile(all, 0.95).toFixed(1)} ms, start ${echo.startMs.toFixed(0)} ms, ${echo.megabytes.toFixed(0)} MB`,
  );
  console.info(
    `${TURNS} buyers; ms p50/p95 (times echo)\n${'open/archived'.padEnd(14)}${TALK.map(([what]) => what.padStart(22)).join('')}${'turns/s'.padStart(9)}${'start ms'.padStart(9)}${'MB'.padStart(6)}`,
  );
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

function print({ name, ms, startMs, megabytes }: Row, base: number): void {
  const cells = TALK.map(([what]) => {
    const values = ms[what] ?? [];
    const half = quantile(values, 0.5);
    return `${half.toFixed(1)}/${quantile(values, 0.95).toFixed(1)} (${(half / base).toFixed(1)}×)`.padStart(22);
  });
  const all = Object.values(ms).flat();
  const rate = (1000 * all.length) / all.reduce((sum, one) => sum + one, 0);
  console.info(
    `${name.padEnd(14)}${cells.join('')}${rate.toFixed(0).padStart(9)}${startMs.toFixed(0).padStart(9)}${megabytes.toFixed(0).padStart(6)}`,
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await benchTurns();
