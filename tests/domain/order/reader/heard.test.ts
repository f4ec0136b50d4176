import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { LineWords, Reading } from '../../../../src/domain/order/reader/reading.ts';
import { readerFor } from '../../../../src/domain/order/reader/read.ts';
import { choicesFor } from '../../../../src/domain/order/choices.ts';
import { shopSchema } from '../../../../src/domain/shop/shop.ts';
import { SHOP } from '../../../demoShop.ts';

const OTHER = shopSchema.parse(
  JSON.parse(readFileSync(join(import.meta.dirname, '..', '..', '..', 'fixtures', 'other-shop.json'), 'utf8')),
);
/** A Tuesday evening. */
const NOW = Date.parse('2026-05-12T20:00:00-05:00');

type Row = readonly [
  said: string,
  lines: readonly LineWords[],
  more?: Partial<Pick<Reading, 'needBy' | 'shipTo' | 'unclear'>>,
];

const heard = (reading: Reading): unknown => ({
  lines: reading.lines,
  needBy: reading.needBy,
  shipTo: reading.shipTo,
  unclear: reading.unclear,
});
const expected = ([, lines, more = {}]: Row): unknown => ({ lines, needBy: null, shipTo: null, unclear: [], ...more });

/** Each row under what was said. */
const named = (rows: readonly Row[]): readonly (readonly [string, Row])[] => rows.map((row) => [row[0], row]);

const ROWS: readonly Row[] = [
  [
    'can I grab 2 doz 3/8 oz swim jigs, white, white skirts, clear guards, need em by the 30th, shipping to Madison WI',
    [{ quantity: 24, style: 'swim', weight: '3/8', paint: 'white', guard: 'clear', dressing: 'skirt-white' }],
    { needBy: '2026-05-30', shipTo: 'US-WI' },
  ],
  [
    '100 eighth oz mushrooms: half purple half orange, 1/0 hooks',
    [
      { quantity: 50, style: 'mushroom', weight: '1/8', hook: '1/0', paint: 'purple' },
      { quantity: 50, style: 'mushroom', weight: '1/8', hook: '1/0', paint: 'orange' },
    ],
  ],
  [
    'I need thirty six half ounce footballs in brown w/ brown orange skirts, 5/0, no weed guards. send to TX',
    [
      {
        quantity: 36,
        style: 'football',
        weight: '1/2',
        hook: '5/0',
        paint: 'brown',
        guard: 'none',
        dressing: 'skirt-brown-orange',
      },
    ],
    { shipTo: 'US-TX' },
  ],
  ['do 15 instead of 20 and make them chartreuse', [{ quantity: 15, paint: 'chartreuse' }]],
  [
    '15 black, 15 white, 15 chart - all 1/4 ball 2/0',
    ['black', 'white', 'chartreuse'].map((paint) => ({
      quantity: 15,
      style: 'ball',
      weight: '1/4',
      hook: '2/0',
      paint,
    })),
  ],
  [
    'my buddy got 50 from you last month. I want 30 quarter ounce ball heads like his, in orange w/ 1/0 hooks',
    [{ quantity: 30, style: 'ball', weight: '1/4', hook: '1/0', paint: 'orange' }],
  ],
  [
    '12 each black and gp flipping 3/4 6/0 black guards skirt black/blue',
    ['black', 'green-pumpkin'].map((paint) => ({
      quantity: 12,
      style: 'flipping',
      weight: '3/4',
      hook: '6/0',
      paint,
      guard: 'black',
      dressing: 'skirt-black-blue',
    })),
  ],
  [
    'I fish the Mississippi in Iowa but ship to Illinois. 40 1/16 ned, unpainted',
    [{ quantity: 40, style: 'mushroom', weight: '1/16', paint: 'bare' }],
    { shipTo: 'US-IL' },
  ],
  [
    '3 dozen 3/32 mushroom heads, half of them chartreuse and the other half white',
    ['chartreuse', 'white'].map((paint) => ({ quantity: 18, style: 'mushroom', weight: '3/32', paint })),
  ],
  ['need by Thanksgiving', [], { needBy: '2026-11-26' }],
  [
    'hi, #1: 30 1/8 ball white #2: 20 1/4 ball black',
    [
      { quantity: 30, style: 'ball', weight: '1/8', paint: 'white' },
      { quantity: 20, style: 'ball', weight: '1/4', paint: 'black' },
    ],
  ],
  [
    '20 1/8 ball white #1. 20 1/16 ball black #2. 10 1/4 swim white',
    [
      { quantity: 20, style: 'ball', weight: '1/8', hook: '1', paint: 'white' },
      { quantity: 20, style: 'ball', weight: '1/16', hook: '2', paint: 'black' },
      { quantity: 10, style: 'swim', weight: '1/4', paint: 'white' },
    ],
  ],
  [
    'We lose 20 jigs every trip. 40 1/8 ball white, lose guards',
    [{ quantity: 40, style: 'ball', weight: '1/8', paint: 'white', guard: 'none' }],
  ],
  [
    '20 football 1/2 oz 4/0 gp. oh and can you leave off the keeper',
    [{ quantity: 20, style: 'football', weight: '1/2', hook: '4/0', paint: 'green-pumpkin', keeper: 'none' }],
  ],
  [
    '1/2 oz. 5/0. black. flipping. 20. done',
    [{ quantity: 20, style: 'flipping', weight: '1/2', hook: '5/0', paint: 'black' }],
  ],
  [
    '20 1/4oz ball red #1, 20 1/4oz ball red 1/0',
    ['1', '1/0'].map((hook) => ({ quantity: 20, style: 'ball', weight: '1/4', hook, paint: 'red' })),
  ],
  [
    'twenty-five 3/8 oz swim, pearl white',
    [{ quantity: 25, style: 'swim', weight: '3/8' }],
    { unclear: [{ slot: 'paint', said: 'pearl white' }] },
  ],
  [
    'whats the price on 50 1/4 oz ball heads in white?',
    [{ quantity: 50, style: 'ball', weight: '1/4', paint: 'white' }],
  ],
  [
    "I'm not sure on hook size, maybe 3/0 or 4/0. 25 3/8 football black",
    [{ quantity: 25, style: 'football', weight: '3/8', paint: 'black' }],
    { unclear: [{ slot: 'hook', said: '3/0 or 4/0' }] },
  ],
  [
    'no rush, whenever you get to it. 60 1/8 balls chartreuse #2',
    [{ quantity: 60, style: 'ball', weight: '1/8', hook: '2', paint: 'chartreuse' }],
  ],
  [
    'hooks 4/0, paint black, weight 3/8, style flipping, qty 40',
    [{ quantity: 40, style: 'flipping', weight: '3/8', hook: '4/0', paint: 'black' }],
  ],
  [
    '30 1/4 swim, 3/0, black; 20 1/2 swim, 5/0, white; green guards on the whites only',
    [
      { quantity: 30, style: 'swim', weight: '1/4', hook: '3/0', paint: 'black' },
      { quantity: 20, style: 'swim', weight: '1/2', hook: '5/0', paint: 'white', guard: 'green' },
    ],
  ],
  [
    '24 x 1/4oz football heads - GRN PUMPKIN - 3/0 - brown guard - no skirt - ship: NE',
    [
      {
        quantity: 24,
        style: 'football',
        weight: '1/4',
        hook: '3/0',
        paint: 'green-pumpkin',
        guard: 'brown',
        dressing: 'none',
      },
    ],
    { shipTo: 'US-NE' },
  ],
  [
    'can i get the usual hooks in 40 1/4 footballs in brown',
    [{ quantity: 40, style: 'football', weight: '1/4', paint: 'brown' }],
  ],
  ['by the end of June', [], { needBy: '2026-06-30' }],
  ['20 heads 1/4 oz. Ball. Orange. not red', [{ quantity: 20, style: 'ball', weight: '1/4', paint: 'orange' }]],
  ['20 red, no make it purple, 1/4 ball', [{ quantity: 20, style: 'ball', weight: '1/4', paint: 'purple' }]],
  ['tin instead of lead', [{ metal: 'tin' }]],
  ['I want no paint on them', [{ paint: 'bare' }]],
  [
    '2/0 for the 1/4s and 3/0 for the 3/8s',
    [
      { weight: '1/4', hook: '2/0' },
      { weight: '3/8', hook: '3/0' },
    ],
  ],
  ['can you ship to Saskatchewan', [], { shipTo: 'CA-SK' }],
  ['50 jigs', [{ quantity: 50 }]],
  ['', []],
  ['שלום עולם', []],
];

describe('what a careful person at the bench would write down', () => {
  const reader = readerFor(SHOP);
  test.each(named(ROWS))('%s', (said, row) => expect(heard(reader.read(said, NOW))).toEqual(expected(row)));

  test.each<[string, Parameters<typeof reader.answer>[1], Reading['lines']]>([
    ['3/8', 'weight', [{ weight: '3/8' }]],
    ['20', 'quantity', [{ quantity: 20 }]],
    ['2', 'hook', [{ hook: '2' }]],
    ['black', 'guard', [{ guard: 'black' }]],
    ['black', 'paint', [{ paint: 'black' }]],
    ['none', 'dressing', [{ dressing: 'none' }]],
  ])('“%s” in answer to the question for the %s', (said, asked, lines) =>
    expect(reader.answer(said, asked, NOW).lines).toEqual(lines),
  );

  test('no text whatsoever makes it stumble, and the same text is read the same way', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (said) => {
        expect(reader.read(said, NOW)).toEqual(reader.read(said, NOW));
      }),
    );
    expect(reader.read('x'.repeat(4096), NOW).lines).toEqual([]);
  });

  test('any order said in a plain sentence comes back whole', () => {
    const line = fc
      .record({
        style: fc.constantFrom(...SHOP.styles.map(({ id }) => id)),
        quantity: fc.integer({ min: 5, max: 500 }),
        paint: fc.constantFrom(...SHOP.paints),
        seed: fc.nat(1000),
      })
      .map(({ style, quantity, paint, seed }) => {
        const weights = choicesFor(SHOP, { style }, 'weight');
        const weight = weights[seed % weights.length] ?? '';
        const hooks = choicesFor(SHOP, { style, weight }, 'hook');
        return { quantity, style, weight, hook: hooks[seed % hooks.length] ?? '', paint: paint.id, words: paint.name };
      });
    const sentence = fc.constantFrom(
      (l: { quantity: number; style: string; weight: string; hook: string; words: string }) =>
        `${l.quantity} ${l.weight} oz ${l.style} heads in ${l.words}, ${l.hook} hooks`,
      (l: { quantity: number; style: string; weight: string; hook: string; words: string }) =>
        `please make me ${l.quantity} ${l.style} ${l.weight} oz ${l.words} with size ${l.hook} hooks`,
      (l: { quantity: number; style: string; weight: string; hook: string; words: string }) =>
        `${l.quantity}x ${l.style}, ${l.weight} oz, hook ${l.hook}, ${l.words.toUpperCase()}`,
    );
    fc.assert(
      fc.property(line, sentence, ({ words, ...wanted }, say) => {
        expect(reader.read(say({ ...wanted, words }), NOW)).toMatchObject({ lines: [wanted], unclear: [] });
      }),
      { numRuns: 300 },
    );
  });
});

describe('another shop, other molds, other words, no line of code', () => {
  const reader = readerFor(OTHER);
  const rows: readonly Row[] = [
    ['20 dart heads 3/8 pearl 2/0', [{ quantity: 20, style: 'dart', weight: '3/8', hook: '2/0', paint: 'pearl' }]],
    [
      '30 dardo de 7 g azul sardina anzuelo 1/0',
      [{ quantity: 30, style: 'dart', weight: '1/4', hook: '1/0', paint: 'sardine-blue' }],
    ],
    [
      '24 bean 5/16 glow with smoke guard and no skirt',
      [{ quantity: 24, style: 'bean', weight: '5/16', paint: 'glow', guard: 'smoke', dressing: 'none' }],
    ],
    [
      '20 cabezas alubia 7/16 perla con falda perla para el viernes',
      [{ quantity: 20, style: 'bean', weight: '7/16', paint: 'pearl', dressing: 'skirt-pearl' }],
      { needBy: '2026-05-15' },
    ],
    [
      '15 zinc darts 5/8 unpainted to Portugal',
      [{ quantity: 15, style: 'dart', weight: '5/8', paint: 'bare', metal: 'zinc' }],
      { shipTo: 'PT' },
    ],
    ['20 football heads', [{ quantity: 20 }], { unclear: [{ slot: 'style', said: 'football heads' }] }],
    [
      '30 darts 11g pearl and 20 darts 18g sardine blue',
      [
        { quantity: 30, style: 'dart', weight: '3/8', paint: 'pearl' },
        { quantity: 20, style: 'dart', weight: '5/8', paint: 'sardine-blue' },
      ],
    ],
  ];
  test.each(named(rows))('%s', (said, row) => expect(heard(reader.read(said, NOW))).toEqual(expected(row)));
});
