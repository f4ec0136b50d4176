import { parseTap } from '../../src/wording/buttons.ts';
import type { Tap } from '../../src/domain/desk/tap.ts';
import type { Sight } from './shopProcess.ts';
import { type End, type Lives, MAKER } from './shopLives.ts';

/** One thing somebody did, and every message that went out because of it. */
export type Window = Readonly<{
  what: string;
  unpacked: number;
  kills: number;
  out: readonly string[];
  dueTimers: number;
}>;

export const BUYERS: readonly number[] = Array.from({ length: 20 }, (_, index) => 3001 + index);

/** Orders come in handfuls, as they do after a weekend. */
const HANDFUL = 8;

const WANTED = [
  '10 football 1/4 green pumpkin, 3/0, no guard, no skirt, to Ohio',
  '10 football 3/8 green pumpkin, 3/0, no guard, no skirt, to Ohio',
  '12 football 1/4 black, 3/0, no guard, no skirt, to Minnesota',
  '10 football 1/4 green pumpkin, 3/0, black guard, no skirt, to Ohio',
  '15 football 3/8 black, 3/0, no guard, no skirt, to Wisconsin',
];

/** A day of `count` orders, each from the first word to the parcel, every act through the chat; then a look at the bench until `isOver`.
 *  `ends` says before each act how the program's lives end during it. */
export async function playDay(
  lives: Lives,
  count: number,
  ends: (act: number) => readonly End[],
  isOver: () => boolean,
): Promise<readonly Window[]> {
  const windows: Window[] = [];
  let sight: Sight | null = null;
  const act = async (what: string, doing: () => unknown): Promise<Window> => {
    const before = { calls: lives.calls().length, kills: lives.kills(), timers: sight?.timers ?? [] };
    const [first, ...later] = ends(windows.length);
    if (first) await lives.doom(first);
    await doing();
    sight = await lives.settled(later);
    // A restart ticks as well; a tick after every act keeps a day with kills like the day without.
    await lives.push(lives.clock());
    sight = await lives.settled([]);
    const out = lives
      .calls()
      .slice(before.calls)
      .flatMap(({ method, to, text }) =>
        /^(send|editMessage(Text|Caption|Media))/.test(method) ? [`${to} ${text}`] : [],
      );
    const dueTimers = before.timers.filter((timer) => Number(timer.split('@')[1]) <= lives.clock()).length;
    const window = { what, unpacked: sight.unpacked, kills: lives.kills() - before.kills, out, dueTimers };
    windows.push(window);
    return window;
  };
  const say = (who: number, text: string) => act(`${who} ${text}`, () => lives.human.say(who, text));
  const tap = (name: Tap['act'], on?: string) => {
    const found = buttons(lives, MAKER, name === 'start' ? 1 : 6).find(
      ({ tap: one }) => one.act === name && (on === undefined || one.on === on),
    );
    return found && act(`${MAKER} ${found.data}`, () => lives.human.tap(MAKER, found.message, found.data));
  };

  for (const person of [...BUYERS.slice(0, count), MAKER]) lives.human.start(person);
  sight = await lives.settled([]);
  for (let first = 0; first < count; first += HANDFUL) {
    const numbers = Array.from({ length: Math.min(HANDFUL, count - first) }, (_, index) => first + index);
    for (const number of numbers) await order(say, number);
    await makeAll(say, tap, () => act('clock', async () => lives.push(sight?.due ?? 0)));
    for (const number of numbers) await post(say, tap, `K-${1001 + number}`);
  }
  while (!isOver()) await say(MAKER, 'bench');
  return windows;
}

type Say = (who: number, text: string) => Promise<Window>;
type Press = (name: Tap['act'], on?: string) => Promise<Window> | undefined;

async function order(say: Say, number: number): Promise<void> {
  const buyer = BUYERS[number % BUYERS.length] ?? 0;
  await say(buyer, WANTED[number % WANTED.length] ?? '');
  await say(buyer, 'order it');
  await say(buyer, `Pat Shore ${number}\n${number} Elm Street\nDuluth, MN 55800`);
}

/** Starts and ends all the work there is; when there is none, waits for the oven, the glue or the cure. */
async function makeAll(say: Say, tap: Press, wait: () => Promise<Window>): Promise<void> {
  for (let left = (await say(MAKER, 'bench')).unpacked; left > 0; left = (await say(MAKER, 'bench')).unpacked) {
    const work = tap('start');
    if (work === undefined) await wait();
    else await carriedOut(await work, tap, wait);
  }
}

/** A batch in the oven is done when its reminder has come; anything else at once. */
async function carriedOut({ what }: Window, tap: Press, wait: () => Promise<Window>): Promise<void> {
  if (what.includes('|bake/')) for (let rung = 0; rung < 2; rung += 1) await wait();
  await tap('done');
}

async function post(say: Say, tap: Press, id: string): Promise<void> {
  await say(MAKER, id);
  await tap('posted', id);
  await say(MAKER, `TRACK-${id}`);
}

/** Buttons on the newest messages in someone's chat, the newest message's first. */
const buttons = (lives: Lives, person: number, messages: number) =>
  lives
    .messagesOf(person)
    .toReversed()
    .slice(0, messages)
    .flatMap(({ message_id: message, reply_markup }) =>
      (reply_markup?.inline_keyboard.flat() ?? []).flatMap((button) => {
        const data = 'callback_data' in button ? button.callback_data : '';
        const found = parseTap(data);
        return found === null ? [] : [{ message, data, tap: found }];
      }),
    );
