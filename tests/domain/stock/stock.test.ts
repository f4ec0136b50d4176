import { describe, expect, test } from 'vitest';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { deliveriesOf, ifOrdered, supplyOf, type Shelf } from '../../../src/domain/stock/availability.ts';
import { checkStock, setAside } from '../../../src/domain/stock/check.ts';
import { materialsFor } from '../../../src/domain/stock/materials.ts';
import { needsOf } from '../../../src/domain/stock/needs.ts';
import { usedAt } from '../../../src/domain/stock/use.ts';
import { SHOP } from '../../demoShop.ts';

const shelf: Shelf = {
  onHand: Object.fromEntries(SHOP.stock.map(({ item, onHand }) => [item, onHand])),
  reserved: {},
  arrived: [],
  today: '2026-11-30',
};
const flipping = usualSpec(SHOP, {
  style: 'flipping',
  weight: '1',
  hook: '6/0',
  paint: 'black',
  guard: 'clear',
  dressing: 'skirt-white',
}) as Spec;

describe('what a line needs', () => {
  const needs = needsOf(SHOP, { spec: flipping, quantity: 40 });

  test('every material of a guarded, skirted head is on the list', () =>
    expect(Object.keys(needs).toSorted()).toEqual([
      'bag',
      'dressing:collar',
      'dressing:skirt-white',
      'epoxy',
      'guard:clear',
      'hook:60-flat-heavy:6/0',
      'keeper:wire',
      'label',
      'metal:lead',
      'paint:black',
    ]));

  test('hooks are counted with the usual scrap: 40 good heads at 5 % want 43', () =>
    expect(needs['hook:60-flat-heavy:6/0']).toBe(43));

  test('the metal is at least that of the heads', () => expect(needs['metal:lead']).toBeGreaterThan(40 * 28.3));

  test('a bare ball head needs no powder, no guard, no wire', () => {
    const ball = usualSpec(SHOP, { style: 'ball', weight: '1/8', paint: 'bare' }) as Spec;
    expect(Object.keys(needsOf(SHOP, { spec: ball, quantity: 25 })).toSorted()).toEqual([
      'bag',
      'hook:90-round:1',
      'label',
      'metal:lead',
    ]);
  });

  test('each material is used up at one step of the routing, and all of it is', () => {
    const steps = ['pour', 'trim', 'paint', 'clear-eyes', 'bake', 'cool', 'guard', 'cure', 'dress', 'pack'] as const;
    const left = steps.reduce((reserved, step) => usedAt(step, reserved).left, { ...needs });
    expect(left).toEqual({});
  });
});

describe('when it can be had', () => {
  const item = 'hook:60-flat-heavy:6/0';

  test('90 six-aught hooks lie there', () => expect(supplyOf(SHOP, shelf, item, 90)).toEqual({ when: 'now' }));
  test('91 wait for the delivery of 3 December', () =>
    expect(supplyOf(SHOP, shelf, item, 91)).toEqual({ when: 'later', day: '2026-12-03', free: 90, due: null }));
  test('291 are not to be had', () => expect(supplyOf(SHOP, shelf, item, 291)).toEqual({ when: 'never', free: 90 }));
  test('what is reserved is not there', () =>
    expect(supplyOf(SHOP, setAside(shelf, { [item]: 50 }), item, 41).when).toBe('later'));
  test('a delivery put away is not counted twice', () =>
    expect(supplyOf(SHOP, { ...shelf, arrived: [`${item}@2026-12-03`] }, item, 91).when).toBe('never'));
  test('an overdue delivery is counted on only for the day on which one ordered today would come', () => {
    const late = { ...shelf, today: '2026-12-10' };
    expect(deliveriesOf(SHOP, late, item)).toMatchObject([{ named: '2026-12-03', overdue: 7 }]);
    expect(supplyOf(SHOP, late, item, 91)).toEqual({
      when: 'later',
      day: ifOrdered(SHOP, item, '2026-12-10'),
      free: 90,
      due: '2026-12-03',
    });
    expect(ifOrdered(SHOP, item, '2026-12-10') > '2026-12-11').toBe(true);
  });
  test('what is short and not on order is missing, and no earlier there than if it were ordered today', () =>
    expect(materialsFor(SHOP, shelf, { [item]: 291 })).toEqual({
      day: ifOrdered(SHOP, item, shelf.today),
      missing: [{ item, count: 201, due: null }],
    }));

  test('a line that waits says which item and until when', () => {
    const found = checkStock(SHOP, setAside(shelf, { 'guard:clear': 50 }), { spec: flipping, quantity: 50 }, 0);
    expect(found).toMatchObject([
      { kind: 'note', why: { code: 'waits-for-stock', item: 'guard:clear', day: '2026-12-05' } },
    ]);
  });

  test('the last material decides the day', () =>
    expect(materialsFor(SHOP, shelf, { [item]: 100, 'guard:clear': 100 }).day).toBe('2026-12-05'));
});
