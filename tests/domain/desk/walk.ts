import { addDays, instantOf, localDay, MINUTE, type Instant } from '../../../src/domain/craft/time.ts';
import type { Card } from '../../../src/domain/desk/card.ts';
import type { Command } from '../../../src/domain/desk/command.ts';
import { decide } from '../../../src/domain/desk/decide.ts';
import type { Order } from '../../../src/domain/desk/order.ts';
import { emptyDesk, type Desk } from '../../../src/domain/desk/state.ts';
import type { Tap } from '../../../src/domain/desk/tap.ts';
import { readerFor } from '../../../src/domain/order/reader/read.ts';
import { randomOf, type Random } from '../../../src/domain/plan/random.ts';
import { LAW, SHOP } from '../../demoShop.ts';

const MAKER = { id: 101, name: 'Kettle Bay', language: 'en' } as const;
const BUYERS = [201, 202, 203, 204].map((id) => ({ id, name: `Buyer ${id}`, language: 'en' }));
const rules = decide({ shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [MAKER.id] });

/** One thing that happened, with the desk on both sides of it. */
export type Happened = Readonly<{
  command: Command;
  before: Desk;
  after: Desk;
  cards: readonly Card[];
  /** Orders that left the bench by it. */
  closed: readonly Order[];
  now: Instant;
}>;

const ORDERS = [
  '12 quarter ounce football black, 3/0, no guard, no skirt, to Ohio',
  '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio',
  '10 1/8 ball white, size 1, lead, to Ohio',
  '60 1/8 ball unpainted, size 1, lead, to Minnesota',
  '5 1/8 ball unpainted, size 1, lead, to Minnesota',
  '9 1/8 ball unpainted, size 1, lead, to Minnesota',
  '8 1/8 ball unpainted, size 1, lead, to Minnesota',
  '15 3/8 swim black, 4/0, brown guard, collar, to Ohio',
];

/** What a walk does beside the usual; undefined for the usual. */
export type Aside = (random: Random, desk: Desk) => Command | undefined;

/** A bench lived at random: orders come in, anything shown is tapped now or days later, words are typed, the clock jumps. */
export function* walk(seed: number, acts: number, aside: Aside = () => undefined): Generator<Happened> {
  const random = randomOf(seed);
  let desk: Desk = emptyDesk;
  let now = instantOf('2026-11-30', '18:00', SHOP.zone);
  let shown: readonly Tap[] = [];
  for (let done = 0; done < acts; done++) {
    const beside = aside(random, desk);
    const { command, minutes } = beside === undefined ? next(random, desk, shown) : { command: beside, minutes: 1 };
    now += Math.round(minutes * MINUTE);
    const { desk: after, cards, closed } = rules(desk, command, now);
    yield { command, before: desk, after, cards, closed, now };
    desk = after;
    const taps = cards.filter(({ to }) => to === MAKER.id).flatMap(({ rows }) => rows.flat().map(({ tap }) => tap));
    shown = [...shown, ...taps].slice(-150);
  }
}

type Next = Readonly<{ command: Command; minutes: number }>;

function next(random: Random, desk: Desk, shown: readonly Tap[]): Next {
  const luck = random();
  if (luck < 0.2) return { command: { type: 'tick' }, minutes: oneOf(random, [1, 1, 3, 5, 20, 45, 200, 600, 1500]) };
  if (luck < 0.26) return { command: ordering(random, desk), minutes: 1 };
  if (luck < 0.33) return { command: said(oneOf(random, words(random, desk))), minutes: 1 };
  if (luck < 0.45) return { command: said('bench'), minutes: oneOf(random, [0, 2, 8]) };
  // Mostly what was shown last, now and then something from far up in the chat.
  const recent =
    luck < 0.8 ? shown.slice(-14).filter(({ act }) => WORK.includes(act)) : shown.slice(luck < 0.93 ? -14 : 0);
  if (recent.length === 0) return { command: said('bench'), minutes: 1 };
  return {
    command: { type: 'tapped', by: MAKER, tap: oneOf(random, recent), message: null },
    minutes: oneOf(random, [0, 1, 6, 25]),
  };
}

const WORK: readonly Tap['act'][] = ['start', 'done', 'apply', 'posted', 'untracked'];

export const said = (text: string): Command => ({ type: 'said', by: MAKER, text });

export const tapped = (act: Tap['act'], on: string, arg: string): Command => ({
  type: 'tapped',
  by: MAKER,
  tap: { act, on, version: 0, arg },
  message: null,
});

/** A buyer says what they want, then orders it as it stands; now and then they cancel. */
function ordering(random: Random, desk: Desk): Command {
  const by = oneOf(random, BUYERS);
  const own = Object.values(desk.orders).filter(({ buyer }) => buyer === by.id);
  const [first] = own;
  if (first && random() < 0.15)
    return { type: 'tapped', by, tap: { act: 'cancel-yes', on: first.id, version: 0, arg: '999999' }, message: null };
  if (Object.keys(desk.orders).length > 4) return { type: 'said', by, text: 'my orders' };
  return { type: 'said', by, text: desk.drafts[by.id] === undefined ? oneOf(random, ORDERS) : 'order it' };
}

function words(random: Random, desk: Desk): readonly string[] {
  const order = oneOf(random, [...Object.keys(desk.orders), 'K-1']);
  const lot = oneOf(random, [...Object.keys(desk.lots), 'K-1-1']);
  const day = addDays(localDay(desk.tickedAt, SHOP.zone), 1 + Math.floor(random() * 8));
  return [
    'done',
    'all good',
    'start',
    '1 bad',
    '4 bad',
    `2 bad ${lot}`,
    '5 more',
    'undo',
    'undo',
    `off ${day}`,
    `on ${day}`,
    `extra ${day} 9:00-11:00`,
    `hours ${day} 17:00-20:00`,
    'hours',
    'timers',
    'close down',
    `hold ${order}`,
    `release ${order}`,
    `first ${order}`,
    `split ${lot} 3`,
    `join ${lot}`,
    `remake ${lot}`,
    `shelve ${lot}`,
    `lot ${lot}`,
    'minutes',
    'garage 55 F',
    'garage 70 F',
    'digest',
    'stock',
  ];
}

export function oneOf<T>(random: Random, list: readonly T[]): T {
  const found = list[Math.floor(random() * list.length)];
  if (found === undefined) throw new Error('There is nothing to choose from.');
  return found;
}
