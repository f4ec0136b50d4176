import { crc32, deflateSync } from 'node:zlib';

/** Pixels as red, green, blue and an opaque alpha, row by row. */
export type Raster = Readonly<{ width: number; height: number; pixels: Uint8Array }>;

/** A PNG of at most 256 colours, a third of the size of one in full colour: rare shades become the nearest common one.
 *  Written by the PNG specification, third edition (W3C). */
export function indexedPng({ width, height, pixels }: Raster): Uint8Array {
  const colours = coloursOf(pixels, width);
  const palette = commonColours(colours);
  const places = new Map([...colours.keys()].map((colour) => [colour, nearestPlace(palette, colour)]));
  const rows = new Uint8Array((width + 1) * height);
  for (const { colour, from, to } of runsOf(pixels, width)) {
    const row = Math.floor(from / width) + 1;
    rows.fill(places.get(colour) ?? 0, row + from, row + to);
  }
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

const colourAt = (pixels: Uint8Array, at: number): number =>
  ((pixels[at * 4] ?? 0) << 16) | ((pixels[at * 4 + 1] ?? 0) << 8) | (pixels[at * 4 + 2] ?? 0);

type Run = Readonly<{ colour: number; from: number; to: number }>;

/** Neighbours of one colour within a row, for a drawing is mostly plain surfaces. */
function* runsOf(pixels: Uint8Array, width: number): Generator<Run> {
  for (let from = 0, to = 0; from < pixels.length / 4; from = to) {
    const colour = colourAt(pixels, from);
    const end = from - (from % width) + width;
    for (to = from + 1; to < end && colourAt(pixels, to) === colour;) to++;
    yield { colour, from, to };
  }
}

/** Each colour with the count of its pixels. */
function coloursOf(pixels: Uint8Array, width: number): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const { colour, from, to } of runsOf(pixels, width)) counts.set(colour, (counts.get(colour) ?? 0) + to - from);
  return counts;
}

const commonColours = (counts: ReadonlyMap<number, number>): number[] =>
  [...counts]
    .sort(([a, countA], [b, countB]) => countB - countA || a - b)
    .slice(0, PALETTE_SIZE)
    .map(([colour]) => colour);

function nearestPlace(palette: readonly number[], colour: number): number {
  const gaps = palette.map((other) => gap(other, colour));
  return gaps.indexOf(Math.min(...gaps));
}

const gap = (a: number, b: number): number =>
  ((a >> 16) - (b >> 16)) ** 2 + (((a >> 8) & 255) - ((b >> 8) & 255)) ** 2 + ((a & 255) - (b & 255)) ** 2;

const channels = (colour: number): number[] => [colour >> 16, (colour >> 8) & 255, colour & 255];
