import { describe, expect, test } from 'vitest';
import { readyWork } from '../../../src/domain/bench/session.ts';
import { addDays, instantOf, MINUTE, type Instant } from '../../../src/domain/craft/time.ts';
import { tick } from '../../../src/domain/desk/acts/tick.ts';
import { addTimer, begin, finish } from '../../../src/domain/desk/bench.ts';
import { inWorkingOrder } from '../../../src/domain/desk/inOrder.ts';
import { comingOf, dangersOf } from '../../../src/domain/desk/coming.ts';
import { digestOf } from '../../../src/domain/desk/digest.ts';
import { digestCard } from '../../../src/domain/desk/digestCard.ts';
import { nextDue } from '../../../src/domain/desk/due.ts';
import type { Card } from '../../../src/domain/desk/card.ts';
import { withStates } from '../../../src/domain/desk/progress.ts';
import type { Desk } from '../../../src/domain/desk/state.ts';
import { card, type World } from '../../../src/domain/desk/turn.ts';
import { readerFor } from '../../../src/domain/order/reader/read.ts';
import type { Language } from '../../../src/domain/shop/words.ts';
import { write } from '../../../src/wording/write.ts';
import { LAW, SHOP } from '../../demoShop.ts';
import { BALL, FOOTBALL, manyAccepted, openDesk } from './openDesk.ts';

const at = (day: string, clock: string): Instant => instantOf(day, clock, SHOP.zone);
const EVENING = at('2026-11-30', '18:30');
const MORNING = at('2026-12-01', '07:00');
const WORLD: World = { shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [101] };
const SAM = { id: 7, name: 'Sam', language: 'en', past: [], seenAt: EVENING } as unknown as Desk['people'][string];

/** A bench with far too much promised, in the morning after an evening's work. */
function busyDesk(): Desk {
  let desk: Desk = { ...openDesk(manyAccepted(14, '2026-11-28'), EVENING), people: { 7: SAM } };
  let now = EVENING;
  for (const step of ['pour', 'pour', 'trim', 'paint', 'clear-eyes', 'bake'] as const) {
    const work = readyWork(SHOP, inWorkingOrder(desk)).find((one) => one.step === step);
    if (work === undefined) throw new Error(`Nothing to ${step}.`);
    const begun = begin(SHOP, desk, work, now);
    now += 25 * MINUTE;
    desk = finish(SHOP, begun.desk, begun.session, now).desk;
  }
  const lot = Object.keys(desk.lots)[0] ?? '';
  for (let more = 0; more < 6; more++)
    desk = addTimer(desk, { kind: 'cure', session: null, lots: [lot], dueAt: MORNING + 60 * MINUTE, course: null });
  const question = (id: string): Desk['questions'][string] => ({
    id,
    from: 7,
    order: null,
    said: 'Could these be had with a little glitter over the green pumpkin, for murky water?',
    askedAt: now,
    answeredAt: null,
    wish: null,
  });
  const questions = Object.fromEntries(['Q1', 'Q2', 'Q3', 'Q4', 'Q5'].map((id) => [id, question(id)]));
  return { ...desk, questions, onHand: { ...desk.onHand, 'guard:brown': 3, 'guard:black': 0 } };
}

const worded = (language: Language, say: Card['say'], rows: Card['rows'] = []) =>
  write(SHOP, language, card(101, say, { rows }));

describe('the digest of a full day', () => {
  const digest = digestOf(SHOP, busyDesk(), MORNING);

  test.each<Language>(['en', 'es'])('is short enough for a phone, in %s', (language) => {
    const { text } = worded(language, { code: 'digest', digest });
    expect(digest.work.length).toBeGreaterThan(4);
    expect(digest.danger.length).toBeGreaterThan(3);
    expect(text.split('\n').filter((line) => line !== '').length).toBeLessThanOrEqual(27);
    expect(text.length).toBeLessThan(1500);
  });

  test('says whose promise is in danger, what it waits on, and shortens what is long', () => {
    const { text, rows } = worded('en', digestCard(digest).say, digestCard(digest).rows);
    expect(text).toMatch(/IN DANGER\n- K-10\d\d, Sam: promised \w+, \w+ \d+, heading for \w+, Dec \d+\. [A-Z]/);
    expect(text).toMatch(/\n- and \d+ more\n/);
    const longer = { ...digest, work: [...digest.work, ...digest.work] };
    expect(worded('en', { code: 'digest', digest: longer }).text).toMatch(/and \d+ more, \d+ hours? .*together/);
    expect(text).toMatch(/“Could these be had with a little glitter[^”]*…”/);
    const labels = rows.flat().map(({ label }) => label);
    for (const label of ['Order K-10', 'Reply', 'Bench', 'Queue', 'Timers', 'Stock', 'The week'])
      expect(labels.join()).toContain(label);
  });

  test('never has more heads in a load than the rack holds', () => {
    for (const { step, heads } of digest.work) if (step === 'bake') expect(heads).toBeLessThanOrEqual(SHOP.oven.rack);
  });

  test('does not say that something must leave today which cannot any more', () => {
    const late = openDesk([{ spec: FOOTBALL, heads: 60, ships: '2026-12-01' }], EVENING);
    const { text } = worded('en', { code: 'digest', digest: digestOf(SHOP, late, MORNING) });
    expect(text).toMatch(/IN DANGER/);
    expect(text).not.toMatch(/MUST LEAVE/);
  });
});

describe('a promise in danger', () => {
  const desk = openDesk(
    [
      { spec: BALL, heads: 200, ships: '2026-12-02' },
      { spec: FOOTBALL, heads: 100, ships: '2026-12-02' },
    ],
    EVENING,
  );

  test('is told with the chain of what it waits on, in order of time, other orders by their number', () => {
    const dangers = dangersOf(SHOP, desk, EVENING);
    expect(dangers.length).toBeGreaterThan(0);
    for (const { because } of dangers) {
      const ends = because.map((one) => (one.code === 'post' ? one.by : one.until));
      expect(ends).toEqual(ends.toSorted((a, b) => a - b));
      expect(because.at(-1)?.code).toBe('post');
      for (const one of because) if (one.code === 'hands') expect(one.with.join()).toMatch(/^K-\d+(,K-\d+)*$/);
    }
  });

  test('is not told of in quiet hours, and is told once when they are over', () => {
    const told = (now: Instant, from: Desk) => {
      const { desk: next, cards } = tick(WORLD, from, now);
      return { next, count: cards.filter(({ say }) => say.code === 'in-danger').length };
    };
    const lag = addTimer(
      { ...desk, tickedAt: EVENING },
      { kind: 'up-to-heat', session: null, lots: [], dueAt: at('2026-11-30', '22:30'), course: null },
    );
    const night = told(at('2026-11-30', '22:31'), lag);
    expect(night.count).toBe(0);
    const morning = told(at('2026-12-01', '06:30'), night.next);
    expect(morning.count).toBeGreaterThan(0);
    expect(told(at('2026-12-01', '06:31'), morning.next).count).toBe(0);
  });
});

describe('everything that falls due', () => {
  const packed = openDesk([{ spec: BALL, heads: 10, ships: '2026-12-01' }], EVENING);
  const order = packed.orders['K-1001'];
  if (order === undefined) throw new Error('There is no order.');
  const desk: Desk = {
    ...packed,
    people: { 7: SAM },
    lots: {},
    orders: { 'K-1001': { ...order, state: 'packed' } },
  };

  test('stands in the list of timers by its own name', () => {
    const drafted = openDesk([{ spec: FOOTBALL, heads: 100, ships: '2026-12-01' }], EVENING);
    const quote = { version: 3, goodUntil: MORNING + 60 * MINUTE };
    const both = {
      ...desk,
      orders: { ...desk.orders, 'K-1002': { ...drafted.orders['K-1001'], id: 'K-1002' } },
      lots: { 'K-1002-1': { ...drafted.lots['K-1001-1'], id: 'K-1002-1', order: 'K-1002' } },
      drafts: { 7: { id: 'D9', version: 3 } },
      quotes: { D9: quote },
    } as unknown as Desk;
    const coming = comingOf(SHOP, both, MORNING);
    const { text } = worded('en', { code: 'timers', timers: [], coming });
    expect(text).toContain('Post cut-off, K-1001: Tue 12:00 PM');
    expect(text).toMatch(/Promise in danger, K-1002: Tue, Dec 1, heading for/);
    expect(text).toMatch(/Payment of K-1001, Sam: \w+, Dec \d/);
    expect(text).toMatch(/Quote to Sam ends: Tue 8:00 AM/);
    expect(text).toMatch(/Restock, 200 6\/0 hooks .*: Thu, Dec 3/);
  });

  test('an order not paid by its day is told of once, the morning after, and no more when it is paid', () => {
    const due = instantOf(addDays('2026-11-30', SHOP.payment.dueDays + 1), SHOP.digestAt, SHOP.zone);
    const dayBefore = due - 24 * 60 * MINUTE;
    const told = (now: Instant, from: Desk) => {
      const { desk: next, cards } = tick(WORLD, from, now);
      return { next, count: cards.filter(({ say }) => say.code === 'unpaid-due').length };
    };
    const before = told(dayBefore, { ...desk, tickedAt: EVENING });
    expect(before.count).toBe(0);
    expect(nextDue(SHOP, before.next, due - 60 * MINUTE)).toBeLessThanOrEqual(due);
    const first = told(due, before.next);
    expect(first.count).toBe(1);
    expect(told(due + 10 * MINUTE, first.next).count).toBe(0);
    const paid = { ...before.next, orders: { 'K-1001': { ...order, ledger: [entry(order.money.total)] } } } as Desk;
    expect(told(due, paid).count).toBe(0);
  });

  test('a lag that is over in the night goes on at once and is told of in the morning', () => {
    const accepted = openDesk([{ spec: BALL, heads: 10, ships: '2026-12-05' }], EVENING);
    const lot = accepted.lots['K-1001-1'];
    if (lot === undefined) throw new Error('There is no lot.');
    const cooling = { ...lot, good: 10, steps: lot.steps.map((one) => ({ ...one, ...cooled(one.step) })) };
    const from = addTimer(withStates({ ...accepted, lots: { [lot.id]: cooling } }), {
      kind: 'cool',
      session: null,
      lots: [lot.id],
      dueAt: at('2026-11-30', '23:00'),
      course: null,
    });
    const night = tick(WORLD, { ...from, tickedAt: EVENING }, at('2026-11-30', '23:01'));
    expect(night.cards).toEqual([]);
    expect(night.desk.lots[lot.id]?.steps.find(({ step }) => step === 'cool')?.state).toBe('done');
    const morning = tick(WORLD, night.desk, at('2026-12-01', '06:30'));
    expect(morning.cards.filter(({ say }) => say.code === 'timer-due')).toHaveLength(1);
  });
});

const entry = (cents: number) => ({ kind: 'paid', cents, at: MORNING, why: '' });

const cooled = (step: string): { state: 'done' | 'running' | 'waiting' } => ({
  state: step === 'cool' ? 'running' : step === 'pack' ? 'waiting' : 'done',
});
