import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { weekPng, weekSvg } from '../../../src/adapters/paper/weekPicture.ts';
import { weekAxis } from '../../../src/adapters/paper/weekAxis.ts';
import type { WeekPicture } from '../../../src/app/letter.ts';
import { STEPS } from '../../../src/domain/shop/words.ts';
import { pixelsNot, rasterOf } from './raster.ts';

type Day = WeekPicture['days'][number];

const BLANK: Day = { weekday: 'Mon', date: '30', off: null, hours: [], work: [], cures: [], ships: [], promised: [] };
const evening = { from: 18 * 60 + 30, to: 21 * 60 + 30 };
const block = (step: string, from: number, to: number, ...label: string[]): Day['work'][number] => ({
  step,
  from,
  to,
  label,
});
const BUSY: Day = {
  ...BLANK,
  hours: [evening],
  work: [
    block('pour', 1110, 1150, 'Pour', '×30', '3/8'),
    block('trim', 1150, 1160, 'Trim', '×30'),
    block('paint', 1160, 1190, 'Paint', '×30', 'green pumpkin'),
    block('bake', 1190, 1230, 'Bake', '×30'),
    block('pack', 1195, 1225, 'Pack', '×12'),
    block('guard', 1240, 1260, 'Guards', '×30'),
  ],
  cures: [{ from: 1260, to: 1440, begins: true, ends: false }],
  ships: ['K-1001'],
  promised: [
    { order: 'K-1001', late: false },
    { order: 'K-1002', late: true },
  ],
};
const OFF: Day = { ...BLANK, off: 'off' };
const weekWith = (...days: readonly Day[]): WeekPicture => ({
  kind: 'week',
  title: 'THE WEEK: Mon, Nov 30 to Sun, Dec 6',
  days: [...days, ...Array.from({ length: 7 - days.length }, () => OFF)],
  now: { at: 1000, label: 'now' },
  hours: Array.from({ length: 24 }, (_, hour) => `${hour}h`),
  legend: STEPS.map((step) => ({ step, label: step })),
  rows: { ships: 'Ships', promised: 'Promised' },
  cure: 'Glue cures',
  late: 'Would ship late',
});
const FILLED = weekWith(BUSY, OFF, BUSY, BUSY, BUSY, BUSY, BUSY);
const textsOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text = '']) => text);
/** What differs, in pixels that anybody sees. */
function changed(one: WeekPicture, other: WeekPicture): number {
  const [a, b] = [rasterOf(weekPng(one)), rasterOf(weekPng(other))];
  if (a.height !== b.height) return Infinity;
  return a.pixels.filter((value, at) => Math.abs(value - (b.pixels[at] ?? 0)) > 24).length;
}

describe('the week is drawn', () => {
  test('as wide as a phone shows well, not too high, with something on every part of it', () => {
    const raster = rasterOf(weekPng(FILLED));
    expect(raster.width).toBe(1080);
    expect(raster.height).toBeGreaterThan(1000);
    expect(raster.height).toBeLessThan(1800);
    const quarter = raster.height / 4;
    for (const part of [0, 1, 2, 3]) {
      const box = { left: 0, right: 1080, top: Math.floor(part * quarter), bottom: Math.floor((part + 1) * quarter) };
      expect(pixelsNot('#ffffff', raster, box)).toBeGreaterThan(20_000);
    }
  });

  test('also with nothing planned at all, and small enough to send', () => {
    for (const week of [weekWith(), weekWith(BLANK), FILLED]) {
      const png = weekPng(week);
      expect(png.length).toBeGreaterThan(5000);
      expect(png.length).toBeLessThan(400_000);
    }
  });

  test('the same week is the same picture, to the byte', () => {
    expect(Buffer.from(weekPng(FILLED)).equals(weekPng(structuredClone(FILLED)))).toBe(true);
  });

  test.each<readonly [string, Day]>([
    ['an hour later', { ...BUSY, work: BUSY.work.map((one) => ({ ...one, from: one.from + 10, to: one.to + 10 })) }],
    [
      'another step',
      { ...BUSY, work: BUSY.work.map((one) => (one.step === 'pour' ? { ...one, step: 'dress' } : one)) },
    ],
    ['no cure', { ...BUSY, cures: [] }],
    ['fewer hours', { ...BUSY, hours: [{ from: 1110, to: 1150 }] }],
    ['no longer late', { ...BUSY, promised: BUSY.promised.map((one) => ({ ...one, late: false })) }],
    ['another order ships', { ...BUSY, ships: ['K-9009'] }],
  ])('%s is seen', (_title, day) => {
    expect(changed(weekWith(BUSY), weekWith(day))).toBeGreaterThan(150);
  });

  test('each step has a pattern of its own, so that colours are not needed', () => {
    const svg = weekSvg(weekWith(BUSY));
    const marks = [...svg.matchAll(/<pattern id="step-[^"]+"[^>]*>.*?<path d="([^"]+)"/g)].map(([, path]) => path);
    expect(marks.length).toBeGreaterThanOrEqual(8);
    expect(new Set(marks).size).toBe(marks.length);
    for (const step of ['pour', 'trim', 'paint', 'bake', 'pack', 'guard']) expect(svg).toContain(`url(#step-${step})`);
  });

  test('an order that would ship late has a sign of its own, and the legend says what it means', () => {
    const texts = textsOf(weekSvg(weekWith(BUSY)));
    expect(texts).toContain('! K-1002');
    expect(texts).toContain('K-1001');
    expect(texts).toContain('Would ship late');
  });

  test('a day off says so, and now stands on today', () => {
    const texts = textsOf(weekSvg(weekWith(BUSY)));
    expect(texts.filter((text) => text === 'off')).toHaveLength(6);
    expect(texts.filter((text) => text === 'now')).toHaveLength(1);
  });

  test('more orders on one day than there is room for are counted', () => {
    const ships = ['K-1', 'K-2', 'K-3', 'K-4', 'K-5'];
    const texts = textsOf(weekSvg(weekWith({ ...BLANK, ships })));
    expect(texts).toContain('K-2');
    expect(texts).not.toContain('K-3');
    expect(texts).toContain('+3');
  });

  test('mark-up in names is only letters', () => {
    const hostile = '<script>&"]]>';
    const day: Day = {
      ...BUSY,
      weekday: hostile,
      off: hostile,
      work: [block(hostile, 1110, 1290, hostile, hostile)],
      ships: [hostile],
      promised: [{ order: hostile, late: true }],
    };
    const week = { ...weekWith(day), title: hostile, cure: hostile, late: hostile, now: { at: 1200, label: hostile } };
    const svg = weekSvg({ ...week, legend: [{ step: hostile, label: hostile }], hours: week.hours.map(() => hostile) });
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;s');
    expect(svg).not.toContain(`step-${hostile}`);
    expect(rasterOf(weekPng(week)).width).toBe(1080);
  });

  test('long words end in an ellipsis and stay in their place', () => {
    const long = 'W'.repeat(200);
    const raster = rasterOf(
      weekPng({
        ...weekWith({ ...BUSY, weekday: long, ships: [long], work: [block('pour', 1110, 1290, long)] }),
        title: long,
        legend: [{ step: 'pour', label: long }],
      }),
    );
    expect(pixelsNot('#ffffff', raster, { left: 1074, right: 1080, top: 0, bottom: raster.height })).toBe(0);
  });

  test('letters that XML forbids and other scripts do no harm', () => {
    for (const odd of ['a\u0000b', 'half \uD83D', '針 \u{1F3A3} \u202E back'])
      expect(weekPng({ ...weekWith(BUSY), title: odd }).length).toBeGreaterThan(5000);
  });
});

describe('the hours of the picture', () => {
  const minute = fc.nat(1440);
  const stretch = fc.tuple(minute, minute).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }));
  const days = fc.array(
    fc.record({ hours: fc.array(stretch, { maxLength: 3 }), works: fc.array(stretch, { maxLength: 4 }) }),
    { minLength: 1, maxLength: 7 },
  );

  test('a later minute is never higher, whatever the hours', () => {
    fc.assert(
      fc.property(days, (all) => {
        const axis = weekAxis(
          all.map(({ hours, works }) => ({
            ...BLANK,
            hours,
            work: works.map(({ from, to }) => block('pour', from, to)),
          })),
          100,
        );
        const ys = Array.from({ length: 1441 }, (_, at) => axis.yOf(at));
        expect(ys[0]).toBeCloseTo(100);
        expect(ys[1440]).toBeCloseTo(axis.bottom);
        for (const [at, y] of ys.entries()) if (at > 0) expect(y).toBeGreaterThan(ys[at - 1] ?? 0);
        expect(axis.bottom - axis.top).toBeLessThan(1700);
      }),
      { numRuns: 60 },
    );
  });

  test('hours with work are drawn higher than idle ones, and the night least of all', () => {
    const { yOf } = weekAxis(
      [{ ...BLANK, hours: [{ from: 480, to: 840 }, evening], work: [block('pour', 1110, 1290)] }],
      0,
    );
    const hour = (from: number): number => yOf(from + 60) - yOf(from);
    expect(hour(1140)).toBeGreaterThan(1.5 * hour(600));
    expect(hour(600)).toBeGreaterThan(3 * hour(120));
  });
});
