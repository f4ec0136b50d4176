import { describe, expect, test } from 'vitest';
import {
  afterEvening,
  NOTHING_LEARNED,
  spreadFrom,
  taught,
  TIMED,
  type Learned,
} from '../../../src/domain/bench/learned.ts';
import { headsIn } from '../../../src/domain/bench/session.ts';
import { addDays, instantOf, type Instant } from '../../../src/domain/craft/time.ts';
import { decide } from '../../../src/domain/desk/decide.ts';
import { withEvening } from '../../../src/domain/desk/evening.ts';
import { askedShips } from '../../../src/domain/desk/planning.ts';
import type { Desk } from '../../../src/domain/desk/state.ts';
import { readerFor } from '../../../src/domain/order/reader/read.ts';
import { learn, SHOP_FILE, type Belief } from '../../../src/domain/plan/learning.ts';
import { LAW, SHOP } from '../../demoShop.ts';
import { FOOTBALL, manyAccepted, openDesk } from './openDesk.ts';

const at = (day: string, clock: string): Instant => instantOf(day, clock, SHOP.zone);
const NOW = at('2026-11-30', '18:30');
const MAKER = { id: 101, name: 'Kettle Bay', language: 'en' };
const rules = decide({ shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [MAKER.id] });

/** Each step timed so many times, at so many times the shop file's minutes. */
function timed(times: number, factor: number): Learned {
  const belief = Array.from({ length: times }).reduce<Belief>((one) => learn(one, 30, 30 * factor), SHOP_FILE);
  return { ...NOTHING_LEARNED, steps: Object.fromEntries(TIMED.map((step) => [step, belief])) };
}

/** The day that 150 heads more are promised for. */
function promised(learned: Learned): string {
  const desk = { ...openDesk(manyAccepted(3, '2026-11-30'), NOW), learned };
  const asked = askedShips(taught(SHOP, learned), desk, NOW, [{ spec: FOOTBALL, quantity: 150 }]);
  if ('impossible' in asked) throw new Error('It cannot be promised.');
  return asked.ships;
}

describe('what the bench has taught', () => {
  test('moves promises: slow hands promise later, quick ones sooner, and too few sessions nothing', () => {
    expect(promised(timed(30, 2)) > promised(NOTHING_LEARNED)).toBe(true);
    expect(promised(timed(30, 0.4)) < promised(NOTHING_LEARNED)).toBe(true);
    expect(promised(timed(3, 2))).toBe(promised(NOTHING_LEARNED));
  });

  test('moves what is poured over: a bench that spoils a fifth offers more heads to pour', () => {
    const toPour = (learned: Learned): number => {
      const desk = { ...openDesk([{ spec: FOOTBALL, heads: 100, ships: '2026-12-05' }], NOW), learned };
      const [card] = rules(desk, { type: 'said', by: MAKER, text: 'bench' }, NOW).cards;
      if (card?.say.code !== 'bench' || card.say.ready[0] === undefined) throw new Error('Nothing can be poured.');
      return headsIn(card.say.ready[0]);
    };
    expect(toPour(NOTHING_LEARNED)).toBe(106);
    expect(toPour({ ...NOTHING_LEARNED, scrap: { hits: 200, misses: 800 } })).toBeGreaterThanOrEqual(122);
  });

  test('narrows what is imagined of the weeks, the better the steps are known', () => {
    const [unknown, known] = [spreadFrom(SHOP, NOTHING_LEARNED), spreadFrom(SHOP, timed(40, 1))];
    expect(unknown.minutes).toEqual({});
    expect(Object.keys(known.minutes)).toEqual([...TIMED]);
    for (const { sigma } of Object.values(known.minutes)) expect(sigma).toBeLessThan(unknown.usual.sigma);
    expect(promised(timed(40, 1)) <= promised(NOTHING_LEARNED)).toBe(true);
  });

  test('stands beside the shop file’s own values when the maker asks, as it is reckoned with', () => {
    const desk = { ...openDesk([], NOW), learned: { ...timed(30, 2), scrap: { hits: 100, misses: 400 } } };
    const [card] = rules(desk, { type: 'said', by: MAKER, text: 'minutes' }, NOW).cards;
    if (card?.say.code !== 'minutes') throw new Error('The minutes are not shown.');
    expect(card.say.rows.find(({ step }) => step === 'trim')?.factor).toBeCloseTo(1.95, 1);
    expect(card.say.scrap.share).toBeCloseTo(taught(SHOP, desk.learned).casting.scrapShare, 9);
  });
});

describe('evenings that fall out', () => {
  const lots = openDesk([{ spec: FOOTBALL, heads: 50, ships: '2026-12-05' }], at('2026-11-29', '12:00'));
  const missed = (desk: Desk, today: string) => withEvening(SHOP, desk, today).learned.missed;

  test('are counted when work waited, there were hours, and nothing was done', () => {
    expect(missed(lots, '2026-12-01')).toEqual({ hits: 1, misses: 0 });
    const worked = [{ day: '2026-11-30', step: 'pour', heads: 50 }] as Desk['worked'];
    expect(missed({ ...lots, worked }, '2026-12-01')).toEqual({ hits: 0, misses: 1 });
  });

  test('are not counted on a day off, a day without work, or where the work came later', () => {
    const nothing = { hits: 0, misses: 0 };
    expect(missed({ ...lots, daysOff: ['2026-11-30'] }, '2026-12-01')).toEqual(nothing);
    expect(missed(lots, '2026-11-30')).toEqual(nothing);
    expect(missed(openDesk([], NOW), '2026-12-01')).toEqual(nothing);
    const late = openDesk([{ spec: FOOTBALL, heads: 50, ships: '2026-12-05' }], at('2026-11-30', '21:00'));
    expect(missed(late, '2026-12-01')).toEqual(nothing);
  });

  test('make promises later for who misses many, and never grow without end', () => {
    const often = Array.from({ length: 60 }).reduce<Learned>((one) => afterEvening(one, 'missed'), NOTHING_LEARNED);
    expect(promised(often) > promised(NOTHING_LEARNED)).toBe(true);
    const years = Array.from({ length: 1000 }, (_, day) => day).reduce<Learned>(
      (one, day) => afterEvening(one, day % 10 === 0 ? 'missed' : 'kept'),
      NOTHING_LEARNED,
    );
    expect(years.missed.hits + years.missed.misses).toBeLessThanOrEqual(100);
    expect(years.missed.hits / years.missed.misses).toBeCloseTo(1 / 9, 1);
  });

  test('teach once a day, with the digest', () => {
    let desk: Desk = { ...lots, tickedAt: at('2026-11-30', '18:00'), digestOn: '2026-11-30' };
    for (const clock of ['06:59', '07:00', '07:01', '12:00'])
      desk = rules(desk, { type: 'tick' }, at(addDays('2026-11-30', 1), clock)).desk;
    expect(desk.learned.missed).toEqual({ hits: 1, misses: 0 });
  });
});
