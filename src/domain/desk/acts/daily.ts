import { cautionsAt } from '../../craft/care.ts';
import { localDay, type Instant } from '../../craft/time.ts';
import { bakingSession } from '../bench.ts';
import { benchTap, runningButtons, startButton } from '../benchButtons.ts';
import { readyAt } from '../benchWork.ts';
import type { Card, CardButton } from '../card.ts';
import { dailyTimes, dueOn, packedOrders, type Daily } from '../daily.ts';
import { cutOffOn } from '../post.ts';
import { wordButton } from '../draftButtons.ts';
import { isQuiet } from '../quiet.ts';
import type { Desk } from '../state.ts';
import { nothing, says, toMakers, type Decision, type Turn, type World } from '../turn.ts';
import { handedInButton } from './ship.ts';

/** What is due to be said once today, each with the desk that knows it was said. In quiet hours it waits, as long as it is of use. */
export function daily(world: World, desk: Desk, now: Instant): Readonly<{ desk: Desk; cards: readonly Card[] }> {
  const day = localDay(now, world.shop.zone);
  const due = isQuiet(world.shop, now)
    ? []
    : dailyTimes(world.shop, desk, day).filter(({ from, until }) => from <= now && now <= until);
  return {
    desk: due.reduce((next, { name }) => said(next, name, day), desk),
    cards: due.flatMap(({ name }) => CARDS[name](world, desk, now)),
  };
}

function said(desk: Desk, name: Daily, day: string): Desk {
  const known = { ...desk, daily: { ...desk.daily, [name]: day } };
  if (name !== 'close-down') return known;
  const seen = desk.care.day === day ? desk.care.seen : [];
  return { ...known, care: { day, seen: [...new Set([...seen, 'close-down' as const])] } };
}

const CARDS: Readonly<Record<Daily, (world: World, desk: Desk, now: Instant) => readonly Card[]>> = {
  'restock-day': restockDay,
  'hand-in': handIn,
  'close-down': closeDown,
};

function restockDay(world: World, desk: Desk, now: Instant): readonly Card[] {
  const day = localDay(now, world.shop.zone);
  const deliveries = dueOn(world.shop, desk, day);
  const rows = deliveries.map(({ item, named, count }): readonly CardButton[] => [
    { label: { code: 'arrived', item, count }, tap: benchTap('arrived', '-', `${item}@${named}`) },
  ]);
  return toMakers(world, { code: 'restock-day', deliveries }, { kind: 'reminder', key: `restock/${day}`, rows });
}

function handIn(world: World, desk: Desk, now: Instant): readonly Card[] {
  const day = localDay(now, world.shop.zone);
  const orders = packedOrders(desk);
  const by = cutOffOn(world.shop, day) ?? now;
  const rows = orders.map((id) => [handedInButton(id)]);
  return toMakers(world, { code: 'hand-in', orders, by }, { kind: 'reminder', key: `hand-in/${day}`, rows });
}

/** The close-down card whenever the maker asks for it. */
export function closeNow({ world, desk, by, now }: Turn): Decision {
  const [one] = closeDown({ ...world, makers: [by.id] }, desk, now);
  return one === undefined ? nothing(desk) : says(desk, { ...one, kind: 'answer', key: null });
}

/** The end of the bench hours: what is on, what still runs, and the glue that could cure while everybody sleeps. */
function closeDown(world: World, desk: Desk, now: Instant): readonly Card[] {
  const day = localDay(now, world.shop.zone);
  const baking = bakingSession(desk) ?? null;
  const running = Object.values(desk.sessions).filter(({ step }) => step !== 'bake');
  const overnight = readyAt(world.shop, desk, now).filter(({ step }) => step === 'guard');
  const cautions = cautionsAt('close-down', desk.care.day === day ? desk.care.seen : []);
  const rows = [
    ...[...(baking ? [baking] : []), ...running].map(runningButtons),
    ...overnight.map((work) => [startButton(work)]),
    [wordButton('bench', benchTap('bench'))],
  ];
  return toMakers(
    world,
    { code: 'close-down', facts: { baking, running, overnight, cautions } },
    { kind: 'reminder', key: `close/${day}`, rows },
  );
}
