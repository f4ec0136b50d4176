import { describe, expect, test } from 'vitest';
import { ENOUGH, TIMED } from '../../../src/domain/bench/learned.ts';
import type { Lot } from '../../../src/domain/bench/lot.ts';
import { INSISTS, nextTelling, OVEN_EVERY } from '../../../src/domain/bench/timer.ts';
import { addDays, localDay, MINUTE } from '../../../src/domain/craft/time.ts';
import { deskSchema, type Desk } from '../../../src/domain/desk/state.ts';
import { headsOf } from '../../../src/domain/order/spec.ts';
import { SHOP } from '../../demoShop.ts';
import { walk, type Happened } from './walk.ts';

/** More with WALKS=40 in the environment. */
const SEEDS = Array.from({ length: Number(process.env['WALKS'] ?? 4) }, (_, at) => at + 1);
const ACTS = 700;

/** Everything that must hold whatever happened; each test below names one of them. */
const walks = SEEDS.map((seed) => [...walk(seed, ACTS)]);
const all = walks.flat();

const lots = (desk: Desk): readonly Lot[] => Object.values(desk.lots);
const because = ({ command, now }: Happened): string => `${JSON.stringify(command)} at ${new Date(now).toISOString()}`;

describe('thousands of acts at random', () => {
  test('do every kind of thing, so that the rest of these tests says something', () => {
    const codes = new Set(all.flatMap(({ cards }) => cards.map(({ say }) => say.code)));
    for (const code of ['session', 'step-done', 'timer-due', 'ready-to-post', 'shipped', 'undone', 'changed'] as const)
      expect([...codes], code).toContain(code);
    for (const code of ['close-down', 'digest', 'cancelled', 'lot-card', 'hand-in', 'change-effect'] as const)
      expect([...codes], code).toContain(code);
    expect(all.some(({ after }) => Object.keys(after.shelf).length > 0)).toBe(true);
    expect(all.some(({ after }) => lots(after).some(({ shelf }) => shelf > 0))).toBe(true);
  });

  test('leave a desk that can be stored and read back the same', () => {
    for (const one of all.filter((_, at) => at % 7 === 0))
      expect(deskSchema.parse(JSON.parse(JSON.stringify(one.after))), because(one)).toEqual(one.after);
  });

  test('lose no head: what was poured or came off the shelf is good or scrap', () => {
    for (const one of walks) {
      // A lot that stands for one that was lost tells the scrap of that one too.
      const inherited = new Map<string, number>();
      for (const happened of one)
        for (const lot of lots(happened.after)) {
          const poured = lot.shelf > 0 ? lot.shelf : (lot.steps[0]?.through ?? 0);
          if (happened.before.lots[lot.id] === undefined && poured === 0) inherited.set(lot.id, lot.scrap);
          const own = lot.good + lot.scrap - (inherited.get(lot.id) ?? 0);
          expect(own, `${lot.id}, ${because(happened)}`).toBe(poured);
        }
    }
  });

  test('make for every order as many heads as were ordered, however much was scrapped, split or begun anew', () => {
    for (const one of all)
      for (const order of Object.values(one.after.orders)) {
        const made = lots(one.after).filter((lot) => lot.order === order.id);
        expect(
          made.reduce((sum, { heads }) => sum + heads, 0),
          `${order.id}, ${because(one)}`,
        ).toBe(headsOf(order.lines));
      }
  });

  test('put on the shelf what was over, and take off it what an order gets', () => {
    for (const one of all) {
      const shelf = (desk: Desk): number => Object.values(desk.shelf).reduce((sum, count) => sum + count, 0);
      const fresh = lots(one.after).filter(({ order, shelf }) => shelf > 0 && one.before.orders[order] === undefined);
      const gone = lots(one.before).filter(({ id }) => one.after.lots[id] === undefined);
      const most = gone.reduce((sum, { good }) => sum + good, 0);
      const taken = fresh.reduce((sum, lot) => sum + lot.shelf, 0);
      const change = shelf(one.after) - shelf(one.before);
      if (taken > 0) expect(change, because(one)).toBe(-taken);
      else expect(change, because(one)).toBeGreaterThanOrEqual(0);
      expect(change, because(one)).toBeLessThanOrEqual(most);
    }
  });

  test('never count below nothing', () => {
    for (const one of all) {
      for (const count of Object.values(one.after.onHand)) expect(count, because(one)).toBeGreaterThanOrEqual(0);
      for (const count of Object.values(one.after.shelf)) expect(count, because(one)).toBeGreaterThan(0);
      for (const { reserved } of lots(one.after))
        for (const count of Object.values(reserved)) expect(count, because(one)).toBeGreaterThanOrEqual(0);
    }
  });

  test('never run a step before what it needs', () => {
    for (const one of all)
      for (const { id, steps } of lots(one.after)) {
        const at = steps.findIndex(({ state }) => state !== 'done');
        if (at < 0) continue;
        expect(['ready', 'running'], `${id}, ${because(one)}`).toContain(steps[at]?.state);
        expect(
          steps.slice(at + 1).every(({ state }) => state === 'waiting'),
          `${id}, ${because(one)}`,
        ).toBe(true);
      }
  });

  test('have every running lot in one session, or in a lag that a timer ends', () => {
    for (const one of all)
      for (const { id, steps } of lots(one.after)) {
        const step = steps.find(({ state }) => state === 'running')?.step;
        const sessions = Object.values(one.after.sessions).filter(({ shares }) => shares.some(({ lot }) => lot === id));
        const lags = Object.values(one.after.timers).filter((timer) => timer.kind === step && timer.lots.includes(id));
        const held = step === 'cool' || step === 'cure' ? lags.length : sessions.length;
        expect(held, `${id} ${step}, ${because(one)}`).toBe(step === undefined ? 0 : 1);
      }
  });

  test('have one load in the oven at most, and a live reminder as long as it is in', () => {
    for (const one of all) {
      const loads = Object.values(one.after.sessions).filter(({ step }) => step === 'bake');
      expect(loads.length, because(one)).toBeLessThanOrEqual(1);
      for (const { id } of loads) {
        const timer = Object.values(one.after.timers).find(({ kind, session }) => kind === 'bake' && session === id);
        expect(timer && nextTelling(timer), because(one)).toBeDefined();
        if (one.command.type === 'tick' && timer && timer.dueAt <= one.now)
          expect(one.now - (timer.toldAt ?? 0), because(one)).toBeLessThan(OVEN_EVERY * MINUTE);
      }
    }
  });

  test('send a reminder once, and the oven’s every five minutes and no oftener', () => {
    for (const one of walks) {
      const told = new Map<string, number>();
      for (const { cards, now } of one)
        for (const { say } of cards) {
          const facts = say.code === 'timer-due' ? [say.facts] : say.code === 'timers-due' ? say.timers : [];
          for (const { timer } of facts) {
            const name = `${timer.id}/${timer.dueAt}`;
            const last = told.get(name);
            if (last !== undefined) {
              expect(INSISTS[timer.kind], name).toBe(true);
              expect(now - last, name).toBeGreaterThanOrEqual(OVEN_EVERY * MINUTE);
            }
            told.set(name, now);
          }
        }
    }
  });

  test('say what is said once a day once a day', () => {
    for (const one of walks) {
      const keys = one.flatMap(({ cards }) =>
        cards.flatMap(({ key, say }) =>
          key !== null && ['digest', 'close-down', 'hand-in', 'restock-day'].includes(say.code) ? [key] : [],
        ),
      );
      expect(new Set(keys).size).toBe(keys.length);
    }
  });

  test('keep nothing that grows without end', () => {
    for (const one of all) {
      expect(Object.keys(one.after.learned.steps).every((step) => TIMED.some((timed) => timed === step))).toBe(true);
      expect(one.after.worked.every(({ day }) => day >= addDays(localDay(one.now, SHOP.zone), -400))).toBe(true);
      expect(one.after.worked.length).toBeLessThan(25);
      expect(one.after.watched.length).toBeLessThan(60);
    }
  });

  test('teach the bench its own pace, and no faster than a quarter of the file’s', () => {
    const last = walks[0]?.at(-1)?.after.learned;
    expect((last?.scrap.hits ?? 0) + (last?.scrap.misses ?? 0)).toBeGreaterThan(ENOUGH.heads);
  });
});
