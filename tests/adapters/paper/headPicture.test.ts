import { describe, expect, test } from 'vitest';
import { BACKGROUND } from '../../../src/adapters/paper/headColours.ts';
import type { HeadLook } from '../../../src/adapters/paper/headLook.ts';
import { headPng, headsPng, headsSvg, headSvg } from '../../../src/adapters/paper/headPicture.ts';
import { headSize } from '../../../src/adapters/paper/headSize.ts';
import { KEEPERS, SHAPES } from '../../../src/domain/shop/words.ts';
import { pixelsNot, rasterOf } from './raster.ts';

const CAPTION = ['Football head, 1/2 oz', 'Hook 5/0, 60° eye', 'Paint: green pumpkin · guard: black'];
const PLAIN: HeadLook = {
  shape: 'football',
  ounces: 0.5,
  hookSize: '5/0',
  eyeDegrees: 60,
  paint: { colour: '#6b6b2a' },
  guard: { colour: '#1c1c1e' },
  keeper: 'wire',
  dressing: { kind: 'skirt', colours: ['#1c1c1e', '#2450a8'] },
  caption: CAPTION,
};
const DRESSINGS: readonly HeadLook['dressing'][] = [
  null,
  { kind: 'collar', colours: ['#8a8a8a'] },
  { kind: 'skirt', colours: ['#c8e632', '#f4f4f0'] },
];
const TOP = 440;
const wholePicture = { left: 0, right: 800, top: 0, bottom: TOP };
const border = [
  { ...wholePicture, bottom: 4 },
  { ...wholePicture, top: TOP - 4 },
  { ...wholePicture, right: 4 },
  { ...wholePicture, left: 796 },
];

describe('a head is drawn', () => {
  const looks = SHAPES.flatMap((shape) =>
    KEEPERS.flatMap((keeper) => DRESSINGS.map((dressing) => ({ ...PLAIN, shape, keeper, dressing }))),
  );

  test.each(looks)('$shape with keeper $keeper and dressing $dressing.kind, its words below', (look) => {
    const png = headPng(look);
    const raster = rasterOf(png);
    expect(raster.width).toBe(800);
    expect(png.length).toBeLessThan(60_000);
    expect(pixelsNot(BACKGROUND, raster, wholePicture)).toBeGreaterThan(25_000);
    expect(pixelsNot('#ffffff', raster, { left: 0, right: 800, top: TOP, bottom: raster.height })).toBeGreaterThan(
      5000,
    );
    for (const edge of border) expect(pixelsNot(BACKGROUND, raster, edge)).toBe(0);
  });

  test.each([
    [1 / 32, '10', 90],
    [1 / 16, '6', 90],
    [1 / 8, '6/0', 0],
    [1, '1', 30],
    [2, '1/0', 30],
    [3, '10/0', 90],
    [4, '8/0', 45],
  ])(
    '%f oz on a %s hook with an eye at %i° stays within the picture, whatever its shape',
    (ounces, hookSize, eyeDegrees) => {
      for (const shape of SHAPES) {
        const raster = rasterOf(headPng({ ...PLAIN, shape, ounces, hookSize, eyeDegrees }));
        for (const edge of border) expect(pixelsNot(BACKGROUND, raster, edge)).toBe(0);
      }
    },
  );

  test('the same head is the same picture, to the byte', () => {
    expect(Buffer.from(headPng(PLAIN)).equals(headPng(structuredClone(PLAIN)))).toBe(true);
  });

  test.each<readonly [string, Partial<HeadLook>]>([
    ['another shape', { shape: 'wedge' }],
    ['another weight', { ounces: 0.375 }],
    ['another hook', { hookSize: '4/0' }],
    ['another eye', { eyeDegrees: 90 }],
    ['another paint', { paint: { colour: '#c4262e' } }],
    ['no paint', { paint: null }],
    ['another guard', { guard: { colour: '#2f7a3c' } }],
    ['no guard', { guard: null }],
    ['a cast barb', { keeper: 'barb' }],
    ['no keeper', { keeper: 'none' }],
    ['another skirt', { dressing: { kind: 'skirt', colours: ['#f4f4f0'] } }],
    ['a plain collar', { dressing: { kind: 'collar', colours: ['#1c1c1e', '#2450a8'] } }],
    ['no dressing', { dressing: null }],
  ])('%s is seen at once', (_title, change) => {
    const [one, other] = [rasterOf(headPng(PLAIN)), rasterOf(headPng({ ...PLAIN, ...change }))];
    const changed = one.pixels.filter((value, at) => Math.abs(value - (other.pixels[at] ?? 0)) > 24).length;
    expect(changed).toBeGreaterThan(2500);
  });

  test('bare metal is told from grey paint by more than its colour', () => {
    const bare = headSvg({ ...PLAIN, paint: null });
    expect(bare).toContain('url(#bare)');
    expect(headSvg({ ...PLAIN, paint: { colour: '#8f959b' } })).not.toBe(bare);
  });

  test('white paint is seen on white for its dark outline', () => {
    const raster = rasterOf(
      headPng({ ...PLAIN, shape: 'round', paint: { colour: '#ffffff' }, guard: null, dressing: null }),
    );
    const dark = raster.pixels.filter((value, at) => at % 4 === 0 && value < 60 && at < TOP * 800 * 4).length;
    expect(dark).toBeGreaterThan(3000);
  });

  test('a heavier head and a bigger hook are drawn bigger', () => {
    const heads = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1].map((ounces) => headSize({ ...PLAIN, ounces }).unit);
    const hooks = ['4', '1', '1/0', '3/0', '6/0'].map((hookSize) => headSize({ ...PLAIN, hookSize }).gap);
    for (const sizes of [heads, hooks]) expect(sizes).toEqual(sizes.toSorted((a, b) => a - b));
  });
});

describe('heads of several lots in one picture', () => {
  const brown: HeadLook = { ...PLAIN, guard: { colour: '#5a3d24' }, caption: ['K-1002-1: 22 heads', 'brown guard'] };

  test('stand one below the other, each over its own words', () => {
    const svg = headsSvg([{ ...PLAIN, caption: ['K-1001-1: 27 heads', 'black guard'] }, brown]);
    const places = ['K-1001-1: 27 heads', 'black guard', 'K-1002-1: 22 heads', 'brown guard'].map((text) =>
      svg.indexOf(`>${text}<`),
    );
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  test('are both drawn whole, and taller than one', () => {
    const [one, both] = [rasterOf(headPng(PLAIN)), rasterOf(headsPng([PLAIN, brown]))];
    expect(both.width).toBe(800);
    expect(both.height).toBeGreaterThan(one.height);
    const ground = { left: 0, right: 800, top: 0, bottom: 280 };
    expect(pixelsNot(BACKGROUND, both, ground)).toBeGreaterThan(10_000);
    for (const edge of [
      { ...ground, right: 4 },
      { ...ground, left: 796 },
      { ...ground, bottom: 4 },
    ])
      expect(pixelsNot(BACKGROUND, both, edge)).toBe(0);
  });
});

describe('the words under the picture', () => {
  const captioned = (...caption: string[]) => ({ ...PLAIN, caption });

  test('mark-up in a name is only letters', () => {
    const svg = headSvg(captioned('<script>alert("1")</script> & \'co\'', ']]><!-- -->'));
    expect(svg).toContain('>&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;<');
    expect(svg).toContain(">&amp; 'co'<");
    expect(svg).not.toContain('<script');
    expect(headPng(captioned('<&">')).length).toBeGreaterThan(1000);
  });

  test.each([
    ['control letters', 'a\u0000b\u001fc\u007fd'],
    ['half a letter', 'half \uD83D done \uDE00'],
    ['letters that XML forbids', 'x\uFFFE\uFFFFy'],
    ['another script and a face', 'Ñandú 針 \u{1F3A3} \u202E back'],
  ])('%s are drawn or left blank, and do no harm', (_title, text) => {
    expect(headPng(captioned(text)).length).toBeGreaterThan(1000);
  });

  test.each([
    ['one long word', 'W'.repeat(300)],
    ['many words', 'chartreuse and green pumpkin '.repeat(30)],
    ['wide letters of another script', '針鉤'.repeat(100)],
  ])('%s never run out of the picture: they wrap, and end in an ellipsis', (_title, text) => {
    const look = captioned(text, text);
    const raster = rasterOf(headPng(look));
    expect(headSvg(look).match(/<text/g)).toHaveLength(4);
    expect(headSvg(look).match(/…<\/text>/g)).toHaveLength(2);
    expect(pixelsNot('#ffffff', raster, { left: 768, right: 800, top: TOP, bottom: raster.height })).toBe(0);
  });

  test('a very long caption is cut at ten rows and says so', () => {
    const svg = headSvg(captioned(...Array.from({ length: 40 }, (_, at) => `Line ${at}`)));
    expect(svg.match(/<text/g)).toHaveLength(10);
    expect(svg).toContain('>Line 9…</text>');
  });

  test('a short caption stands whole, in its order, and nothing is cut', () => {
    const said = [...headSvg(PLAIN).matchAll(/>([^<>]+)<\/text>/g)].map(([, text]) => text);
    expect(said).toEqual(CAPTION);
  });

  test('no caption leaves the picture alone', () => {
    expect(headSvg(captioned())).not.toContain('<text');
    expect(headPng(captioned('', ' \n ')).length).toBeGreaterThan(1000);
  });
});
