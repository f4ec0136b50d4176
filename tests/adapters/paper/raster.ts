import { Resvg } from '@resvg/resvg-js';
import type { Raster } from '../../../src/adapters/paper/indexedPng.ts';

/** The pixels of a PNG as another reader of PNG sees them. */
export function rasterOf(png: Uint8Array): Raster {
  const [width, height] = [16, 20].map((at) => Buffer.from(png).readUInt32BE(at));
  const data = Buffer.from(png).toString('base64');
  const image = `<image width="${width}" height="${height}" href="data:image/png;base64,${data}"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${image}</svg>`;
  const read = new Resvg(svg).render();
  // Each look at `read.pixels` copies all of them.
  return { width: read.width, height: read.height, pixels: read.pixels };
}

type Box = Readonly<{ left: number; right: number; top: number; bottom: number }>;

/** How many pixels of a part of the picture are of another colour, `#rrggbb`. */
export function pixelsNot(colour: string, { width, pixels }: Raster, { left, right, top, bottom }: Box): number {
  const [red, green, blue] = Buffer.from(colour.slice(1), 'hex');
  let count = 0;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      const at = (y * width + x) * 4;
      if (pixels[at] !== red || pixels[at + 1] !== green || pixels[at + 2] !== blue) count++;
    }
  }
  return count;
}
