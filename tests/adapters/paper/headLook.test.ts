import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { headLook } from '../../../src/adapters/paper/headLook.ts';
import type { Spec } from '../../../src/domain/order/spec.ts';
import { shopSchema } from '../../../src/domain/shop/shop.ts';

const shop = shopSchema.parse(
  JSON.parse(readFileSync(new URL('../../../data/demo-shop.json', import.meta.url), 'utf8')),
);

const BALL: Spec = {
  style: 'ball',
  weight: '1/4',
  hook: '1/0',
  paint: 'bare',
  guard: 'none',
  keeper: 'barb',
  dressing: 'none',
  metal: 'lead',
};

test('a plain ball head is round, bare, with a cast barb and an upright eye', () => {
  expect(headLook(shop, BALL, ['Ball head'])).toEqual({
    shape: 'round',
    ounces: 0.25,
    hookSize: '1/0',
    eyeDegrees: 90,
    paint: null,
    guard: null,
    keeper: 'barb',
    dressing: null,
    caption: ['Ball head'],
  });
});

test('a dressed swim head shows its paint, guard and skirt as the shop has them', () => {
  const spec: Spec = {
    ...BALL,
    style: 'swim',
    hook: '3/0',
    paint: 'white',
    guard: 'clear',
    keeper: 'wire',
    dressing: 'skirt-chartreuse-white',
  };
  expect(headLook(shop, spec, [])).toEqual({
    shape: 'minnow',
    ounces: 0.25,
    hookSize: '3/0',
    eyeDegrees: 30,
    paint: { colour: '#f4f4f0' },
    guard: { colour: '#dfe6ea' },
    keeper: 'wire',
    dressing: { kind: 'skirt', colours: ['#c8e632', '#f4f4f0'] },
    caption: [],
  });
});

test('every shape of the demo shop has a style that shows it', () => {
  const shapes = shop.styles.map(({ id }) => headLook(shop, { ...BALL, style: id }, []).shape);
  expect(new Set(shapes).size).toBe(shop.styles.length);
});
