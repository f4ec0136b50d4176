import { capital } from '../clip.ts';
import { amountOf, itemName, putText } from '../names.ts';
import { headsOf } from '../../domain/order/spec.ts';
import { headsIn } from '../../domain/bench/session.ts';
import type { Change } from '../../domain/desk/change.ts';
import type { ChangeWords } from '../eveningWords.ts';
import type { Voice } from '../voice.ts';
import type { LabelWords } from '../words.ts';
import { lineName } from '../lineName.ts';
import { workName } from '../work.ts';
import { EN_BUSINESS } from './business.ts';
import { EN_TERMS } from './terms.ts';

export const EN_LABELS: LabelWords = {
  words: {
    apply: 'Yes, do it so',
    wait: 'I can wait',
    'fresh-mix': 'Fresh mix',
    accept: 'Order this',
    'add-tracking': 'Add the tracking number',
    'add-line': 'Add another head',
    'all-good': 'Done, all good',
    'ask-maker': 'Ask the maker',
    'any-day': 'No fixed day',
    back: 'Back',
    bench: 'Bench',
    buy: 'What to buy',
    'cancel-order': 'Cancel this order',
    cannot: 'Cannot do it',
    'cancel-yes': 'Yes, cancel it',
    'choose-each': 'Choose each part',
    done: 'Done',
    'done-change': 'Nothing more to change',
    export: 'A copy of my data',
    'five-more': '5 more minutes',
    forget: 'Delete my data',
    'forget-yes': 'Yes, delete it for good',
    'grant-cancel': 'Let it be cancelled',
    help: 'Help',
    'keep-data': 'Keep it',
    'keep-on': 'Go on with it',
    'keep-order': 'Keep the order',
    'my-orders': 'My orders',
    'new-order': 'New order',
    'no-tracking': 'No tracking number',
    posted: 'Handed in at the post',
    queue: 'Queue',
    readdress: 'Change the address',
    'same-address': 'Same address as before',
    'refuse-cancel': 'Keep making it',
    reply: 'Reply',
    reword: 'Go by the new words',
    'start-over': 'Start over',
    stock: 'Stock',
    timers: 'Timers',
    undo: 'Undo',
    usual: 'As usual',
    week: 'The week',
    'change-something': 'Change something',
  },
  usual: (heads, voice) => `As usual, ${voice.count(heads, EN_TERMS.heads)}`,
  way: ({ put }, voice) => `Make it ${putText(put, voice)}`,
  sooner: ({ sooner }, voice) =>
    `${{ rush: `In a rush, ${voice.money(sooner.charge)} more`, bare: 'Unpainted', unguarded: 'Without guards', fewer: voice.count(headsOf(sooner.lines), EN_TERMS.heads) }[sooner.way]}: ships ${voice.shortDay(sooner.ships)}`,
  grant: ({ cents }, voice) => (cents === 0 ? 'Can do' : `Can do, +${voice.money(cents)} each`),
  line: ({ number }) => `Line ${number}`,
  'drop-line': ({ number }) => `Take line ${number} out`,
  change: ({ ask }) => capital(EN_TERMS.asks[ask]),
  start: ({ work }, voice) => `${workName(voice, work)}: ${voice.number(headsIn(work))}${work.later ? ' (later)' : ''}`,
  finish: ({ session }, voice) => `Done: ${workName(voice, session)}`,
  session: ({ session }, voice) => `Running: ${workName(voice, session)}`,
  scrapped: ({ count }) => (count === 0 ? 'None bad' : `${count} bad`),
  'bad-of': ({ lot, count }) => `${lot}: ${count} bad`,
  lot: ({ lot }) => `Lot ${lot}`,
  propose: ({ change }, voice) => (PROPOSALS[change.do] as (facts: Change, voice: Voice) => string)(change, voice),
  delay: ({ day }, voice) => `Tell the buyer ${voice.shortDay(day)}`,
  photos: ({ order, line, photos }) => `Photos of ${order}, line ${line} (${photos})`,
  'photo-of': ({ order, line }, voice) => `${order}: ${lineName(line, voice)}`,
  'pass-on': ({ order }) => `Tell the maker: ${order}`,
  'bake-spares': ({ count }) => (count === 1 ? 'Bake the spare one too' : `Bake the ${count} spare ones too`),
  'count-lot': ({ lot }) => `Count ${lot}`,
  'stock-is': ({ item }, voice) => itemName(voice, item),
  bought: ({ item, count }, voice) => `Ordered: ${amountOf(item, count, voice)} ${itemName(voice, item)}`,
  pay: ({ order }) => `Money of ${order}`,
  'pay-here': ({ what, cents }, voice) =>
    `${{ whole: 'Pay here', deposit: 'Pay the deposit here' }[what]}: ${voice.money(cents)}`,
  reship: ({ place, cents }, voice) => `Yes, to ${voice.place(place)}: ${voice.money(cents)}`,
  settle: ({ order, what, cents }, voice) =>
    `${{ whole: 'Paid', back: 'Given back' }[what]}: ${order} ${voice.money(cents)}`,
  paid: ({ what, cents }, voice) =>
    `${{ whole: 'Paid in full', deposit: 'Deposit paid', back: 'Given back' }[what]}: ${voice.money(cents)}`,
  paper: ({ kind }) => capital(EN_BUSINESS.paper.names[kind]),
  arrived: ({ item, count }, voice) => `Arrived: ${amountOf(item, count, voice)} ${itemName(voice, item)}`,
  again: ({ order }) => `Order ${order} again`,
  'handed-in': ({ order }) => `Handed in: ${order}`,
  order: ({ order }) => `Order ${order}`,
};

/** A change in a few words, to be looked at before it is made. */
const PROPOSALS: ChangeWords = {
  off: ({ day }, voice) => `Close ${voice.shortDay(day)}`,
  on: ({ day }, voice) => `Open ${voice.shortDay(day)}`,
  extra: ({ day, from, to }, voice) => `${voice.shortDay(day)}, also ${from}-${to}`,
  hours: ({ day, from, to }, voice) => `${voice.shortDay(day)}, ${from}-${to}`,
  away: ({ day, from, to }, voice) => `${voice.shortDay(day)}, away ${from}-${to}`,
  first: () => 'Put it first',
  hold: () => 'Put it on hold',
  release: () => 'Let it take its turn',
  remake: () => 'All scrap: begin anew',
  shelve: () => 'To the shelf',
  join: () => 'Join with its likes',
  split: ({ heads }, voice) => `Split off ${voice.count(heads, EN_TERMS.heads)}`,
};
