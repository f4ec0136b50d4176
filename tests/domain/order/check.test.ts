import { describe, expect, test } from 'vitest';
import { checkLine } from '../../../src/domain/order/check.ts';
import { choicesFor, usualSpec } from '../../../src/domain/order/choices.ts';
import { conflicts } from '../../../src/domain/order/rules.ts';
import type { PartialSpec } from '../../../src/domain/order/spec.ts';
import { SPEC_SLOTS } from '../../../src/domain/shop/words.ts';
import { SHOP } from '../../demoShop.ts';

const codes = (spec: PartialSpec, quantity?: number): readonly string[] =>
  checkLine(SHOP, spec, quantity).map(({ why }) => why.code);

describe('what can be cast', () => {
  test.each<[string, PartialSpec, readonly string[]]>([
    ['a quarter-ounce football with a guard', { style: 'football', weight: '1/4', guard: 'black' }, []],
    ['a ball head cannot take a guard: it has no hole', { style: 'ball', guard: 'black' }, ['no-guard-hole']],
    ['a mushroom head is not cast without its wire', { style: 'mushroom', keeper: 'none' }, ['keeper-not-in-mold']],
    ['a ball head takes no skirt', { style: 'ball', dressing: 'skirt-white' }, ['takes-no-dressing']],
    ['no flipping head weighs 5/8', { style: 'flipping', weight: '5/8' }, ['no-such-weight']],
    ['no mold at all casts 5/8', { weight: '5/8' }, ['weight-unknown']],
    ['a 7/0 hook fits nothing', { style: 'football', weight: '1/2', hook: '7/0' }, ['hook-does-not-fit']],
    ['painted bismuth-tin would melt in the oven', { metal: 'bismuth-tin', paint: 'black' }, ['melts-in-oven']],
    ['bare bismuth-tin is fine', { metal: 'bismuth-tin', paint: 'bare' }, []],
    ['painted tin stands the oven', { metal: 'tin', paint: 'black' }, []],
    ['without a style, a 1/16 head with a 6/0 hook', { weight: '1/16', hook: '6/0' }, ['hook-does-not-fit']],
    ['a guard and a 3/32 head go together in no mold', { weight: '3/32', guard: 'black' }, ['not-together']],
  ])('%s', (_, spec, expected) => expect(codes(spec)).toEqual(expected));

  test.each([
    [4, ['too-few']],
    [5, []],
    [500, []],
    [501, ['too-many']],
    [0, ['too-few']],
    [-5, ['too-few']],
    [1e9, ['too-many']],
  ])('%d heads of one line', (quantity, expected) => expect(codes({}, quantity)).toEqual(expected));
});

describe('the menu and the check are one rule', () => {
  const everyHead = (): PartialSpec[] => {
    const grow = (specs: readonly PartialSpec[], slot: (typeof SPEC_SLOTS)[number]): PartialSpec[] =>
      specs.flatMap((spec) => choicesFor(SHOP, spec, slot).map((value) => ({ ...spec, [slot]: value })));
    return (['style', 'weight', 'hook', 'keeper', 'guard'] as const).reduce<PartialSpec[]>(
      (specs, slot) => grow(specs, slot),
      [{}],
    );
  };

  test('heads that can be cast, before paint, metal and dressing, counted by hand from the mold table', () => {
    // ball: hooks 2+2+3+2 = 9 with a barb; mushroom: 2+2+2+1 = 7 with wire; football 2+2+2+1 = 7, swim 1+2+2 = 5,
    // flipping 1+2+2+1 = 6, each with or without wire, each with 5 guards or none of them: (7 + 5 + 6) × 2 × 5.
    expect(everyHead()).toHaveLength(9 + 7 + (7 + 5 + 6) * 2 * 5);
  });

  test('whatever is offered passes the check, and what passes the check is offered', () => {
    for (const spec of everyHead().filter((_, index) => index % 7 === 0))
      for (const slot of SPEC_SLOTS) {
        const offered = choicesFor(SHOP, { ...spec, [slot]: undefined }, slot);
        const all = {
          style: SHOP.styles,
          paint: SHOP.paints,
          guard: SHOP.guards,
          dressing: SHOP.dressings,
          metal: SHOP.metals,
        };
        for (const { id } of slot in all ? all[slot as keyof typeof all] : [])
          expect(offered.includes(id)).toBe(conflicts(SHOP, { ...spec, [slot]: id }).length === 0);
      }
  });

  test('the usual head can always be cast', () => {
    for (const { id: style } of SHOP.styles) {
      const usual = usualSpec(SHOP, { style });
      expect(usual && conflicts(SHOP, usual)).toEqual([]);
    }
  });
});

describe('ways out', () => {
  test('the nearest weights come first for a weight that the style lacks', () => {
    const [found] = checkLine(SHOP, { style: 'flipping', weight: '5/8' }, undefined);
    expect(found?.ways[0]).toEqual({ put: { weight: '3/4' } });
    expect(found?.ways).toContainEqual({ put: { weight: '1/2' } });
  });

  test('every way out that is offered does away with its finding', () => {
    const stuck: readonly PartialSpec[] = [
      { style: 'ball', guard: 'black' },
      { style: 'flipping', weight: '5/8' },
      { style: 'football', weight: '1/2', hook: '7/0' },
      { metal: 'bismuth-tin', paint: 'black', style: 'swim' },
      { style: 'mushroom', keeper: 'none', weight: '1/8' },
    ];
    for (const spec of stuck)
      for (const { why, ways } of checkLine(SHOP, spec, undefined)) {
        expect(ways.length).toBeGreaterThan(0);
        for (const { put } of ways) expect(codes({ ...spec, ...put } as PartialSpec)).not.toContain(why.code);
      }
  });
});
