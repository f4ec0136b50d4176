import { capital, lines } from '../clip.ts';
import type { Ailment, Around } from '../../domain/desk/around.ts';
import type { PlainWords } from '../words.ts';
import { amountOf, headName, itemName } from '../names.ts';
import { sampleLine } from '../sample.ts';
import { fateSaid, partingSaid } from './parting.ts';
import type { Voice } from '../voice.ts';
import { EN_TERMS } from './terms.ts';

/** What the maker is told. */
export const EN_MAKER = {
  'maker-help': () =>
    'bench: what can be started and what runs\nqueue: open orders\ntimers: oven, glue and cure, and what else falls due\nstock: what is here and what is coming\ndigest: the morning list again\nweek: the plan of the next seven days, as a picture\nundo: takes the last tap at the bench back\nhealth: how the program itself does\ngarage 55 F: how warm the garage is\nreckon 24 football 3/8: what so many heads take\n\nAt the bench and for your hours:\ndone, 3 bad, start, 5 more: what the buttons at the bench do\nhours: your days, closed and opened by tap; off friday, on friday, extra friday 13:00-15:00, hours friday 17:00-20:00\nfirst K-1001, hold K-1001, release K-1001: what comes when\nlot K-1001-1: a lot and its history; split K-1001-1 10, join, remake or shelve K-1001-1 change it\nminutes: what your clock and your counts have taught\nclose down: what to look at before you go\n\nStock and money:\ngot 200 4/0 60 degree hooks, count black guards 85, ordered 500 bags for 2026-12-09: the stock changes\nbuy, journal: what to order, what changed\npaid K-1001 20, refund K-1001 5 and why, price K-1001 -5 and why, unpaid: money\ncost K-1001, month, tax, books 2026-11: how it goes\nslip, sheet or receipt K-1001, prices: papers\ntracking K-1001 LX 1234: the number of a parcel, afterwards too\n\nType an order number to see it, also of one that has left. “new order” orders for yourself.',
  'for-maker-only': () => 'That word is for the maker. Type “help” to see what I can do for you.',
  health: ({ around }, voice) => (around === null ? 'The program runs.' : healthLines(around, voice)),
  'reply-sent': ({ buyer }) => `Sent to ${buyer}.`,
  'buyer-cancelled': ({ buyer, parting, fate }, voice) =>
    lines(
      `Order ${parting.order} of ${buyer} is cancelled. What was put aside for it and not used is free again.`,
      fateSaid(fate, voice),
      partingSaid(parting, voice),
    ),
  'too-cold': ({ below }, voice) =>
    `Too cold to glue: below ${voice.temperature(below)} the epoxy may never cure through. Warm the garage, then start again. Nothing was started.`,
  'ready-to-post': ({ order }) => `Order ${order} is packed. Tap below when it is handed in at the post.`,
  undone: ({ what }) => `Taken back: ${actName(what)}.`,
  'nothing-to-undo': () => 'There is nothing to take back, or later work already stands on it.',
  'undo-old': ({ what, at }, voice) =>
    `The last work noted was ${actName(what)}, ${voice.clock(at)}. Tap “Undo” to take that back.`,
  'goes-on': ({ order }) => `${order} goes on, and its buyer has been told.`,
  'put-off': ({ timer, minutes }, voice) =>
    `${capital(EN_TERMS.timers[timer.kind])}: ${voice.duration(minutes)} more. I will tell you at ${voice.clock(timer.dueAt)}.`,
  arrived: ({ item, count, onHand }, voice) =>
    `Put away: ${amountOf(item, count, voice)} ${itemName(voice, item)}. On hand now: ${amountOf(item, onHand, voice)}.`,
  'oven-at': ({ celsius, hold, wanted, verdict }, voice) =>
    `At ${voice.temperature(celsius)} a hold as good as ${voice.duration(hold)} at ${voice.temperature(voice.shop.oven.celsius)} would be about ${voice.duration(wanted)}. ${
      {
        short: `${voice.duration(hold)} is too short there.`,
        enough: `${voice.duration(hold)} does.`,
        long: `${voice.duration(hold)} over-bakes there.`,
      }[verdict]
    } This is only a warning: stay inside the window on the powder's own sheet.`,
  'which-oven': (_say, voice) =>
    `What does the oven really have? Type it as “oven ${voice.temperature(voice.shop.oven.celsius)}”.`,
  'maker-unclear': () => 'I did not get that, and nothing has changed. “help” lists what you can type.',
  'which-temperature': (_say, voice) =>
    `How warm is the garage? Type it as “garage ${voice.temperature(voice.shop.garageCelsius)}”.`,
  'which-head': (_say, voice) => `Which head? Type “reckon” and the head, such as “reckon ${sampleName(voice)}”.`,
  'ask-tracking': ({ order }) => `Type the tracking number of ${order}, or tap “No tracking number”.`,
  'ask-tracking-after': ({ order }) => `Type the tracking number of ${order}; its buyer will hear it.`,
  'tracking-kept': ({ order }) => `The tracking number of ${order} is kept, and its buyer has been told.`,
  posted: ({ order }) => `Order ${order} is off the bench. The buyer has been told.`,
} satisfies Partial<PlainWords>;

const AILMENTS: Readonly<Record<Ailment, string>> = {
  'no-poll': 'The chat platform does not answer. Look whether this computer is online.',
  'letters-wait': 'Letters do not go out. Look whether this computer is online.',
  undelivered: 'Some letters could not be delivered; their readers may have blocked the bot.',
  'old-backup': 'The last backup is more than two days old. Look at the log for what stops it.',
};

function healthLines({ health, ailments }: Healthy, voice: Voice): string {
  const at = (instant: number | null): string => (instant === null ? 'not yet' : voice.time(instant));
  return lines(
    ailments.length === 0 ? 'All is well.' : ailments.map((ailment) => AILMENTS[ailment]).join('\n'),
    `Version ${health.version}, running since ${voice.time(health.startedAt)}`,
    `Last answer of the chat platform: ${at(health.lastPoll)}`,
    `Letters that wait: ${health.waiting}; not delivered this week: ${health.undelivered}`,
    `Book last written: ${at(health.lastWrite)}`,
    `Last backup sent: ${at(health.lastBackup)}`,
  );
}

type Healthy = NonNullable<Around['health']>;

/** An act at the bench by the name it is remembered under: `start/pour`, `done/bake`. */
function actName(what: string): string {
  const [act, step = ''] = what.split('/');
  const name = (EN_TERMS.steps as Readonly<Record<string, string>>)[step] ?? step;
  return act === 'start' ? `start of “${name}”` : act === 'done' ? `“${name}” done` : what;
}

function sampleName(voice: Voice): string {
  const line = sampleLine(voice.shop);
  return line === undefined ? '' : `${line.quantity} ${headName(voice, line.spec)}`;
}
