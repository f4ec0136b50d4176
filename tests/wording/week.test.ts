import { describe, expect, test } from 'vitest';
import { letterSchema } from '../../src/app/letter.ts';
import { addDays, instantOf } from '../../src/domain/craft/time.ts';
import { card } from '../../src/domain/desk/turn.ts';
import { emptyDesk } from '../../src/domain/desk/state.ts';
import { weekOf, type Week } from '../../src/domain/desk/week.ts';
import { LANGUAGES, type Language } from '../../src/domain/shop/words.ts';
import { write } from '../../src/wording/write.ts';
import { SHOP } from '../demoShop.ts';
import { BALL, FOOTBALL, manyAccepted, openDesk } from '../domain/desk/openDesk.ts';

const at = (day: string, clock: string): number => instantOf(day, clock, SHOP.zone);
const now = at('2026-11-30', '17:00');
const written = (week: Week, language: Language = 'en') =>
  write(SHOP, language, card(101, { code: 'week', week }, { picture: week }));
const few = weekOf(SHOP, openDesk([{ spec: BALL, heads: 6, ships: '2026-12-02' }], now), now);

describe('the week in words', () => {
  test('tells each day what is worked on, when, and how many heads; and what ships', () => {
    const [, monday = '', tuesday = '', wednesday] = written(few).text.split('\n');
    expect(monday).toMatch(/^Mon, Nov 30: 6:30 PM Pour 1\/4 oz ball head, lead, 8 heads; 6:\d\d PM Trim, 8 heads;/);
    expect(monday).toContain('Paint white, 8 heads');
    expect(tuesday).toMatch(/^Tue, Dec 1: .*ships K-1001/);
    expect(wednesday).toBe('Wed, Dec 2: promised K-1001');
  });

  test('says which days are off and which are free', () => {
    const { text } = written(weekOf(SHOP, emptyDesk, at('2026-11-25', '12:00')));
    expect(text).toBe(
      'THE WEEK: Wed, Nov 25 to Tue, Dec 1\nWed, Nov 25: nothing planned\nThu, Nov 26: off\nFri, Nov 27: off\nSat, Nov 28: nothing planned\nSun, Nov 29: off\nMon, Nov 30: nothing planned\nTue, Dec 1: nothing planned',
    );
  });

  test('tells of a cure until when it runs, and on its last day when it is over', () => {
    const { text } = written(weekOf(SHOP, openDesk([{ spec: FOOTBALL, heads: 12, ships: '2026-12-05' }], now), now));
    expect(text).toMatch(/13 heads cure until \w{3} \d+:\d\d [AP]M/);
    expect(text).toMatch(/13 heads cured by \d+:\d\d [AP]M/);
  });

  test('names an order that would ship late in words, not by a mark alone', () => {
    const late = weekOf(SHOP, openDesk([{ spec: FOOTBALL, heads: 40, ships: '2026-12-01' }], now), now);
    expect(written(late).text).toContain('promised K-1001 (IN DANGER)');
    expect(written(late, 'es').text).toContain('prometido K-1001 (EN PELIGRO)');
  });

  test('says why there is no plan', () => {
    const shop = { ...SHOP, hours: { weekly: {}, daysOff: [], extra: [] } };
    const { text, picture } = written(weekOf(shop, openDesk(manyAccepted(1, '2026-11-30'), now), now));
    expect(text).toContain('No plan can be made:');
    expect(picture).not.toBeNull();
  });

  test.each(LANGUAGES.flatMap((language) => [0, 1, 4, 12, 40, 120].map((count) => [count, language] as const)))(
    '%i open orders still fit under the picture, each day in its place (%s)',
    (count, language) => {
      const week = weekOf(SHOP, openDesk(manyAccepted(count, '2026-11-30'), now), now);
      const { text, picture } = written(week, language);
      expect(Array.from(text).length).toBeLessThanOrEqual(1024);
      expect(picture?.kind).toBe('week');
      expect(text.split('\n')).toHaveLength(8);
      expect(text).not.toContain('…');
    },
  );

  test('days near are told in full before days far off', () => {
    const lines = written(weekOf(SHOP, openDesk(manyAccepted(4, '2026-11-30'), now), now)).text.split('\n');
    expect(lines[1]).toMatch(/\d+:\d\d PM Pour/);
    const clocks = lines.slice(1).map((line) => (line.match(/\d:\d\d [AP]M/g) ?? []).length);
    expect(clocks[0]).toBeGreaterThan(3);
  });
});

describe('the week to draw', () => {
  test('can be kept in the book with its letter', () => {
    const rest = { key: 'k', queuedAt: 0, notBefore: 0, attempts: 0, sendingSince: null };
    for (const language of LANGUAGES)
      for (const count of [0, 9]) {
        const letter = { ...written(weekOf(SHOP, openDesk(manyAccepted(count, '2026-11-30'), now), now), language) };
        const kept = JSON.parse(JSON.stringify({ ...letter, ...rest }));
        expect(letterSchema.parse(kept).picture).toEqual(letter.picture);
      }
  });

  const pictureOf = (week: Week, language: Language = 'en') => {
    const { picture } = written(week, language);
    if (picture?.kind !== 'week') throw new Error('A week has a picture.');
    return picture;
  };

  test('has its work on the wall clock, with short labels', () => {
    const picture = pictureOf(few);
    expect(picture.days[0]).toMatchObject({ weekday: 'Mon', date: '30', off: null, hours: [{ from: 1110, to: 1290 }] });
    expect(picture.days[0]?.work[0]).toMatchObject({ step: 'pour', from: 1110, label: ['Pour', '×8', '1/4'] });
    expect(picture.days[4]).toMatchObject({ weekday: 'Fri', off: 'off' });
    expect(picture.now).toEqual({ at: 1020, label: 'now' });
    expect([0, 8, 18].map((hour) => picture.hours[hour])).toEqual(['12am', '8am', '6pm']);
    expect(pictureOf(few, 'es').days[0]?.work[0]?.label[0]).toBe('Colar');
  });

  test.each(['2026-03-07', '2026-10-31'])('keeps every day between its midnights where clocks change (%s)', (day) => {
    const begin = at(day, '07:00');
    const picture = pictureOf(weekOf(SHOP, openDesk(manyAccepted(8, addDays(day, 1)), begin), begin));
    for (const { work, cures } of picture.days)
      for (const { from, to } of [...work, ...cures]) {
        expect(from).toBeLessThanOrEqual(to);
        expect(to).toBeLessThanOrEqual(1440);
      }
    const later = picture.days.flatMap(({ cures }) => cures.filter(({ begins }) => !begins));
    expect(later[0]).toMatchObject({ from: 0 });
  });
});
