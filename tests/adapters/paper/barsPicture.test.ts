import { describe, expect, test } from 'vitest';
import { barsPng, barsSvg } from '../../../src/adapters/paper/barsPicture.ts';
import type { BarsPicture } from '../../../src/app/letter.ts';
import { rasterOf } from './raster.ts';

const bars = (...shares: readonly number[]): BarsPicture['groups'][number]['bars'] =>
  shares.map((share, at) => ({ label: `Style ${at + 1}`, value: `$${Math.round(share * 100)}.00 · 12 heads`, share }));
const picture: BarsPicture = {
  kind: 'bars',
  title: 'November 2026',
  figures: [
    { name: 'heads', value: '1,240' },
    { name: 'sold', value: '$3,123.45' },
  ],
  groups: [
    { title: 'SOLD', bars: bars(1, 0.5, 0.25) },
    { title: 'SCRAP', bars: bars(0.1) },
  ],
};
const widths = (svg: string): readonly number[] =>
  [...svg.matchAll(/<rect [^>]*width="([\d.]+)" height="42"/g)].map(([, width]) => Number(width));

describe('numbers as bars', () => {
  test('every word stands in the picture, and a bar is as long as its share says', () => {
    const svg = barsSvg(picture);
    for (const word of ['November 2026', '1,240', '$3,123.45', 'SOLD', 'SCRAP', 'Style 3', '$25.00 · 12 heads'])
      expect(svg).toContain(`>${word}<`);
    const [whole = 0, half = 0, quarter = 0] = widths(svg);
    expect(half).toBeCloseTo(whole / 2, 1);
    expect(quarter).toBeCloseTo(whole / 4, 1);
  });

  test('it is as wide as a phone shows well, and grows downwards with what there is to say', () => {
    const few = rasterOf(barsPng({ ...picture, groups: picture.groups.slice(0, 1) }));
    const more = rasterOf(barsPng(picture));
    expect([few.width, more.width]).toEqual([1080, 1080]);
    expect(more.height).toBeGreaterThan(few.height);
  });

  test('a group without bars leaves nothing, and long or foreign words never run over', () => {
    const long = 'W'.repeat(80);
    const svg = barsSvg({
      ...picture,
      title: '<&>',
      groups: [
        { title: 'EMPTY', bars: [] },
        { title: long, bars: [{ label: long, value: long, share: 1 }] },
      ],
    });
    expect(svg).not.toContain('EMPTY');
    expect(svg).toContain('&lt;&amp;&gt;');
    expect(svg).not.toContain(long);
    expect(svg.match(/…</g)).toHaveLength(3);
  });
});
