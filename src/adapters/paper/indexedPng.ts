import { crc32, deflateSync } from 'node:zlib';

/** Pixels as red, green, blue and an opaque alpha, row by row. */
export type Raster = Readonly<{ width: number; height: number; pixels: Uint8Array }>;

/** A PNG of at most 256 colours, a third of the size of one in full colour: rare shades become the nearest common one.
 *  Written by the PNG specification, third edition (W3C). */
export function indexedPng({ width, height, pixels }: Raster): Uint8Array {
  const runs = runsOf(pixels);
  const colours = coloursOf(runs);
  const palette = commonColours(colours);
  const exact = new Map(palette.map((colour, place) => [colour, place]));
  const places = new Map(
    [...colours.keys()].map((colour) => [colour, exact.get(colour) ?? nearestPlace(palette, colour)]),
  );
  const rows = inRows(width, height, placed(runs, places, width * height));
  return Buffer.concat([
    SIGNATURE,
    chunk('IHDR', header(width, height)),
    chunk('PLTE', Uint8Array.from(palette.flatMap(channels))),
    chunk('IDAT', deflateSync(rows, { level: 7 })),
    chunk('IEND', new Uint8Array()),
  ]);
}

const SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);
const PALETTE_SIZE = 256;

/** Eight bits to a pixel, each the place of its colour in the palette; no filter, no interlace. */
function header(width: number, height: number): Uint8Array {
  const bytes = Buffer.alloc(13);
  bytes.writeUInt32BE(width, 0);
  bytes.writeUInt32BE(height, 4);
  bytes.set([8, 3, 0, 0, 0], 8);
  return bytes;
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const bytes = Buffer.alloc(named.length + 8);
  bytes.writeUInt32BE(data.length, 0);
  bytes.set(named, 4);
  bytes.writeUInt32BE(crc32(named), named.length + 4);
  return bytes;
}

/** So many pixels of one colour, side by side. A drawing has few of these beside its pixels. */
type Run = Readonly<{ colour: number; length: number }>;

function runsOf(pixels: Uint8Array): readonly Run[] {
  const runs: Run[] = [];
  const end = pixels.length / 4;
  let [from, colour] = [0, colourAt(pixels, 0)];
  for (let at = 1; at <= end; at++) {
    const here = at < end ? colourAt(pixels, at) : -1;
    if (here === colour) continue;
    runs.push({ colour, length: at - from });
    [from, colour] = [at, here];
  }
  return runs;
}

const colourAt = (pixels: Uint8Array, at: number): number =>
  ((pixels[at * 4] ?? 0) << 16) | ((pixels[at * 4 + 1] ?? 0) << 8) | (pixels[at * 4 + 2] ?? 0);

/** Each colour with the count of its pixels. */
function coloursOf(runs: readonly Run[]): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const { colour, length } of runs) counts.set(colour, (counts.get(colour) ?? 0) + length);
  return counts;
}

/** Each pixel as the place of its colour. */
function placed(runs: readonly Run[], places: ReadonlyMap<number, number>, count: number): Uint8Array {
  const all = new Uint8Array(count);
  let at = 0;
  for (const { colour, length } of runs) {
    all.fill(places.get(colour) ?? 0, at, at + length);
    at += length;
  }
  return all;
}

/** Each row behind the number of its filter, which is 0 for none. */
function inRows(width: number, height: number, places: Uint8Array): Uint8Array {
  const rows = new Uint8Array((width + 1) * height);
  for (let row = 0; row < height; row++)
    rows.set(places.subarray(row * width, (row + 1) * width), row * (width + 1) + 1);
  return rows;
}

const commonColours = (counts: ReadonlyMap<number, number>): number[] =>
  [...counts]
    .sort(([a, countA], [b, countB]) => countB - countA || a - b)
    .slice(0, PALETTE_SIZE)
    .map(([colour]) => colour);

function nearestPlace(palette: readonly number[], colour: number): number {
  let nearest = 0;
  for (let place = 1; place < palette.length; place++)
    if (gap(palette[place] ?? 0, colour) < gap(palette[nearest] ?? 0, colour)) nearest = place;
  return nearest;
}

const gap = (a: number, b: number): number =>
  ((a >> 16) - (b >> 16)) ** 2 + (((a >> 8) & 255) - ((b >> 8) & 255)) ** 2 + ((a & 255) - (b & 255)) ** 2;

const channels = (colour: number): number[] => [colour >> 16, (colour >> 8) & 255, colour & 255];
