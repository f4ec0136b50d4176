import { describe, expect, test } from 'vitest';
import { instantOf, type Day } from '../../../src/domain/craft/time.ts';
import { askedShips } from '../../../src/domain/desk/planning.ts';
import { soonerWays } from '../../../src/domain/desk/sooner.ts';
import { emptyDesk } from '../../../src/domain/desk/state.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import { headsOf, type Line, type Spec } from '../../../src/domain/order/spec.ts';
import { LAW, SHOP } from '../../demoShop.ts';

const NOW = instantOf('2026-11-30', '17:00', SHOP.zone);
const spec = usualSpec(SHOP, { style: 'football', weight: '3/8', paint: 'black', guard: 'none' }) as Spec;
const lines: readonly Line[] = [{ spec, quantity: 200 }];
const asked = { draft: 'D1', version: 0, lines, shipTo: 'US-OH', passed: [] };

const waysBy = (day: Day) => soonerWays({ shop: SHOP, law: LAW }, emptyDesk, asked, day, NOW);
const shipsOf = (quantity: number): Day => {
  const made = askedShips(SHOP, emptyDesk, NOW, [{ spec, quantity }]);
  return 'impossible' in made ? '9999-12-31' : made.ships;
};

describe('an order that would not be there by the day asked for', () => {
  test('is offered bare, and with fewer heads, where that meets the day', () => {
    expect(shipsOf(200) > '2026-12-04').toBe(true);
    expect(waysBy('2026-12-04').map(({ way }) => way)).toEqual(['bare', 'fewer']);
    for (const { ships } of waysBy('2026-12-04')) expect(ships <= '2026-12-04').toBe(true);
  });

  test('of fewer heads as many as meet the day are offered, to a sixty-fourth of the order', () => {
    const heads = headsOf(waysBy('2026-12-03').find(({ way }) => way === 'fewer')?.lines ?? []);
    expect(heads).toBeGreaterThanOrEqual(SHOP.orders.least);
    expect(shipsOf(heads) <= '2026-12-03').toBe(true);
    expect(shipsOf(heads + Math.ceil(200 / 64)) > '2026-12-03').toBe(true);
  });

  test('is offered nothing for a day that is past', () => {
    expect(waysBy('2026-11-29')).toEqual([]);
  });
});
