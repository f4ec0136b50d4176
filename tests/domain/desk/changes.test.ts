import { describe, expect, test } from 'vitest';
import { newLot, withStep, type Lot } from '../../../src/domain/bench/lot.ts';
import { readyWork } from '../../../src/domain/bench/session.ts';
import { instantOf, localClock } from '../../../src/domain/craft/time.ts';
import { inWorkingOrder } from '../../../src/domain/desk/inOrder.ts';
import { parseChange, writeChange, type Change } from '../../../src/domain/desk/change.ts';
import { changed, effectsOf } from '../../../src/domain/desk/changed.ts';
import { partsOf, putBy, shelfKey, shelfSpec, takenOff } from '../../../src/domain/desk/extras.ts';
import { clocksOn, spansOn } from '../../../src/domain/desk/hours.ts';
import { shipDays } from '../../../src/domain/desk/heading.ts';
import { lotChanged } from '../../../src/domain/desk/lotChanges.ts';
import { askedShips } from '../../../src/domain/desk/planning.ts';
import type { Desk } from '../../../src/domain/desk/state.ts';
import { SHOP } from '../../demoShop.ts';
import { BALL, FOOTBALL, openDesk } from './openDesk.ts';

const NOW = instantOf('2026-11-30', '18:30', SHOP.zone);
const bench = openDesk(
  [
    { spec: FOOTBALL, heads: 60, ships: '2026-12-02' },
    { spec: BALL, heads: 80, ships: '2026-12-04' },
    { spec: FOOTBALL, heads: 40, ships: '2026-12-05' },
  ],
  NOW,
);

const after = (change: Change, desk: Desk = bench): Desk => {
  const next = changed(SHOP, desk, change, NOW);
  if (next === undefined) throw new Error(`${writeChange(change)} changes nothing.`);
  return next;
};

describe('a change', () => {
  test.each<Change>([
    { do: 'off', day: '2026-12-05' },
    { do: 'extra', day: '2026-12-06', from: '13:00', to: '15:00' },
    { do: 'first', order: 'K-1001' },
    { do: 'split', lot: 'K-1001-1', heads: 10, of: 60 },
    { do: 'hours', day: '2026-12-06', from: '13:00', to: '15:00' },
    { do: 'away', day: '2026-12-05', from: '00:00', to: '10:00' },
    { do: 'away', day: '2026-12-05', from: '10:00', to: '24:00' },
  ])('fits a button and is read back from it: %o', (change) => {
    expect(parseChange(writeChange(change))).toEqual(change);
    expect(writeChange(change).length).toBeLessThanOrEqual(48);
  });

  test.each(['', 'off', 'off friday', 'extra 2026-12-06 15:00 13:00', 'split K-1 x', 'burn K-1'])(
    'that no button carries is none: %s',
    (said) => expect(parseChange(said)).toBeUndefined(),
  );

  test('of a day off moves what was planned for it, and taking it back moves it back', () => {
    const off = after({ do: 'off', day: '2026-11-30' });
    const effects = effectsOf(SHOP, bench, off, NOW);
    expect(effects.length).toBeGreaterThan(0);
    for (const { before, after: then } of effects) expect((then ?? '') > (before ?? '')).toBe(true);
    const on = after({ do: 'on', day: '2026-11-30' }, off);
    expect(shipDays(SHOP, on, NOW)).toEqual(shipDays(SHOP, bench, NOW));
  });

  test.each<readonly [string, Change]>([
    ['a day that is over', { do: 'off', day: '2026-11-29' }],
    ['a day without hours', { do: 'off', day: '2026-12-06' }],
    ['hours that are the usual ones', { do: 'hours', day: '2026-12-01', from: '18:30', to: '21:30' }],
    ['time away outside the hours', { do: 'away', day: '2026-12-01', from: '00:00', to: '18:30' }],
    ['an order that is not on hold', { do: 'release', order: 'K-1001' }],
    ['an order that is not there', { do: 'first', order: 'K-9999' }],
    ['a lot that is not made', { do: 'shelve', lot: 'K-1001-1' }],
  ])('of %s changes nothing', (_, change) => expect(changed(SHOP, bench, change, NOW)).toBeUndefined());

  test('of hours takes the place of the usual ones and of extra ones, until the day is opened as usual', () => {
    const extra = after({ do: 'extra', day: '2026-12-01', from: '09:00', to: '11:00' });
    const other = after({ do: 'hours', day: '2026-12-01', from: '16:00', to: '20:00' }, extra);
    const clocks = (desk: Desk): readonly string[] =>
      spansOn(SHOP, desk, '2026-12-01').map(
        ({ from, to }) => `${localClock(from, SHOP.zone)}-${localClock(to, SHOP.zone)}`,
      );
    expect(clocks(extra)).toEqual(['09:00-11:00', '18:30-21:30']);
    expect(clocks(other)).toEqual(['16:00-20:00']);
    expect(clocks(after({ do: 'extra', day: '2026-12-01', from: '19:00', to: '22:00' }, other))).toEqual([
      '16:00-22:00',
    ]);
    expect(clocks(after({ do: 'off', day: '2026-12-01' }, other))).toEqual([]);
    expect(clocks(after({ do: 'on', day: '2026-12-01' }, other))).toEqual(['18:30-21:30']);
  });

  test('of time away leaves the hours around it, and the day opened again is whole', () => {
    const away = (from: string, to: string) => after({ do: 'away', day: '2026-12-05', from, to });
    const clocks = (desk: Desk) => clocksOn(SHOP, desk, '2026-12-05').map(({ from, to }) => `${from}-${to}`);
    expect(clocks(bench)).toEqual(['08:00-14:00']);
    expect(clocks(away('12:00', '24:00'))).toEqual(['08:00-12:00']);
    expect(clocks(away('00:00', '10:00'))).toEqual(['10:00-14:00']);
    expect(clocks(away('10:00', '11:00'))).toEqual(['08:00-10:00', '11:00-14:00']);
    expect(clocks(away('07:00', '15:00'))).toEqual([]);
    expect(clocks(after({ do: 'on', day: '2026-12-05' }, away('10:00', '11:00')))).toEqual(['08:00-14:00']);
  });

  test('of extra hours never makes an order later', () => {
    const more = after({ do: 'extra', day: '2026-12-01', from: '09:00', to: '17:00' });
    const [before, then] = [shipDays(SHOP, bench, NOW), shipDays(SHOP, more, NOW)];
    for (const [order, day] of Object.entries(then)) expect(day <= (before[order] ?? '')).toBe(true);
  });

  test('puts an order first, on the bench list and in the plan', () => {
    const first = after({ do: 'first', order: 'K-1003' });
    expect(inWorkingOrder(first)[0]?.order).toBe('K-1003');
    expect((shipDays(SHOP, first, NOW)['K-1003'] ?? '') <= (shipDays(SHOP, bench, NOW)['K-1003'] ?? '')).toBe(true);
  });

  test('puts an order on hold: nothing of it can be started, and it has no day until it is released', () => {
    const held = after({ do: 'hold', order: 'K-1002' });
    expect(readyWork(SHOP, inWorkingOrder(held)).flatMap(({ shares }) => shares.map(({ lot }) => lot))).not.toContain(
      'K-1002-1',
    );
    expect(shipDays(SHOP, held, NOW)['K-1002']).toBeUndefined();
    expect(shipDays(SHOP, after({ do: 'release', order: 'K-1002' }, held), NOW)['K-1002']).toBeDefined();
  });

  test('splits a lot and joins it again, all its heads and its material kept', () => {
    const change = { do: 'split', lot: 'K-1001-1', heads: 10, of: 60 } as const;
    const split = after(change);
    // A second press of the same button.
    expect(changed(SHOP, split, change, NOW)).toBeUndefined();
    expect([split.lots['K-1001-1']?.heads, split.lots['K-1001-1b']?.heads]).toEqual([50, 10]);
    const joined = after({ do: 'join', lot: 'K-1001-1' }, split);
    expect(joined.lots['K-1001-1']?.heads).toBe(60);
    expect(joined.lots['K-1001-1b']).toBeUndefined();
  });

  test('keeps the other half of a split lot, and a lot begun anew, where the lot stood in the order of work', () => {
    const planned = after({ do: 'first', order: 'K-1001' });
    const split = after({ do: 'split', lot: 'K-1001-1', heads: 10, of: 60 }, planned);
    const turns = (split.planOrder?.places ?? []).toSorted((a, b) => a.key - b.key).map(({ lot }) => lot);
    expect([...new Set(turns)].slice(0, 2).toSorted()).toEqual(['K-1001-1', 'K-1001-1b']);
    expect(Object.keys(split.lots).slice(0, 2)).toEqual(['K-1001-1', 'K-1001-1b']);
  });

  describe('of a poured lot', () => {
    const poured: Lot = {
      ...newLot('K-1001-1', 'K-1001', FOOTBALL, 25, {}),
      good: 27,
      scrap: 2,
      used: { lead: 300 },
      reserved: { 'guard:brown': 25, 'bag:1': 1 },
    };
    const trimmed = {
      ...poured,
      steps: poured.steps.map((one, at) =>
        at === 0
          ? { ...one, state: 'done' as const, through: 29, doneAt: NOW }
          : at === 1
            ? { ...one, state: 'ready' as const }
            : one,
      ),
    };
    const desk = { ...bench, lots: { ...bench.lots, 'K-1001-1': trimmed } };
    const split = after({ do: 'split', lot: 'K-1001-1', heads: 10, of: 25 }, desk);

    test('splits it, 10 now and the others later, no head and no material lost', () => {
      const [rest, off] = [split.lots['K-1001-1'], split.lots['K-1001-1b']];
      expect(rest).toMatchObject({ heads: 15, good: 17, scrap: 2, used: { lead: 300 } });
      expect(off).toMatchObject({ heads: 10, good: 10, scrap: 0, used: {} });
      for (const lot of [rest, off]) expect(lot && lot.good + lot.scrap).toBe(lot?.steps[0]?.through);
      expect((rest?.reserved['guard:brown'] ?? 0) + (off?.reserved['guard:brown'] ?? 0)).toBe(25);
      expect(off?.reserved['guard:brown']).toBe(10);
      expect(
        readyWork(
          SHOP,
          [rest, off].flatMap((lot) => lot ?? []),
        ),
      ).toMatchObject([{ step: 'trim', shares: [{ heads: 17 }, { heads: 10 }] }]);
    });

    test('joins it again as it was', () => {
      expect(after({ do: 'join', lot: 'K-1001-1' }, split).lots['K-1001-1']).toEqual(trimmed);
    });

    test('does not join what is at another step, and says so', () => {
      const off = split.lots['K-1001-1b'];
      if (off === undefined) throw new Error('Nothing was split off.');
      const ahead = withStep(off, 'trim', { state: 'done', through: 10, doneAt: NOW });
      const apart = { ...split, lots: { ...split.lots, 'K-1001-1b': ahead } };
      expect(lotChanged(SHOP, apart, { do: 'join', lot: 'K-1001-1' })).toBe('alone');
    });

    test('does not split what is partly baked, is packed or came off the shelf', () => {
      const of = (lot: Lot): unknown =>
        lotChanged(SHOP, { ...bench, lots: { 'K-1001-1': lot } }, { do: 'split', lot: 'K-1001-1', heads: 5, of: 25 });
      const steps = (state: 'done' | 'ready', through: number): Lot['steps'] =>
        trimmed.steps.map((one) => (one.step === 'bake' ? { ...one, state, through } : { ...one, state: 'done' }));
      expect(of({ ...trimmed, steps: steps('ready', 12) })).toBe('part-baked');
      expect(of({ ...trimmed, steps: steps('done', 27) })).toBe('packed');
      expect(of({ ...trimmed, shelf: 25 })).toBe('off-shelf');
    });
  });

  test('of a lot that is being worked on neither splits nor joins it', () => {
    const lot = newLot('K-1001-1', 'K-1001', FOOTBALL, 60, {});
    const begun = {
      ...lot,
      steps: lot.steps.map((one, at) => (at === 0 ? { ...one, state: 'running' as const } : one)),
    };
    const desk = { ...bench, lots: { ...bench.lots, 'K-1001-1': begun } };
    for (const change of [
      { do: 'split', lot: lot.id, heads: 5, of: 60 },
      { do: 'join', lot: lot.id },
      { do: 'remake', lot: lot.id },
    ] as const)
      expect(changed(SHOP, desk, change, NOW)).toBeUndefined();
  });
});

describe('the shelf', () => {
  const line = { spec: BALL, quantity: 10 };

  test('knows a head by all its parts, and its key says which', () => {
    expect(shelfKey(BALL)).not.toBe(shelfKey({ ...BALL, metal: 'tin' }));
    expect(shelfSpec(shelfKey(BALL))).toEqual(BALL);
    expect(shelfSpec('ball 1/4 1/0')).toBeUndefined();
  });

  test('gives its heads to the line that comes first, and no more than it has', () => {
    const shelf = putBy({}, BALL, 13);
    const parts = partsOf(shelf, [line, { ...line, quantity: 8 }]);
    expect(parts.map(({ from, at, line: { quantity } }) => [from, at, quantity])).toEqual([
      ['shelf', 0, 10],
      ['bench', 1, 5],
      ['shelf', 1, 3],
    ]);
    expect(takenOff(shelf, parts)).toEqual({});
  });

  test('makes an order ship sooner, never later', () => {
    const shipsWith = (count: number): string => {
      const asked = askedShips(SHOP, { ...bench, shelf: putBy({}, BALL, count) }, NOW, [{ spec: BALL, quantity: 60 }]);
      return 'impossible' in asked ? '9999' : asked.ships;
    };
    expect(shipsWith(60) < shipsWith(0)).toBe(true);
    expect(shipsWith(30) <= shipsWith(0)).toBe(true);
  });
});
