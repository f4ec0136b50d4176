import { describe, expect, test } from 'vitest';
import { ENOUGH, TIMED } from '../../../src/domain/bench/learned.ts';
import type { Lot } from '../../../src/domain/bench/lot.ts';
import { INSISTS, nextTelling, OVEN_EVERY } from '../../../src/domain/bench/timer.ts';
import { addDays, localDay, MINUTE } from '../../../src/domain/craft/time.ts';
import { deskSchema, type Desk } from '../../../src/domain/desk/state.ts';
import { headsOf } from '../../../src/domain/order/spec.ts';
import { SHOP } from '../../demoShop.ts';
import { walk, type Happened } from './walk.ts';

/** More with WALKS=40 in the environment, as the fault runs do. */
const SEEDS = Array.from({ length: Number(process.env['WALKS'] ?? 4) }, (_, at) => at + 1);
const ACTS = 700;

/** Everything that must hold whatever happened; each test below names one of them. */
const walks = SEEDS.map((seed) => [...walk(seed, ACTS)]);
const all = walks.flat();

const lots = (desk: Desk): readonly Lot[] => Object.values(desk.lots);
const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0);
const because = ({ command, now }: Happened): string => `${JSON.stringify(command)} at ${new Date(now).toISOString()}`;

/** Holds that nothing that happened is against a rule; `faults` says what is, in a few words. */
function never(faults: (one: Happened) => readonly string[]): void {
  const found = all.flatMap((one) => faults(one).map((fault) => `${fault}, ${because(one)}`));
  expect(found.slice(0, 5)).toEqual([]);
}

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
    for (const one of all.filter((_, at) => at % 23 === 0))
      expect(deskSchema.parse(JSON.parse(JSON.stringify(one.after))), because(one)).toEqual(one.after);
  });

  test('lose no head: what was poured or came off the shelf is good, scrap or on the shelf', () => {
    // A lot that stands for one that was lost tells the scrap of that one too.
    const inherited = new Map<string, number>();
    never(({ before, after, command }) => {
      // Joined lots tell of all that each of them tells.
      const joined = command.type === 'tapped' && /^join (\S+)$/.exec(command.tap?.arg ?? '')?.[1];
      if (joined && after.lots[joined] !== before.lots[joined])
        inherited.set(
          joined,
          sum(
            lots(before)
              .filter(({ id }) => id === joined || after.lots[id] === undefined)
              .map(({ id }) => inherited.get(id) ?? 0),
          ),
        );
      return lots(after).flatMap((lot) => {
        const poured = lot.shelf > 0 ? lot.shelf : (lot.steps[0]?.through ?? 0);
        // One split off a poured lot tells of nothing but itself, whatever had its name before it.
        if (before.lots[lot.id] === undefined) inherited.set(lot.id, poured > 0 ? 0 : lot.scrap);
        const own = lot.good + lot.scrap + lot.over - (inherited.get(lot.id) ?? 0);
        return own === poured ? [] : [`${lot.id}: ${own} of ${poured}`];
      });
    });
  });

  test('make for every order as many heads as were ordered, however much was scrapped, split or begun anew', () =>
    never(({ after }) =>
      Object.values(after.orders).flatMap(({ id, lines }) => {
        const made = sum(lots(after).flatMap(({ order, heads }) => (order === id ? [heads] : [])));
        return made === headsOf(lines) ? [] : [`${id}: ${made} of ${headsOf(lines)}`];
      }),
    ));

  test('put on the shelf what was over, and take off it what an order gets', () =>
    never(({ before, after }) => {
      const fresh = lots(after).filter(({ order, shelf }) => shelf > 0 && before.orders[order] === undefined);
      const gone = lots(before).filter(({ id }) => after.lots[id] === undefined);
      const taken = sum(fresh.map(({ shelf }) => shelf));
      const change = sum(Object.values(after.shelf)) - sum(Object.values(before.shelf));
      const most = sum(gone.map(({ good }) => good));
      // What is over of a packed lot goes on the shelf, and comes back when that is taken back.
      const over = sum(lots(after).map(({ id, over: now }) => now - (before.lots[id]?.over ?? 0)));
      const other = change - over;
      const isRight = taken > 0 ? other === -taken : other >= 0 && other <= most;
      return isRight ? [] : [`the shelf by ${change}, ${over} over, ${taken} taken, ${most} gone`];
    }));

  test('lose no head of an order that is cancelled: finished ones go on the shelf, the others are written off', () => {
    const cancelled = all.filter(({ closed }) => closed.some(({ state }) => state === 'cancelled'));
    expect(cancelled.some(({ closed }) => closed.some(({ made }) => made.some(({ scrap }) => scrap > 0)))).toBe(true);
    for (const one of cancelled) {
      const gone = lots(one.before).filter(({ id }) => one.after.lots[id] === undefined);
      const [shelved, scrapped] = (['heads', 'scrap'] as const).map((what) =>
        sum(one.closed.flatMap(({ made }) => made.map((row) => row[what]))),
      );
      const onShelf = sum(Object.values(one.after.shelf)) - sum(Object.values(one.before.shelf));
      // What was over went on the shelf when the lot was packed.
      expect(shelved, because(one)).toBe(onShelf + sum(gone.map(({ over }) => over)));
      expect((shelved ?? 0) + (scrapped ?? 0), because(one)).toBe(
        sum(gone.map(({ good, over, scrap }) => good + over + scrap)),
      );
    }
  });

  test('never count below nothing', () =>
    never(({ after }) => [
      ...Object.entries(after.onHand).flatMap(([item, count]) => (count < 0 ? [item] : [])),
      ...Object.entries(after.shelf).flatMap(([head, count]) => (count <= 0 ? [head] : [])),
      ...lots(after).flatMap(({ id, reserved }) => (Object.values(reserved).some((count) => count < 0) ? [id] : [])),
    ]));

  test('never run a step before what it needs', () =>
    never(({ after }) =>
      lots(after).flatMap(({ id, steps }) => {
        const at = steps.findIndex(({ state }) => state !== 'done');
        const isNow = at < 0 || steps[at]?.state === 'ready' || steps[at]?.state === 'running';
        return isNow && (at < 0 || steps.slice(at + 1).every(({ state }) => state === 'waiting')) ? [] : [id];
      }),
    ));

  test('have every running lot in one session, or in a lag that a timer ends', () =>
    never(({ after }) =>
      lots(after).flatMap(({ id, steps }) => {
        const step = steps.find(({ state }) => state === 'running')?.step;
        const sessions = Object.values(after.sessions).filter(({ shares }) => shares.some(({ lot }) => lot === id));
        const lags = Object.values(after.timers).filter((timer) => timer.kind === step && timer.lots.includes(id));
        const held = step === 'cool' || step === 'cure' ? lags.length : sessions.length;
        return held === (step === undefined ? 0 : 1) ? [] : [`${id} ${step} ${held}`];
      }),
    ));

  test('have no timer and no work of lots that are gone, but for a rack in the oven that says so', () =>
    never(({ after }) => [
      ...Object.values(after.timers).flatMap(({ id, session, lots: of }) => {
        const isBaking = session !== null && after.sessions[session]?.step === 'bake';
        return isBaking || of.every((lot) => after.lots[lot] !== undefined) ? [] : [`timer ${id}`];
      }),
      ...Object.values(after.sessions).flatMap(({ id, step, shares }) =>
        shares.every(({ lot, cancelled }) => (step === 'bake' && cancelled) || after.lots[lot] !== undefined)
          ? []
          : [`session ${id}`],
      ),
    ]));

  test('have one load in the oven at most, and a live reminder as long as it is in', () =>
    never(({ after, command, now }) => {
      const loads = Object.values(after.sessions).filter(({ step }) => step === 'bake');
      const silent = loads.flatMap(({ id }) => {
        const timer = Object.values(after.timers).find(({ kind, session }) => kind === 'bake' && session === id);
        const isLive = timer !== undefined && nextTelling(timer) !== undefined;
        const isDue = command.type === 'tick' && timer !== undefined && timer.dueAt <= now;
        const isTold = !isDue || now - (timer.toldAt ?? 0) < OVEN_EVERY * MINUTE;
        return isLive && isTold ? [] : [`${id} is not reminded of`];
      });
      return [...(loads.length > 1 ? ['two loads'] : []), ...silent];
    }));

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

  test('keep nothing that grows without end', () =>
    never(({ after, now }) => {
      const { learned, worked, watched } = after;
      const isBounded =
        Object.keys(learned.steps).every((step) => TIMED.some((timed) => timed === step)) &&
        worked.every(({ day }) => day >= addDays(localDay(now, SHOP.zone), -400)) &&
        worked.length < 25 &&
        watched.length < 60;
      return isBounded ? [] : ['something grows'];
    }));

  test('teach the bench its own pace, and no faster than a quarter of the file’s', () => {
    const last = walks[0]?.at(-1)?.after.learned;
    expect((last?.scrap.hits ?? 0) + (last?.scrap.misses ?? 0)).toBeGreaterThan(ENOUGH.heads);
  });
});
