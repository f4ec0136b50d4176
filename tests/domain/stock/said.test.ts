import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STOCK_VERBS, stockSaid } from '../../../src/domain/stock/said.ts';
import { EN_TERMS } from '../../../src/wording/en/terms.ts';
import { ES_TERMS } from '../../../src/wording/es/terms.ts';
import { itemName } from '../../../src/wording/names.ts';
import { voiceOf } from '../../../src/wording/voice.ts';
import { SHOP } from '../../demoShop.ts';

const TODAY = '2026-11-30';
const said = (text: string) => stockSaid(SHOP, text, TODAY);

describe('the stock by message', () => {
  test.each([
    ['got 200 4/0 60 degree hooks', 'got', 200, 'hook:60-flat-heavy:4/0'],
    ['count black guards 85', 'count', 85, 'guard:black'],
    ['Count 3-0 30° hooks: 210', 'count', 210, 'hook:30-flat-heavy:3/0'],
    ['got 500 hooks 60 heavy 4/0', 'got', 500, 'hook:60-flat-heavy:4/0'],
    ['got 100 size 2 hooks', 'got', 100, 'hook:90-round:2'],
    ['received 1,000 round bend 3/0 hooks.', 'got', 1000, 'hook:90-round:3/0'],
    ['lost 12 black powder', 'lost', 12, 'paint:black'],
    ['found 40 black/blue skirts', 'found', 40, 'dressing:skirt-black-blue'],
    ['count collars 90', 'count', 90, 'dressing:collar'],
    ['count black gaurds 85', 'count', 85, 'guard:black'],
    ['conté 85 antihierbas negro', 'count', 85, 'guard:black'],
  ])('“%s”', (text, verb, count, item) => expect(said(text)).toMatchObject({ verb, count, items: [item] }));

  test.each([
    ['got 10 lb lead', 4536, 'metal:lead'],
    ['got 2 kg tin', 2000, 'metal:tin'],
    ['got 2 packs of 2/0 90 round hooks', 200, 'hook:90-round:2/0'],
  ])('“%s” is counted in the item’s own unit', (text, count, item) =>
    expect(said(text)).toMatchObject({ count, items: [item] }),
  );

  test.each([
    ['ordered 500 bags for 2026-12-09', '2026-12-09'],
    ['ordered 500 bags for Dec 9', '2026-12-09'],
    ['ordered 500 bags in 8 days', '2026-12-08'],
    ['ordered 500 bags for January 5th', '2027-01-05'],
    ['pedí 500 bolsas para el 9 de diciembre', '2026-12-09'],
    ['ordered 500 bags', null],
  ])('“%s” is expected on %s', (text, day) =>
    expect(said(text)).toMatchObject({ verb: 'ordered', count: 500, items: ['bag'], day }),
  );

  test('words that fit several items name them all', () => {
    expect(said('got 50 4/0 hooks')?.items).toEqual(['hook:60-flat-heavy:4/0', 'hook:30-flat-heavy:4/0']);
    expect(said('count black 85')?.items).toEqual(['paint:black', 'guard:black']);
  });
  test('words that fit nothing name nothing', () => expect(said('got 12 unicorns')?.items).toEqual([]));
  test.each(['got any football heads?', 'how many hooks are there', '24 football heads, 3/8', 'count'])(
    '“%s” is not about the stock',
    (text) => expect(said(text)).toBeUndefined(),
  );
  test('lead is lead, and hard lead is hard lead', () => {
    expect(said('got 500 g lead')?.items).toEqual(['metal:lead']);
    expect(said('got 500 g hard lead')?.items).toEqual(['metal:hard-lead']);
  });

  test('every item is found by the name that the program itself says, in each language', () => {
    expect([EN_TERMS.items.bag, ES_TERMS.items.bag]).toEqual(['bags', 'bolsas']);
    for (const language of ['en', 'es'] as const)
      for (const { item } of SHOP.stock) {
        const name = itemName(voiceOf(SHOP, language), item);
        expect(said(`got 37 ${name}`)?.items, name).toContain(item);
      }
  });

  test('nothing that is typed makes it stumble', () =>
    fc.assert(
      fc.property(fc.constantFrom(...STOCK_VERBS), fc.string({ unit: 'grapheme', maxLength: 60 }), (verb, text) => {
        const read = said(`${verb} ${text}`);
        if (read) expect(Number.isInteger(read.count) && read.count >= 0).toBe(true);
      }),
    ));
});
