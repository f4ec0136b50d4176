import type { Obstacle } from '../../domain/desk/lotChanges.ts';
import type { EveningWords, Threat } from '../eveningWords.ts';
import { amountOf, itemName } from '../names.ts';
import { lines } from '../clip.ts';
import { hourOn } from '../hourOn.ts';
import { lineName } from '../lineName.ts';
import { partOfDay } from '../partOfDay.ts';
import type { PlainWords } from '../words.ts';
import { EN_TERMS } from './terms.ts';

export const EN_EVENING: EveningWords = {
  closing: 'Closing down for today.',
  ovenOn: 'THE OVEN IS STILL ON. Take the rack out and switch it off:',
  stillRuns: 'Still marked as running; tap it done if it is:',
  overnight: 'If you start this now, it cures overnight:',
  closingCare: 'Oven off, pot off. Then:',
  lot: (lot, order) => `Lot ${lot} of order ${order}`,
  history: 'HISTORY',
  offShelf: (heads) => `Off the shelf, made before: ${heads}.`,
  step: (step, from, to) =>
    from === null ? `${step}: done ${to ?? ''}` : to === null ? `${step}: since ${from}` : `${step}: ${from} to ${to}`,
  counted: (good, scrap) => `Good: ${good}. Scrapped: ${scrap}.`,
  would: {
    off: ({ day }, voice) => `No bench hours on ${voice.day(day)}.`,
    on: ({ day }, voice) => `The usual bench hours on ${voice.day(day)}.`,
    extra: ({ day, from, to }, voice) =>
      `Extra bench hours on ${voice.day(day)}, ${hourOn(day, from, voice)} to ${hourOn(day, to, voice)}.`,
    hours: ({ day, from, to }, voice) =>
      `Bench hours on ${voice.day(day)} from ${hourOn(day, from, voice)} to ${hourOn(day, to, voice)}, and no others.`,
    away: (part, voice) => `No bench hours on ${voice.day(part.day)} ${partOfDay(part, voice, PART)}.`,
    first: ({ order }) => `Order ${order} comes before all others.`,
    hold: ({ order }) => `Order ${order} is on hold: nobody works on it until it is released.`,
    release: ({ order }) => `Order ${order} takes its turn again.`,
    remake: ({ lot }) => `Lot ${lot} is scrap. As many heads begin again at the pour.`,
    shelve: ({ lot }) => `The heads of lot ${lot} go on the shelf. As many begin again for the order.`,
    join: ({ lot }) => `What is like lot ${lot} in its order becomes one lot.`,
    split: ({ lot, heads }, voice) =>
      `${voice.count(heads, voice.terms.heads)} of lot ${lot} become a lot of their own.`,
  },
  noEffect: 'No promise and no ship day moves.',
  effects: 'WHAT MOVES',
  effect: (order, before, after) => `${order}: ${before ?? 'no day'} → ${after ?? 'no day'}`,
  late: (promised) => `(promised ${promised})`,
  nothingYet: 'Nothing done yet.',
  buyerSaid: (quoted) => `In the buyer’s words: ${quoted}`,
  inDanger: (order, buyer, { promised, ships, late, at }) =>
    `Order ${order} of ${buyer} is ${late ? 'late' : 'in danger'}: promised for ${promised}, and ${heads(ships, at)}.`,
  waitsOn: 'WHAT IT WAITS ON',
  handsOn: (orders, until) => `hands are on ${orders} until ${until}`,
  missing: (item, amount, due) =>
    `${item}: ${amount} short, ${due === null ? 'none on order' : `due ${due} and not here`}`,
  ifOrdered: (time) => `material ordered today would be here ${time}`,
  helps: {
    first: (ships) => `Put first, it would ship ${ships}.`,
    extra: (hours, ships) => `With hours on ${hours} as well, it would ship ${ships}.`,
    release: (ships) => `Off hold now, it would ship ${ships}.`,
    buy: 'Order what is missing now (“buy”), or tell the buyer a day.',
    post: (by) => `It only has to be handed in, by ${by}.`,
    nothing: 'Neither its turn nor three hours more on one day would change that: tell the buyer now.',
  },
  hours: 'BENCH HOURS',
  closed: 'closed',
  hoursHow:
    'Tap a day to see what closing or opening it would do. Or type “off friday”, “off friday evening” (a part of it), “on friday”, “extra friday 14:00-16:00” (more hours) or “hours friday 17:00-20:00” (others instead).',
  coming: 'FALLS DUE',
  comes: {
    post: ({ orders, by }, voice) => `Post cut-off, ${voice.list(orders)}: ${voice.clock(by)}`,
    unpaid: ({ order, buyer, day }, voice) => `Payment of ${order}, ${buyer}: ${voice.shortDay(day)}`,
    quote: ({ buyer, until }, voice) => `Quote to ${buyer} ends: ${voice.clock(until)}`,
    restock: ({ item, count, named, overdue }, voice) =>
      `Restock, ${amountOf(item, count, voice)} ${itemName(voice, item)}: ${overdue > 0 ? `OVERDUE since ${voice.shortDay(named)}` : voice.shortDay(named)}`,
  },
  comesDanger: (order, { promised, ships, late, at }) =>
    `${late ? 'Late' : 'Promise in danger'}, ${order}: ${promised}, ${at === 'hold' ? 'on hold' : ships === null ? 'no day in sight' : `heading for ${ships}`}`,
  more: (count) => `and ${count} more`,
  minutes: 'Minutes as setup + each head; a pour counts each shot.',
  minutesRow: (step, file, learned, times, voice) =>
    `${step}: ${file}${learned === null ? '' : `, now ${learned}`} (timed ${voice.count(times, { one: 'time', other: 'times' })})`,
  scrap: (file, learned, heads, bad) =>
    `Scrap: ${file}${learned === null ? '' : `, now ${learned}`} (${bad} bad of ${heads} poured)`,
  missed: (share, missed, all) => `Evenings that fall out: ${share} (${missed} of ${all})`,
};

/** Where a broken promise heads. */
function heads(ships: string | null, at: Threat['at']): string {
  if (at === 'hold') return 'it is on hold';
  if (ships === null) return 'as the bench stands it has no ship day';
  return at === 'post' ? `it is packed: the next post leaves ${ships}` : `as the bench stands it would ship ${ships}`;
}

const PART = {
  on: (from: string) => `from ${from} on`,
  until: (to: string) => `until ${to}`,
  between: (from: string, to: string) => `from ${from} to ${to}`,
} as const;

const WHICH = {
  day: 'Which day? Type it as “off friday”, “off friday after 8pm”, “off 2026-12-05” or “on friday”.',
  hours: 'Which day, from when to when? Type it as “extra friday 13:00-15:00” or “hours 2026-12-05 17:00-20:00”.',
  order: 'Which order? Type it as “first K-1001”, “hold K-1001” or “release K-1001”.',
  lot: 'Which lot? Type it as “remake K-1001-1”, “shelve K-1001-1” or “join K-1001-1”; the order shows its lots.',
  split: 'Which lot, and how many heads of it? Type it as “split K-1001-1 10”.',
} as const;

/** What stands against a change of a lot. */
const OBSTACLE: Readonly<Record<Obstacle, (lot: string, step: string, of: number) => string>> = {
  'no-lot': (lot) => `There is no lot ${lot} on the bench.`,
  running: (lot, step) => `${lot} is being worked on (${step}). Tap that done first.`,
  waiting: (lot, step) => `${lot} waits (${step}). That has to be over first.`,
  'not-poured': (lot) => `Nothing of ${lot} is poured yet, so there is nothing to make again.`,
  'not-made': (lot, step) => `${lot} is not finished: ${step} comes next. Only finished heads go on the shelf.`,
  packed: (lot) => `${lot} is packed already.`,
  'off-shelf': (lot) => `The heads of ${lot} came off the shelf finished; they only want packing.`,
  'part-baked': (lot) => `A part of ${lot} has been in the oven and the rest has not. Bake the rest first.`,
  'too-many': (lot, _step, of) => `${lot} has ${of} heads for its order: split off one at least, and fewer than that.`,
  'moved-on': (lot) => `${lot} no longer has as many heads as then. Look at it again: “lot ${lot}”.`,
  alone: (lot) => `Nothing else of its order is like ${lot} and waits for the same step.`,
};

/** Short answers around an evening. */
export const EN_EVENING_PLAIN = {
  'which-work': () => 'More than one could be meant. Which?',
  'nothing-runs': () => 'Nothing is running at the bench.',
  'which-change': ({ about }) => WHICH[about],
  'no-change': ({ change, why, step }) =>
    'day' in change
      ? 'That changes nothing: the day is over, or its hours are so already.'
      : 'order' in change
        ? `That changes nothing: there is no open order ${change.order}, or it is so already.`
        : OBSTACLE[why ?? 'moved-on'](
            change.lot,
            step === null ? '' : EN_TERMS.steps[step],
            'of' in change ? change.of : 0,
          ),
  'unpaid-due': ({ rows }, voice) =>
    lines(
      'Not paid by the day it was due:',
      ...rows.map(
        ({ order, buyer, due, dueOn }) => `- ${order}, ${buyer}: ${voice.money(due)}, due ${voice.shortDay(dueOn)}`,
      ),
    ),
  'hand-in': ({ orders, by }, voice) =>
    `${voice.list(orders)} must be handed in at the post by ${voice.clock(by)}. Tap when it is done.`,
  'restock-day': ({ deliveries }, voice) =>
    lines(
      deliveries.every(({ overdue }) => overdue > 0)
        ? 'Overdue. Tap what has come:'
        : 'Due to arrive today. Tap what has come:',
      ...deliveries.map(
        ({ item, count, named, overdue }) =>
          `- ${amountOf(item, count, voice)} ${itemName(voice, item)}${overdue > 0 ? `, overdue since ${voice.shortDay(named)}` : ''}`,
      ),
    ),
  'fresh-mix': ({ guards, left, until }, voice) =>
    `Fresh mix: at most ${voice.count(guards, { one: 'guard', other: 'guards' })}, until ${voice.clock(until)}. ${left === 0 ? 'It is the last: none are left after it.' : `After it ${voice.number(left)} ${left === 1 ? 'is' : 'are'} left to set.`}`,
  'quote-ends': ({ until }, voice) =>
    `Your quote stands until ${voice.time(until)}. After that the price and the day have to be worked out anew. Nothing is ordered yet.`,
  'order-photo': ({ order, buyer, line, said }, voice) =>
    lines(
      `Photo from ${buyer} for ${order}: ${lineName(line, voice)}`,
      said === '' ? null : EN_EVENING.buyerSaid(voice.terms.quote(said)),
    ),
  'buyer-photo': ({ order, number, photos, line }, voice) =>
    `Photo ${number} of ${photos} for ${order}: ${lineName(line, voice)}`,
  begun: ({ order, ships }, voice) => `Order ${order} has its turn at the bench now. It ships ${voice.day(ships)}.`,
  'delay-told': ({ order, ships }, voice) =>
    `The buyer of ${order} is told ${voice.day(ships)}, with the choice to wait, to ask you, or to cancel.`,
  'waits-for-money': ({ order }) =>
    `${order} waits for its money, so it is off the bench already. Once the money is here it takes its turn; put it on hold then.`,
  'not-packed': ({ order }) =>
    `${order} is not packed yet, so no parcel of it can have gone. Type its tracking number once it is handed in.`,
  'delay-over': ({ order }) => `${order} is no longer in danger, so its buyer is told nothing.`,
  'delay-moved': ({ order, ships }, voice) =>
    ships === null
      ? `That day no longer holds, and nobody can tell another for ${order} yet. Its buyer is told nothing.`
      : `That day no longer holds for ${order}: it is ${voice.day(ships)} now. Its buyer is told nothing yet.`,
  delayed: ({ order, promised, ships }, voice) =>
    `Order ${order} will be late: it was promised for ${voice.day(promised)} and will ship ${voice.day(ships)}. You can wait, ask the maker to change something, or cancel it.`,
  waits: ({ order, ships }, voice) => `Thank you. Order ${order} is now promised for ${voice.day(ships)}.`,
  'buyer-waits': ({ order, ships, buyer }, voice) =>
    `${buyer} waits for order ${order}: it is now promised for ${voice.day(ships)}.`,
} satisfies Partial<PlainWords>;
