import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayFault } from '../../../src/domain/shop/fault.ts';
import { parseShop, readShopText, type ShopRead } from '../../../src/domain/shop/faults.ts';
import { demoText, leaves, spoiled, type Change } from './spoiled.ts';

const faultsOf = (read: ShopRead) => (read.ok ? [] : read.faults);
const lines = (read: ShopRead) => faultsOf(read).map(sayFault);
const gone = undefined;
const span = (from: string, to: string) => [from, to];

type Row = readonly [title: string, changes: readonly Change[], path: string, nearest?: string];
const asCase = ([title, changes, path, nearest]: Row) => ({ title, changes, path, nearest });

const BY_THEMSELVES: readonly Row[] = [
  ['a key with swapped letters', [[['paints', 0, 'haet'], 1.1]], 'paints[0].haet', 'heat'],
  ['a key with a wrong capital', [[['prices', 'minimumorder'], 5]], 'prices.minimumorder', 'minimumOrder'],
  ['a key that nothing resembles', [[['wholesale'], 5]], 'wholesale'],
  ['a missing mold list', [[['molds'], gone]], 'molds'],
  ['a number where words belong', [[['payment', 'words'], 7]], 'payment.words'],
  ['an empty text in one language', [[['texts', 'thanks'], { en: 'Thanks', es: '' }]], 'texts.thanks.es'],
  [
    'a text in a language that is not spoken',
    [[['texts', 'thanks'], { en: 'Thanks', fr: 'Merci' }]],
    'texts.thanks.fr',
  ],
  ['a text that is a number in one language', [[['texts', 'thanks'], { en: 5 }]], 'texts.thanks'],
  ['half a heads count', [[['orders', 'least'], 2.5]], 'orders.least'],
  ['a keeper word with a slip', [[['molds', 1, 'keepers', 0], 'wier']], 'molds[1].keepers[0]', 'wire'],
  ['a shape with a slip', [[['styles', 3, 'shape'], 'mushrom']], 'styles[3].shape', 'mushroom'],
  [
    'a weight not in lowest terms',
    [[['molds', 0, 'cavities', 2, 'weight'], '2/8']],
    'molds[0].cavities[2].weight',
    '1/4',
  ],
  ['a weight in decimals', [[['molds', 0, 'cavities', 2, 'weight'], '.25']], 'molds[0].cavities[2].weight'],
  [
    'a hook size with a dash',
    [[['molds', 2, 'cavities', 1, 'hooks', 1], '3-0']],
    'molds[2].cavities[1].hooks[1]',
    '3/0',
  ],
  ['an id in capitals', [[['metals', 2, 'id'], 'Tin']], 'metals[2].id', 'tin'],
  ['a short colour', [[['paints', 1, 'colour'], '#FFF']], 'paints[1].colour', '#ffffff'],
  ['a clock without its zero', [[['quiet', 'to'], '6:30']], 'quiet.to', '06:30'],
  ['a day written with strokes', [[['hours', 'daysOff', 0], '2026/11/26']], 'hours.daysOff[0]', '2026-11-26'],
  ['a day that no calendar has', [[['post', 'closed', 0], '2026-02-30']], 'post.closed[0]'],
  ['a zone with a slip', [[['zone'], 'America/Chicgo']], 'zone', 'America/Chicago'],
  ['a place in small letters', [[['salesTax', 0, 'place'], 'us-mn']], 'salesTax[0].place', 'US-MN'],
  ['a currency in small letters', [[['currency'], 'usd']], 'currency', 'USD'],
  ['shares that do not add up', [[['metals', 1, 'composition', 'Pb'], 0.9]], 'metals[1].composition'],
  [
    'an element with a slip',
    [[['metals', 1, 'composition'], { Pb: 0.96, SB: 0.04 }]],
    'metals[1].composition.SB',
    'Sb',
  ],
  ['a weekday in full', [[['hours', 'weekly', 'sunday'], []]], 'hours.weekly.sunday'],
  ['a price weight not in lowest terms', [[['prices', 'heads', 'ball', '2/8'], 75]], 'prices.heads.ball["2/8"]', '1/4'],
];

const TOGETHER: readonly Row[] = [
  ['a text in another language but the shop’s own', [[['payment', 'words'], { es: 'Pague ya' }]], 'payment.words'],
  ['a text in no language', [[['texts', 'shipped'], {}]], 'texts.shipped'],
  ['a mold of an unknown style', [[['molds', 1, 'style'], 'footbal']], 'molds[1].style', 'football'],
  ['a mold with an unknown hook pattern', [[['molds', 0, 'pattern'], '90-rond']], 'molds[0].pattern', '90-round'],
  ['two paints of one id', [[['paints', 3, 'id'], 'black']], 'paints[3].id'],
  ['two molds of one id', [[['molds', 4, 'id'], 'ball']], 'molds[4].id'],
  ['two postage regions of one id', [[['postage', 'regions', 1, 'id'], 'united-states']], 'postage.regions[1].id'],
  ['a weight twice in one mold', [[['molds', 2, 'cavities', 2, 'weight'], '3/8']], 'molds[2].cavities[2].weight'],
  ['a hook twice in one cavity', [[['molds', 0, 'cavities', 0, 'hooks', 2], '2']], 'molds[0].cavities[0].hooks[2]'],
  ['a keeper twice in one mold', [[['molds', 1, 'keepers', 2], 'wire']], 'molds[1].keepers[2]'],
  ['a cast weight with no price', [[['prices', 'heads', 'football', '3/4'], gone]], 'prices.heads.football["3/4"]'],
  ['a style with no price at all', [[['prices', 'heads', 'swim'], gone]], 'prices.heads.swim["1/2"]'],
  ['prices of a style that is unknown', [[['prices', 'heads', 'swims'], {}]], 'prices.heads.swims', 'swim'],
  ['a metal with no price', [[['prices', 'metals', 'tin'], gone]], 'prices.metals.tin'],
  ['a price of an unknown metal', [[['prices', 'metals', 'hard-led'], 5]], 'prices.metals.hard-led', 'hard-lead'],
  ['a dressing with no price', [[['prices', 'dressings', 'collar'], gone]], 'prices.dressings.collar'],
  ['a price of an unknown dressing', [[['prices', 'dressings', 'colar'], 5]], 'prices.dressings.colar', 'collar'],
  ['a hook that is not counted', [[['stock', 4], gone]], 'stock'],
  [
    'a stocked hook of an unknown pattern',
    [[['stock', 4, 'item'], 'hook:90-rund:1']],
    'stock[4].item',
    'hook:90-round:1',
  ],
  ['a stocked paint that is unknown', [[['stock', 21, 'item'], 'paint:blak']], 'stock[21].item', 'paint:black'],
  ['a stocked thing of an unknown kind', [[['stock', 39, 'item'], 'epxoy']], 'stock[39].item', 'epoxy'],
  ['a stock item counted twice', [[['stock', 1, 'item'], 'metal:lead']], 'stock[1].item'],
  ['hooks counted in grams', [[['stock', 5, 'unit'], 'gram']], 'stock[5].unit', 'piece'],
  ['a guard that fits no hole', [[['guards', 2, 'diameter'], '3/16']], 'guards[2].diameter', '1/8'],
  [
    'a weighing with a hook that does not fit',
    [[['molds', 1, 'cavities', 0, 'measured'], [{ hook: '1/0', metal: 'lead', grams: 8 }]]],
    'molds[1].cavities[0].measured[0].hook',
    '2/0',
  ],
  [
    'a weighing in an unknown metal',
    [[['molds', 1, 'cavities', 0, 'measured'], [{ hook: '2/0', metal: 'bismuth', grams: 8 }]]],
    'molds[1].cavities[0].measured[0].metal',
  ],
  [
    'the same head weighed twice',
    [[['molds', 1, 'cavities', 0, 'measured'], [1, 2].map((grams) => ({ hook: '2/0', metal: 'tin', grams }))]],
    'molds[1].cavities[0].measured[1]',
  ],
  [
    'bench hours that overlap',
    [
      [
        ['hours', 'weekly', 'tue'],
        [span('18:00', '20:00'), span('19:00', '21:00')],
      ],
    ],
    'hours.weekly.tue[1]',
  ],
  [
    'extra hours inside the usual ones',
    [[['hours', 'extra'], [{ date: '2026-12-05', from: '12:00', to: '15:00' }]]],
    'hours.extra[0]',
  ],
  [
    'extra hours that end before they begin',
    [[['hours', 'extra'], [{ date: '2026-12-06', from: '12:00', to: '09:00' }]]],
    'hours.extra[0].to',
  ],
  ['a post day twice', [[['post', 'days', 5], 'mon']], 'post.days[5]'],
  ['quiet hours that end as they begin', [[['quiet', 'to'], '22:00']], 'quiet.to'],
  ['a digest in the quiet hours', [[['digestAt'], '05:00']], 'digestAt'],
  ['a least above the most', [[['orders', 'least'], 600]], 'orders.least'],
  [
    'prices by margin with an item of unknown cost',
    [
      [['prices', 'rule'], 'margin'],
      [['stock', 3, 'costPerThousand'], gone],
    ],
    'stock[3].costPerThousand',
  ],
  [
    'prices by margin with an hour that costs nothing',
    [
      [['prices', 'rule'], 'margin'],
      [['costing', 'hourCents'], 0],
    ],
    'costing.hourCents',
  ],
  ['a price rule that is none', [[['prices', 'rule'], 'lists']], 'prices.rule', 'list'],
  ['price breaks out of order', [[['prices', 'breaks', 1, 'from'], 20]], 'prices.breaks[1].from'],
  ['a bigger line that costs more by the head', [[['prices', 'breaks', 2, 'off'], 4000]], 'prices.breaks[2].off'],
  [
    'postage bands out of order',
    [[['postage', 'regions', 0, 'bands', 2, 'upToGrams'], 500]],
    'postage.regions[0].bands[2].upToGrams',
  ],
  ['a place in two regions', [[['postage', 'regions', 1, 'places', 1], 'US']], 'postage.regions[1].places[1]'],
  ['a place taxed twice', [[['salesTax', 1], { place: 'US-MN', rate: 1 }]], 'salesTax[1].place'],
  ['a guard called none', [[['guards', 3, 'id'], 'none']], 'guards[3].id'],
  ['a paint called bare', [[['paints', 7, 'name'], 'Bare']], 'paints[7].name'],
  ['a dressing that answers to yes', [[['dressings', 0, 'aliases', 0], 'yes']], 'dressings[0].aliases[0]'],
  ['one word for two skirts', [[['dressings', 3, 'aliases', 0], 'Black Blue']], 'dressings[3].aliases[0]'],
  [
    'an alias that is the id of another paint',
    [[['paints', 4, 'aliases', 1], 'green pumpkin']],
    'paints[4].aliases[1]',
  ],
];

describe('the shop file is read whole', () => {
  test('the demo shop has no fault', () => {
    expect(lines(readShopText(demoText))).toEqual([]);
  });

  test.each([...BY_THEMSELVES, ...TOGETHER].map(asCase))(
    '$title is told with its place',
    ({ changes, path, nearest }) => {
      const told = faultsOf(parseShop(spoiled(...changes))).filter((fault) => fault.path === path);
      expect(told).not.toEqual([]);
      expect(told.map((fault) => fault.nearest)).toContain(nearest);
    },
  );

  test.each(BY_THEMSELVES.map(asCase).filter(({ path }) => !/^(molds|metals)/.test(path)))(
    '$title is one fault and starts no others',
    ({ changes }) => expect(lines(parseShop(spoiled(...changes)))).toHaveLength(1),
  );

  test('all faults are told in one go, also those that span parts while other parts are of the wrong kind', () => {
    const read = parseShop(
      spoiled(
        [['digestAt'], 7],
        [['molds', 0, 'keepers', 0], 'brab'],
        [['molds', 0, 'style'], 'bal'],
        [['molds', 3, 'cavities', 1, 'weight'], '1/16'],
        [['prices', 'metals', 'tin'], undefined],
        [['stock', 21, 'item'], 'paint:blak'],
        [['orders', 'most'], 4],
      ),
    );
    expect(lines(read)).toEqual([
      'molds[0].keepers[0]: found "brab"; allowed: barb, wire or none; nearest: barb',
      'digestAt: found 7; allowed: text in double quotes',
      'molds[0].style: found "bal"; allowed: ball, football, swim, mushroom or flipping; nearest: ball',
      'molds[3].cavities[1].weight: found "1/16"; allowed: a weight only once, and molds[3].cavities[0].weight has it already',
      'stock: found nothing; allowed: an entry for the item paint:black, be it with 0 on hand',
      expect.stringMatching(
        /^stock\[21\]\.item: found "paint:blak"; allowed: paint: and one of black, .*; nearest: paint:black$/,
      ),
      expect.stringMatching(/^prices\.heads\.bal\["1\/16"\]: found nothing; /),
      expect.stringMatching(/^prices\.heads\.bal\["1\/8"\]: /),
      expect.stringMatching(/^prices\.heads\.bal\["1\/4"\]: /),
      expect.stringMatching(/^prices\.heads\.bal\["3\/8"\]: /),
      'prices.metals.tin: found nothing; allowed: the price in cents of a head of tin',
      'orders.least: found 5; allowed: at most the 4 of orders.most',
    ]);
  });

  test('a list that is at fault itself does not make its names unknown elsewhere', () => {
    expect(lines(parseShop(spoiled([['styles', 0, 'id'], 7])))).toEqual([
      'styles[0].id: found 7; allowed: text in double quotes',
    ]);
    expect(lines(parseShop(spoiled([['metals'], 'lead'])))).toEqual(['metals: found "lead"; allowed: a list [ ]']);
  });

  test('a shop whose only metal cannot be baked has no fault', () => {
    const shop = spoiled(
      [['metals'], [{ id: 'bismuth-tin', name: 'bismuth-tin', composition: { Bi: 0.58, Sn: 0.42 } }]],
      [['prices', 'metals'], { 'bismuth-tin': 0 }],
      [['stock', 2], undefined],
      [['stock', 1], undefined],
      [['stock', 0], undefined],
    );
    expect(lines(parseShop(shop))).toEqual([]);
  });

  test('a hook that is kept for a mold to come is no fault', () => {
    expect(lines(parseShop(spoiled([['stock', 43], { item: 'hook:90-round:6', unit: 'piece', onHand: 10 }])))).toEqual(
      [],
    );
  });

  test.each([[null], [7], ['shop'], [[]], [true]])('%j is not a shop', (json) => {
    expect(lines(parseShop(json))).toEqual([
      expect.stringMatching(/^the shop file: found .*; allowed: a group \{ \}$/),
    ]);
  });

  test('every fault is one line of bearable length, whatever stands in the file', () => {
    const read = parseShop(
      spoiled([['name\nof it'], 1], [['zone'], 'x\n'.repeat(500)], [['molds', 0, 'style'], '\u2028']),
    );
    expect(lines(read)).toHaveLength(3);
    for (const line of lines(read)) expect(line).toMatch(/^.{10,900}$/);
  });
});

describe('no spoiled shop file is too much', () => {
  const ways = leaves(JSON.parse(demoText));
  const odd = fc.oneof(
    fc.constantFrom(undefined, null, '', 0, -1, 1.5, 1e300, [], {}, 'none', '__proto__', 'constructor', 'NaN', [null]),
    fc.jsonValue({ maxDepth: 1 }),
  );

  test('any leaf taken out or replaced is answered, and no fault is told twice', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ways), odd, (way, value) => {
        const told = lines(parseShop(spoiled([way, value])));
        expect(new Set(told).size).toBe(told.length);
      }),
      { numRuns: 300 },
    );
  });

  test('any branch taken out or replaced is answered', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ways), fc.nat(3), odd, (way, up, value) => {
        const branch = way.slice(0, Math.max(1, way.length - up));
        expect(parseShop(spoiled([branch, value]))).toHaveProperty('ok');
      }),
      { numRuns: 300 },
    );
  });
});
