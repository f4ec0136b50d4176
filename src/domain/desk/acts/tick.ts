import type { Ready } from '../../bench/session.ts';
import { dueTimers, ENDS_ITSELF, INSISTS, toldOf, type Timer } from '../../bench/timer.ts';
import { localClock, localDay, MINUTE, type Clock, type Instant } from '../../craft/time.ts';
import { NOTHING_AROUND, type Around } from '../around.ts';
import { endLag } from '../bench.ts';
import { readyAt } from '../benchWork.ts';
import { benchTap, startButton } from '../benchButtons.ts';
import { wordButton } from '../draftButtons.ts';
import type { Card, CardButton } from '../card.ts';
import type { TimerFacts } from '../facts.ts';
import { digestOf } from '../digest.ts';
import { digestCard } from '../digestCard.ts';
import { daily } from './daily.ts';
import { withEvening } from '../evening.ts';
import { dangers, movedOn } from '../news.ts';
import { isQuiet } from '../quiet.ts';
import { quoteEnds } from '../quoteEnds.ts';
import type { Desk } from '../state.ts';
import { sweep } from '../sweep.ts';
import { timerFacts } from '../telling.ts';
import { unpaidTold } from '../unpaidTold.ts';
import { nothing, toMakers, without, type Decision, type World } from '../turn.ts';

/** A gap between ticks from which the program counts as having been off. */
const WAS_OFF = 10;
/** How late a digest may still be useful, hours after its time. */
const DIGEST_WITHIN = 12;

/** The clock: ends lags that are over, tells of timers that are due, sends the digest once a local day, drops what is too old. */
export function tick(world: World, desk: Desk, now: Instant, around: Around = NOTHING_AROUND): Decision {
  const off = desk.tickedAt === 0 ? 0 : Math.floor((now - desk.tickedAt) / MINUTE);
  const timed = tellTimers(world, desk, now, off);
  const digested = morning(world, timed.desk, now, around);
  const once = daily(world, digested.desk, now);
  const ending = quoteEnds(world, once.desk, now);
  const unpaid = unpaidTold(world, ending.desk, now);
  const swept = sweep(world, unpaid.desk, now);
  const danger = isQuiet(world.shop, now) ? { warned: swept.warned, cards: [] } : dangers({ world, now }, swept);
  return {
    ...nothing({
      ...swept,
      began: desk.began ?? localDay(now, world.shop.zone),
      tickedAt: Math.max(now, desk.tickedAt),
      warned: [...danger.warned],
    }),
    cards: [...timed.cards, ...digested.cards, ...once.cards, ...ending.cards, ...unpaid.cards, ...danger.cards],
  };
}

type Told = Readonly<{ desk: Desk; cards: readonly Card[] }>;

/** Tells of what is due. Lags that are over end at once, told or not; in quiet hours the telling waits. */
function tellTimers(world: World, desk: Desk, now: Instant, off: number): Told {
  const due = dueTimers(Object.values(desk.timers), now);
  if (due.length === 0) return { desk, cards: [] };
  const tellable = due.filter((timer) => INSISTS[timer.kind] || !isQuiet(world.shop, now));
  const facts = tellable.map((timer) => timerFacts(world.shop, desk, timer, now));
  const told = due.reduce((next, timer) => afterTelling(world, next, timer, tellable.includes(timer), now), desk);
  const moved = movedOn({ world, now }, desk, nothing(told));
  return {
    desk: moved.desk,
    cards: [...timerCards(world, readyAt(world.shop, moved.desk, now), facts, off), ...moved.cards],
  };
}

function afterTelling({ shop }: World, desk: Desk, timer: Timer, told: boolean, now: Instant): Desk {
  const over = ENDS_ITSELF[timer.kind] ? endLag(shop, desk, timer, now) : desk;
  if (!told) return over;
  const timers = ENDS_ITSELF[timer.kind]
    ? without(over.timers, timer.id)
    : { ...over.timers, [timer.id]: toldOf(timer, now) };
  return { ...over, timers };
}

/** One reminder a timer; after a time switched off, all in one message that says how late each is. */
function timerCards(world: World, ready: readonly Ready[], facts: readonly TimerFacts[], off: number): readonly Card[] {
  const [first] = facts;
  if (first === undefined) return [];
  if (facts.length > 1 && off >= WAS_OFF) {
    const rows = facts.flatMap((one) => timerRows(one, ready));
    const key = `timers/${facts.map(({ timer }) => `${timer.id}.${timer.told}`).join('+')}`;
    return toMakers(world, { code: 'timers-due', timers: facts, wasOff: off }, { kind: 'reminder', key, rows });
  }
  return facts.flatMap((one) =>
    toMakers(
      world,
      { code: 'timer-due', facts: one },
      {
        kind: 'reminder',
        key: `timer/${one.timer.id}/${one.timer.dueAt}/${one.timer.told}`,
        rows: timerRows(one, ready),
        slot: `timer:${one.timer.id}`,
      },
    ),
  );
}

/** What can be answered to a timer: a load is out, a mix is fresh, or what its lots have come to is begun. */
function timerRows({ timer }: TimerFacts, ready: readonly Ready[]): readonly (readonly CardButton[])[] {
  const bench = wordButton('bench', benchTap('bench'));
  if (timer.kind === 'bake' && timer.session)
    return [
      [wordButton('done', benchTap('done', timer.session)), wordButton('five-more', benchTap('more', timer.id))],
      [bench],
    ];
  // A mix that is over cannot be put off; it can only be followed by a fresh one.
  if (timer.kind === 'glue') return [[wordButton('fresh-mix', benchTap('mix', timer.id)), bench]];
  const next = ready.filter(({ shares }) => shares.some(({ lot }) => timer.lots.includes(lot)));
  return [...next.map((work) => [startButton(work)]), [bench]];
}

/** The digest, once a local day from the shop's hour on; too late in the day it is left for tomorrow. */
function morning(world: World, desk: Desk, now: Instant, around: Around): Told {
  const { shop } = world;
  const day = localDay(now, shop.zone);
  const clock = localClock(now, shop.zone);
  if (desk.digestOn === day || clock < shop.digestAt) return { desk, cards: [] };
  const digested = withEvening(shop, { ...desk, digestOn: day }, day);
  // On its very first day the program has nothing to look back on when it is started after the hour.
  const isLate = desk.tickedAt === 0 || hoursOf(clock) - hoursOf(shop.digestAt) > DIGEST_WITHIN;
  if (isLate) return { desk: digested, cards: [] };
  const { say, rows } = digestCard(digestOf(shop, desk, now, around));
  return { desk: digested, cards: toMakers(world, say, { kind: 'digest', key: `digest/${day}`, rows }) };
}

const hoursOf = (clock: Clock): number => Number(clock.slice(0, 2)) + Number(clock.slice(3)) / 60;
