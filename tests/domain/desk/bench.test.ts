import { describe, expect, test } from 'vitest';
import { newLot, type Lot } from '../../../src/domain/bench/lot.ts';
import { readyWork } from '../../../src/domain/bench/session.ts';
import { begin, endLag, finish } from '../../../src/domain/desk/bench.ts';
import { inWorkingOrder } from '../../../src/domain/desk/inOrder.ts';
import { emptyDesk, type Desk } from '../../../src/domain/desk/state.ts';
import { remember, takenBack } from '../../../src/domain/desk/undo.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { needsOf } from '../../../src/domain/stock/needs.ts';
import { SHOP } from '../../demoShop.ts';

const NOW = Date.UTC(2026, 11, 1, 0, 30);
const MINUTE = 60_000;

const spec = (style: string, weight: string, paint: string, guard = 'none'): Spec =>
  usualSpec(SHOP, { style, weight, paint, guard }) as Spec;

const deskWith = (...lots: readonly Lot[]): Desk => ({
  ...emptyDesk,
  lots: Object.fromEntries(lots.map((lot) => [lot.id, lot])),
});

const lot = (id: string, of: Spec, heads: number): Lot =>
  newLot(id, id.slice(0, 6), of, heads, needsOf(SHOP, { spec: of, quantity: heads }));

const ready = (desk: Desk): readonly string[] =>
  readyWork(SHOP, inWorkingOrder(desk)).map(
    ({ step, family, shares }) => `${step} ${family} ${shares.map(({ lot: id, heads }) => `${id}×${heads}`).join(' ')}`,
  );

/** Starts and ends the first ready work whose step is this. */
function work(desk: Desk, step: string, scrap: Readonly<Record<string, number>> = {}, now = NOW): Desk {
  const found = readyWork(SHOP, inWorkingOrder(desk)).find((one) => one.step === step);
  if (!found) throw new Error(`Nothing is ready to ${step}.`);
  const begun = begin(SHOP, desk, found, now);
  return finish(SHOP, begun.desk, { ...begun.session, scrap }, now).desk;
}

function lagsOver(desk: Desk, now: number): Desk {
  return Object.values(desk.timers).reduce((next, timer) => endLag(SHOP, next, timer, now), desk);
}

describe('work that lots share', () => {
  const black = spec('football', '1/4', 'black');
  const brown = spec('football', '1/4', 'brown');

  test('lots of one cavity are poured together, a few over for scrap', () =>
    expect(ready(deskWith(lot('K-1001-1', black, 20), lot('K-1002-1', brown, 10)))).toEqual([
      'pour football-1/4-lead K-1001-1×22 K-1002-1×11',
    ]));

  test('a mold with two cavities pours an even number', () =>
    expect(ready(deskWith(lot('K-1001-1', spec('ball', '1/8', 'black'), 20)))).toEqual([
      'pour ball-1/8-lead K-1001-1×22',
    ]));

  test('tin and lead are not poured from one pot', () =>
    expect(ready(deskWith(lot('K-1001-1', black, 20), lot('K-1002-1', { ...black, metal: 'tin' }, 20)))).toHaveLength(
      2,
    ));

  test('two colours are two paint sessions, one oven load', () => {
    const trimmed = work(work(deskWith(lot('K-1001-1', black, 20), lot('K-1002-1', brown, 10)), 'pour'), 'trim');
    expect(ready(trimmed)).toEqual(['paint black K-1001-1×22', 'paint brown K-1002-1×11']);
    const cleared = work(work(work(trimmed, 'paint'), 'paint'), 'clear-eyes');
    expect(ready(cleared)).toEqual(['bake 176.7C K-1001-1×22 K-1002-1×11']);
  });

  test('an oven load stops at the rack and the rest of the lot waits for the next', () => {
    const big = ['pour', 'trim', 'paint', 'clear-eyes'].reduce(
      (desk, step) => work(desk, step),
      deskWith(lot('K-1001-1', black, 60)),
    );
    expect(ready(big)).toEqual(['bake 176.7C K-1001-1×48']);
    const once = work(big, 'bake');
    expect(ready(once)).toEqual(['bake 176.7C K-1001-1×16']);
    expect(work(once, 'bake').lots['K-1001-1']?.steps.find(({ step }) => step === 'cool')?.state).toBe('running');
  });
});

describe('scrap', () => {
  const black = spec('football', '1/4', 'black');

  test('what was poured over covers the usual scrap', () => {
    const poured = work(deskWith(lot('K-1001-1', black, 20)), 'pour', { 'K-1001-1': 2 });
    expect(Object.keys(poured.lots)).toEqual(['K-1001-1']);
    expect(poured.lots['K-1001-1']).toMatchObject({ heads: 20, good: 20, scrap: 2 });
  });

  test('a lot that falls short is topped up by a lot of its own', () => {
    const poured = work(deskWith(lot('K-1001-1', black, 20)), 'pour', { 'K-1001-1': 7 });
    expect(poured.lots['K-1001-1']).toMatchObject({ heads: 15, good: 15, scrap: 7 });
    expect(poured.lots['K-1001-1b']).toMatchObject({ heads: 5, good: 0 });
    expect(ready(poured)).toContain('pour football-1/4-lead K-1001-1b×6');
  });

  test('a lot of which nothing is left is begun anew', () => {
    const poured = work(deskWith(lot('K-1001-1', black, 20)), 'pour', { 'K-1001-1': 22 });
    expect(Object.values(poured.lots).map(({ id, heads }) => [id, heads])).toEqual([['K-1001-1b', 20]]);
  });
});

describe('lags and timers', () => {
  const guarded = spec('football', '1/4', 'black', 'black');
  const toGuard = (desk: Desk): Desk =>
    lagsOver(
      ['pour', 'trim', 'paint', 'clear-eyes', 'bake'].reduce((next, step) => work(next, step), desk),
      NOW + 30 * MINUTE,
    );

  test('a bake sets two timers: up to heat, then the hold', () => {
    const cleared = ['pour', 'trim', 'paint', 'clear-eyes'].reduce(
      (desk, step) => work(desk, step),
      deskWith(lot('K-1001-1', guarded, 20)),
    );
    const [load] = readyWork(SHOP, inWorkingOrder(cleared));
    const { desk } = begin(SHOP, cleared, load as NonNullable<typeof load>, NOW);
    const timers = Object.values(desk.timers).toSorted((a, b) => a.dueAt - b.dueAt);
    expect(timers.map(({ kind }) => kind)).toEqual(['up-to-heat', 'bake']);
    expect((timers[1]?.dueAt ?? 0) - (timers[0]?.dueAt ?? 0)).toBe(SHOP.oven.holdMinutes * MINUTE);
  });

  test('cooling begins when the load is out and ends by itself', () => {
    const baked = ['pour', 'trim', 'paint', 'clear-eyes', 'bake'].reduce(
      (desk, step) => work(desk, step),
      deskWith(lot('K-1001-1', guarded, 20)),
    );
    expect(Object.values(baked.timers).map(({ kind, dueAt }) => [kind, (dueAt - NOW) / MINUTE])).toEqual([
      ['cool', 30],
    ]);
    expect(ready(lagsOver(baked, NOW + 30 * MINUTE))).toEqual(['guard - K-1001-1×22']);
  });

  test('the cure is full after a day at 23 °C and longer in the 20 °C garage', () => {
    const glued = work(toGuard(deskWith(lot('K-1001-1', guarded, 20))), 'guard');
    const [handling, cure] = Object.values(glued.timers)
      .filter(({ kind }) => kind !== 'cool')
      .toSorted((a, b) => a.dueAt - b.dueAt);
    expect([handling?.kind, cure?.kind]).toEqual(['handling', 'cure']);
    expect(((handling?.dueAt ?? 0) - NOW) / 3_600_000).toBe(10);
    expect(((cure?.dueAt ?? 0) - NOW) / 3_600_000).toBeCloseTo(24 * 2 ** 0.3, 1);
  });

  test('material leaves the shelf at its step, and nothing is left reserved at the end', () => {
    const poured = work(deskWith(lot('K-1001-1', guarded, 20)), 'pour');
    expect(poured.onHand['hook:60-flat-heavy:3/0']).toBe(420 - 22);
    expect(poured.onHand['paint:black']).toBeUndefined();
    const glued = work(toGuard(deskWith(lot('K-1001-1', guarded, 20))), 'guard');
    const packed = work(lagsOver(glued, NOW), 'pack');
    expect(packed.lots['K-1001-1']?.reserved).toEqual({});
    expect(packed.onHand['guard:black']).toBe(260 - 22);
  });

  test('every head that had the step took its guard, bad ones too, and bad pours give their metal back', () => {
    const all = work(deskWith(lot('K-1001-1', guarded, 20)), 'pour');
    const bad = work(deskWith(lot('K-1001-1', guarded, 20)), 'pour', { 'K-1001-1': 2 });
    expect(bad.onHand['hook:60-flat-heavy:3/0']).toBe(all.onHand['hook:60-flat-heavy:3/0']);
    expect(bad.onHand['metal:lead']).toBeGreaterThan(all.onHand['metal:lead'] ?? Infinity);
    const glued = work(toGuard(deskWith(lot('K-1001-1', guarded, 20))), 'guard', { 'K-1001-1': 3 });
    expect(glued.onHand['guard:black']).toBe(260 - 22);
    expect(glued.lots['K-1001-1']).toMatchObject({ good: 19, used: { 'guard:black': 22 } });
  });
});

describe('a mis-tap', () => {
  test('is taken back once, with its timers and its stock', () => {
    const before = deskWith(lot('K-1001-1', spec('ball', '1/8', 'black'), 20));
    const desk = { ...before, orders: { 'K-1001': { id: 'K-1001', state: 'accepted' } } } as unknown as Desk;
    const poured = remember(desk, work(desk, 'pour'), 'done/pour', NOW);
    const back = takenBack(poured);
    expect(back?.lots).toEqual(desk.lots);
    expect(back?.onHand).toEqual(desk.onHand);
    expect(back && takenBack(back)).toBeUndefined();
  });
});
