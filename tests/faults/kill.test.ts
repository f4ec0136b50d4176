import { expect, test } from 'vitest';
import { shopWith } from '../demoShop.ts';
import { BUYERS, playDay, type Window } from './shopDay.ts';
import { MAKER, TOKEN, dice, endOf, openLives } from './shopLives.ts';

/** `KILLS=300 npx vitest run tests/faults/kill.test.ts` for the long run. */
const KILLS = Number(process.env['KILLS'] ?? 2);
const ORDERS = KILLS >= 100 ? 40 : 2;
const SEED = Number(process.env['SEED'] ?? 7);

/** Enough of everything for a day of orders. */
const SHOP = shopWith(({ stock }) => ({ stock: stock.map((row) => ({ ...row, onHand: row.onHand * 50 })) }));
const BEGINS = Date.UTC(2026, 10, 30, 23);

test(
  `a day of ${ORDERS} orders and their bench work through ${KILLS} kills ends as the same day without one`,
  { timeout: 60_000 + KILLS * 5_000 },
  async () => {
    const calm = await played(0, 1);
    const hard = await played(KILLS, calm.windows.length);
    const repeated = hard.windows.map(({ out }) => out.length - new Set(out).size);
    console.info(
      `${hard.kills} kills (seed ${SEED}) over ${hard.windows.length} acts: ${hard.archived.length} orders shipped, ` +
        `${sum(hard.windows.map(({ out }) => out.length))} messages, ${sum(repeated)} repeated, ` +
        `${sum(hard.windows.map(({ dueTimers }) => dueTimers))} timers fell due`,
    );

    expect(hard.kills).toBeGreaterThanOrEqual(KILLS);
    expect(hard.windows.slice(0, calm.windows.length).map(({ what }) => what)).toEqual(
      calm.windows.map(({ what }) => what),
    );
    expect(calm.windows.flatMap((window, act) => missing(window, hard.windows[act]))).toEqual([]);
    expect(hard.windows.flatMap(silentTimers)).toEqual([]);
    expect(hard.windows.filter(({ kills }, act) => (repeated[act] ?? 0) > kills)).toEqual([]);
    expect(hard.archived).toEqual(calm.archived);
    // Each once, with its tracking number.
    expect(hard.archived.map(({ id }) => id)).toEqual(Array.from({ length: ORDERS }, (_, n) => `K-${1001 + n}/t`));
    expect(hard.desk).toEqual(calm.desk);
    expect(hard.left).toEqual([[], [], []]);
    expect(hard.exit).toBe(0);
    expect(hard.logs).not.toMatch(new RegExp(`${TOKEN}|K-10\\d\\d|Elm Street|Pat Shore`));
  },
);

/** The day played to its end, and what is in the book after it. */
async function played(kills: number, acts: number) {
  const lives = await openLives({ shop: SHOP, begins: BEGINS, buyers: BUYERS });
  const roll = dice(SEED);
  const isOver = (): boolean => lives.kills() >= kills;
  const ends = (act: number) =>
    Array.from({ length: Math.max(0, Math.min(kills, Math.ceil(((act + 1) * kills) / acts)) - lives.kills()) }, () =>
      endOf(roll),
    );
  const windows = await playDay(lives, ORDERS, ends, isOver);
  const exit = await lives.stop();
  const opened = await lives.book();
  const { desk, outbox, dead, closing } = opened.store.read();
  const months = await opened.archive.months();
  const rows = (await Promise.all(months.map((month) => opened.archive.read(month)))).flat();
  await opened.close();
  await lives.close();
  return {
    windows,
    exit,
    kills: lives.kills(),
    logs: lives.logs(),
    left: [outbox, dead, closing],
    desk,
    archived: rows.toSorted((a, b) => a.id.localeCompare(b.id)),
  };
}

/** Messages of the calm act that did not go out in the hard one. */
const missing = (calm: Window, hard: Window | undefined): readonly string[] => {
  const out = hard?.out ?? [];
  return calm.out.filter((text) => !out.includes(text));
};

/** An act in which a timer fell due and the maker heard nothing. */
const silentTimers = ({ what, dueTimers, out }: Window): readonly string[] =>
  dueTimers > 0 && !out.some((text) => text.startsWith(`${MAKER} `)) ? [what] : [];

const sum = (counts: readonly number[]): number => counts.reduce((total, count) => total + count, 0);
