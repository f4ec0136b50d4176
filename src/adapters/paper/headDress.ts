import type { Keeper } from '../../domain/shop/words.ts';
import { darker, INK, lighter, STEEL } from './headColours.ts';
import type { HeadLook } from './headLook.ts';
import type { HeadSize } from './headSize.ts';
import { along, at, rounded } from './strokes.ts';

type Dressing = NonNullable<HeadLook['dressing']>;

/** The strands of a skirt, flowing back over the hook; nothing for a plain collar. */
export function skirtDrawing(size: HeadSize, { kind, colours }: Dressing): string {
  if (kind === 'collar') return '';
  const strands = Array.from({ length: STRANDS }, (_, place) => ({
    path: strand(size, place),
    colour: colours[place % colours.length] ?? STEEL,
  }));
  return IN_DRAWING_ORDER.map((place) => strands[place])
    .map((one) => (one === undefined ? '' : along(one.path, INK, 7.5) + along(one.path, one.colour, 5)))
    .join('');
}

/** The collar behind the head, ribbed, in the dressing's first colour. */
export function collarDrawing({ tail, axis, unit }: HeadSize, { colours }: Dressing): string {
  const colour = colours[0] ?? STEEL;
  const [half, long] = [COLLAR_HALF * unit, COLLAR_LONG * unit];
  const ribs = [0.25, 0.5, 0.75].map((share) => `M${at([tail + long * share, axis - half])}v${rounded(2 * half)}`);
  return [
    `<rect x="${rounded(tail)}" y="${rounded(axis - half)}" width="${rounded(long)}" height="${rounded(2 * half)}" rx="${rounded(5 * unit)}" fill="${lighter(colour, 0.15)}" stroke="${INK}" stroke-width="3.2"/>`,
    along(ribs.join(''), darker(colour, 0.4), 2.4),
  ].join('');
}

/** What holds the soft bait: a cast spur, a sprung wire, or nothing; behind the collar if there is one. */
export function keeperDrawing(size: HeadSize, { keeper, dressing }: HeadLook): string {
  const from = size.tail + (dressing === null ? 0 : COLLAR_LONG * size.unit);
  return KEEPER_DRAWINGS[keeper](size, from);
}

const STRANDS = 22;
const COLLAR_HALF = 21;
const COLLAR_LONG = 26;
/** The outer strands lie behind the inner ones. */
const IN_DRAWING_ORDER = Array.from({ length: STRANDS }, (_, place) => place).sort(
  (a, b) => Math.abs(b - STRANDS / 2) - Math.abs(a - STRANDS / 2),
);

const KEEPER_DRAWINGS: Readonly<Record<Keeper, (size: HeadSize, from: number) => string>> = {
  barb: ({ axis, unit }, from) => castBarb(from, axis, Math.max(unit, LEAST_UNIT)),
  wire: ({ axis, unit, wire }, from) => sprungWire(from, axis, Math.max(unit, LEAST_UNIT), wire),
  none: () => '',
};

/** A keeper is drawn no smaller than can be seen. */
const LEAST_UNIT = 0.9;

function castBarb(x: number, y: number, unit: number): string {
  const spine = `M${at([x - 4, y - 13 * unit])}L${at([x + 12 * unit, y - 11 * unit])}L${at([x + 14 * unit, y - 27 * unit])}L${at([x + 52 * unit, y - 8 * unit])}L${at([x + 52 * unit, y + 8 * unit])}L${at([x - 4, y + 13 * unit])}Z`;
  return `<path d="${spine}" fill="url(#bare)" stroke="${INK}" stroke-width="3.2" stroke-linejoin="round"/>`;
}

function sprungWire(x: number, y: number, unit: number, wire: number): string {
  const spring = `M${at([x, y - wire])}L${at([x + 48 * unit, y - wire * 1.2])}L${at([x + 20 * unit, y - 30 * unit])}M${at([x, y + wire])}L${at([x + 48 * unit, y + wire * 1.2])}L${at([x + 24 * unit, y + 26 * unit])}`;
  return along(spring, INK, wire * 0.95) + along(spring, '#d9b65c', wire * 0.45);
}

/** One strand: from the collar it swings out and hangs back; odd ones end shorter. */
function strand({ tail, axis, unit, bend, gap }: HeadSize, place: number): string {
  const side = (place / (STRANDS - 1)) * 2 - 1;
  const root = tail + COLLAR_LONG * unit * 0.5;
  const reach = bend - root + gap * (0.55 - 0.16 * (place % 3)) - Math.abs(side) * gap * 0.35;
  const out = side * gap * 0.82;
  const droop = gap * 0.16;
  const start = at([root, axis + side * COLLAR_HALF * unit * 0.8]);
  const bow = at([root + reach * 0.25, axis + out * 1.05]);
  const sway = at([root + reach * 0.6, axis + out * 0.55 + droop * (place % 2)]);
  return `M${start}C${bow} ${sway} ${at([root + reach, axis + out * 0.95 + droop])}`;
}
