import type { WeekPicture } from '../../app/letter.ts';
import { INK } from './headColours.ts';
import { textWidth } from './letterWidths.ts';
import { along, at, rounded } from './strokes.ts';
import { CURE, type Column } from './weekDay.ts';
import { fillOf } from './weekPatterns.ts';
import { sizeFor, written } from './weekText.ts';

export type Drawn = Readonly<{ svg: string; height: number }>;
type Chip = Readonly<{ text: string; look: 'parcel' | 'flag' | 'late' }>;

/** Under each day the orders that ship on it and those that were promised for it; a row only where there are some. */
export function orderRows({ days }: WeekPicture, columns: readonly Column[], top: number): Drawn {
  const ships = days.map((day) => day.ships.map((text): Chip => ({ text, look: 'parcel' })));
  const promised = days.map((day) =>
    day.promised.map(({ order, late }): Chip => ({ text: late ? `! ${order}` : order, look: late ? 'late' : 'flag' })),
  );
  const first = chipRow('parcel', ships, columns, top);
  const second = chipRow('flag', promised, columns, top + first.height);
  return { svg: first.svg + second.svg, height: first.height + second.height };
}

/** What each pattern and line means, in as many rows as it takes. */
export function legendDrawing({ days, legend, rows, cure, late }: WeekPicture, top: number, width: number): Drawn {
  const entries = [
    ...(days.some(({ ships }) => ships.length > 0) ? [{ label: rows.ships, sample: iconSample('parcel') }] : []),
    ...(days.some(({ promised }) => promised.length > 0) ? [{ label: rows.promised, sample: iconSample('flag') }] : []),
    ...(late === null ? [] : [{ label: late, sample: LATE_SAMPLE }]),
    ...legend.map(({ step, label }) => ({ label, sample: sampleOf(fillOf(step)) })),
    ...(cure === null ? [] : [{ label: cure, sample: CURE_SAMPLE }]),
  ];
  let [x, y] = [MARGIN, top + 12];
  const drawn = entries.map(({ label, sample }) => {
    const wide = Math.min(width - 2 * MARGIN, SAMPLE + 10 + textWidth(label, 'plain') * SIZE + 26);
    if (x > MARGIN && x + wide > width - MARGIN + 26) [x, y] = [MARGIN, y + ROW];
    const left = x;
    x += wide;
    const words = written(label, {
      x: SAMPLE + 10,
      y: 25,
      size: SIZE,
      most: wide - SAMPLE - 10,
      anchor: 'start',
      face: 'plain',
    });
    return `<g transform="translate(${at([left, y])})">${sample}${words}</g>`;
  });
  return { svg: drawn.join(''), height: entries.length === 0 ? 0 : y + ROW - top };
}

const MARGIN = 20;
const SIZE = 27;
const ROW = 46;
const SAMPLE = 50;
const MOST_CHIPS = 3;
const CHIP = 40;

const sampleOf = (fill: string): string =>
  `<rect width="${SAMPLE}" height="34" rx="6" fill="${fill}" stroke="${INK}" stroke-width="1.8"/>`;
const CURE_SAMPLE = `${along('M6 17H44', CURE, 5)}<circle cx="6" cy="17" r="6" fill="${CURE}"/>${along('M44 11V23', CURE, 5)}`;
const iconSample = (look: keyof typeof ICONS): string => `<g transform="translate(12 1)">${ICONS[look]}</g>`;
const LATE_SAMPLE = `<rect width="${SAMPLE}" height="34" rx="6" fill="${INK}"/>${written('!', { x: SAMPLE / 2, y: 27, size: 28, most: SAMPLE, colour: '#ffffff' })}`;

function chipRow(
  look: keyof typeof ICONS,
  chips: readonly (readonly Chip[])[],
  columns: readonly Column[],
  top: number,
): Drawn {
  const most = Math.max(0, ...chips.map(({ length }) => Math.min(length, MOST_CHIPS)));
  if (most === 0) return { svg: '', height: 0 };
  const icon = `<g transform="translate(${at([MARGIN + 14, top + 4])})">${ICONS[look]}</g>`;
  const drawn = chips.flatMap((own, place) =>
    shown(own).map((chip, row) => chipDrawing(chip, columns[place] ?? { left: 0, width: 0 }, top + row * (CHIP + 4))),
  );
  return { svg: icon + drawn.join(''), height: most * (CHIP + 4) + 12 };
}

/** So many by name; the last place says how many more there are. */
const shown = (chips: readonly Chip[]): readonly Chip[] =>
  chips.length <= MOST_CHIPS
    ? chips
    : [
        ...chips.slice(0, MOST_CHIPS - 1),
        {
          text: `+${chips.length - MOST_CHIPS + 1}`,
          look: chips.some(({ look }) => look === 'late') ? 'late' : 'parcel',
        },
      ];

function chipDrawing({ text, look }: Chip, { left, width }: Column, top: number): string {
  const [fill, colour] = CHIPS[look];
  return [
    `<rect x="${rounded(left + 1)}" y="${rounded(top)}" width="${rounded(width - 2)}" height="${CHIP}" rx="8" fill="${fill}" stroke="${INK}" stroke-width="2"/>`,
    written(text, {
      x: left + width / 2,
      y: top + 30,
      size: sizeFor(text, width - 10, 18, 28),
      most: width - 6,
      colour,
    }),
  ].join('');
}

const CHIPS: Readonly<Record<Chip['look'], readonly [fill: string, colour: string]>> = {
  parcel: ['#ffffff', INK],
  flag: ['#fff2b3', INK],
  late: [INK, '#ffffff'],
};

const ICONS = {
  parcel: `<path d="M2 8L15 2L28 8V24L15 30L2 24ZM2 8L15 14L28 8M15 14V30" fill="#ecdfd0" stroke="${INK}" stroke-width="2.4" stroke-linejoin="round"/>`,
  flag: `<path d="M6 2L27 9L6 17Z" fill="#ffd84d" stroke="${INK}" stroke-width="2.4" stroke-linejoin="round"/><path d="M6 1V31" stroke="${INK}" stroke-width="4"/>`,
} as const;
