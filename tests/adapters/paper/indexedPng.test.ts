import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { indexedPng } from '../../../src/adapters/paper/indexedPng.ts';
import { rasterOf } from './raster.ts';

const opaque = (values: readonly number[]) =>
  Uint8Array.from(values.flatMap((value) => [value, (value * 7) % 256, 255 - value, 255]));

describe('a picture of few colours', () => {
  test('is read back by another reader pixel for pixel', () => {
    const sizes = fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 20 }));
    const rasters = sizes.chain(([width, height]) =>
      fc
        .array(fc.nat(255), { minLength: width * height, maxLength: width * height })
        .map((values) => ({ width, height, pixels: opaque(values) })),
    );
    fc.assert(
      fc.property(rasters, (raster) => {
        expect(Buffer.from(rasterOf(indexedPng(raster)).pixels).equals(raster.pixels)).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  test('of more colours than a palette holds, keeps the common ones and takes the nearest for the rest', () => {
    const common = Array.from({ length: 300 }, (_, at) => [at % 150, 0, 0, 255]);
    const rare = Array.from({ length: 140 }, (_, at) => [at, 3, 0, 255]);
    const pixels = Uint8Array.from([...common, ...rare].flat());
    const back = rasterOf(indexedPng({ width: 440, height: 1, pixels })).pixels;
    const gaps = Array.from(pixels, (value, at) => Math.abs(value - (back[at] ?? 0)));
    expect(Math.max(...gaps.slice(0, 1200))).toBe(0);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(3);
  });
});
