import type { Line } from '../../domain/order/spec.ts';
import { headName, partName } from '../names.ts';
import { sampleLine } from '../sample.ts';
import type { DraftWords } from '../draftWords.ts';
import type { QuoteWords } from '../words.ts';
import type { Voice } from '../voice.ts';
import { EN_BECAUSE } from './findings.ts';
import { EN_TERMS } from './terms.ts';

const { heads, quote } = EN_TERMS;

export const EN_DRAFT: DraftWords = {
  soFar: 'So far:',
  lineOf: (line, lines) => `Line ${line} of ${lines}.`,
  line: (lines, voice) => `${lines.length === 1 ? 'Line' : 'Lines'} ${voice.list(lines)}`,
  localRules: 'These rules are facts with a date, not legal advice. Check your local rules.',
  now: (value) => `Now: ${value}.`,
  wantsGuard: 'with a guard',
  photos: (count, voice) => voice.count(count, { one: 'photo kept', other: 'photos kept' }),
  by: (day) => `wanted by ${day}`,
  to: (place) => `to ${place}`,
  nothingYet: 'nothing said yet',
  asks: {
    style: () => 'Which style of head?',
    weight: () => 'What weight?',
    hook: () => 'Which hook size?',
    paint: () => 'What color?',
    guard: () => 'Which guard?',
    keeper: () => 'What should hold the soft bait on?',
    dressing: () => 'A skirt or collar on it?',
    metal: () => 'Which metal?',
    quantity: ({ shop: { orders } }) => `How many heads? Any number from ${orders.least} to ${orders.most}.`,
    usual: () => 'Take the other parts as usual, or choose each?',
    shipTo: () => 'Which state or country does it ship to? Postage and tax hang on it. The address comes later.',
    needBy: () => 'By which day do you want them?',
  },
  whichPart: (country) =>
    `Which state or province of ${country}? Postage, tax and the rules on lead hang on it. The address comes later.`,
  soonest: 'As soon as possible: the earliest day I can promise comes with the price.',
  makes: (head) => `Yes, that can be made: ${head}. Say how many to order it.`,
  usualIs: (list) => `Usual here: ${list}.`,
  tip: (voice) => `Tap one, or type it all in one message, such as ${quote(wholeExample(voice))}.`,
  tapOrType: 'Tap one or type it.',
  last: 'That is the last question.',
  more: (count, voice) =>
    count === 1 ? 'One more question after this.' : `About ${voice.number(count)} more questions after this.`,
  unclear: (said) => `I did not understand ${said}. Say it in other words, or ask the maker.`,
  stuck: 'This cannot be made as it stands:',
  askFirst: 'The maker has to look at this before it can be ordered:',
  noDay: 'I cannot find a day for this by myself. The maker can.',
  hindrances: {
    'no-hours': () => 'There are no bench hours on the calendar.',
    'hours-end': () => 'The bench hours on the calendar end before it would be done.',
    'no-post': () => 'No post leaves on any day ahead.',
    'no-rack': ({ heads }, voice) => `The oven has no room for ${voice.count(heads, EN_TERMS.heads)}.`,
    'setup-too-long': ({ do: step, minutes, longest }, voice) =>
      `Getting ready to ${step} takes ${voice.duration(minutes)}, longer than any stretch of bench hours (${voice.duration(longest)}).`,
    'bake-too-long': ({ minutes, longest }, voice) =>
      `One oven load takes ${voice.duration(minutes)}, longer than any stretch of bench hours (${voice.duration(longest)}).`,
  },
  waysBelow: 'The buttons are the nearest ways out. You can also type a change.',
  noWays: 'Type a change, or ask the maker. What you said is kept.',
  hints: {
    style: (voice) => said(voice, (line, voice) => headName(voice, { style: line.spec.style })),
    weight: (voice) => said(voice, ({ spec }) => `${spec.weight} oz`),
    hook: (voice) => said(voice, ({ spec }) => spec.hook),
    paint: (voice) => said(voice, ({ spec }, voice) => partName(voice, 'paint', spec.paint)),
    guard: (voice) => said(voice, ({ spec }, voice) => partName(voice, 'guard', spec.guard)),
    keeper: (voice) => said(voice, ({ spec }, voice) => partName(voice, 'keeper', spec.keeper)),
    dressing: () => quote('no skirt'),
    metal: (voice) => said(voice, ({ spec }, voice) => partName(voice, 'metal', spec.metal)),
    quantity: (voice) => said(voice, ({ quantity }, voice) => voice.count(quantity, heads)),
    usual: () => quote('as usual'),
    shipTo: (voice) => quote(voice.place(voice.shop.place)),
    needBy: () => quote('by June 12'),
    stuck: () => quote('make it 30'),
    whole: () => quote('order this'),
  },
  missed: {
    hint: (hint) => `I did not get that. Tap a button below, or type something like ${hint}.`,
    example: (hint) =>
      `I still do not see what you mean, and nothing is lost. One short answer at a time works best: for this question, ${hint}. Or tap one of the buttons.`,
    person:
      'Let a person read it: tap “Ask the maker”, and your next message goes to the maker. Your order stays as it is.',
    again: (misses, hint) =>
      `That makes ${misses} messages I could not read. Everything you said before is kept. Tap “Ask the maker”, a button below, or type ${hint}.`,
  },
  changeWhat: 'What do you want to change? Everything else stays as it is.',
  dropSure: 'Throw this away? Nothing has been ordered.',
  dropFor: (order) => `Throw this away and order ${order} again? Nothing of this has been ordered.`,
  welcomeBack: (since) => `Welcome back. You began an order on ${since}, and it is still here.`,
  goOn: 'Go on with it, or start over?',
};

export const EN_QUOTE: QuoteWords = {
  notYet: 'Please check it. Nothing is ordered yet.',
  missed: (wanted, ships) => `You wanted it by ${wanted}. The soonest I can promise is ${ships}.`,
  made: (metal, ounces) => `Cast in ${metal} these weigh about ${ounces} oz each; ounces on a mold are for lead.`,
  usual: (list) => `As usual, since you did not say: ${list}.`,
  each: (parts, each) => `Each: ${parts} = ${each}`,
  off: (money) => `less ${money} for quantity`,
  same: (count, free, voice) =>
    `${voice.number(count)} would cost the same: ${voice.number(free)} more ${free === 1 ? 'is' : 'are'} free.`,
  rush: (money) => `Needed soon: ${money}`,
  topUp: (money, least) => `Up to the least order of ${least}: ${money}`,
  postage: (place, money, parcels) =>
    parcels === 1 ? `Postage to ${place}: ${money}` : `Postage to ${place}, ${parcels} parcels: ${money}`,
  tax: (money) => `Sales tax: ${money}`,
  total: (money) => `TOTAL: ${money}`,
  ships: (day) => `Ships ${day}.`,
  shipsOncePaid: (day) => `Ships ${day} if it is paid today; its ship day is set when the payment is here.`,
  why: (reasons) => `Why then: ${reasons}.`,
  because: EN_BECAUSE,
  neededBy: (day) => `Wanted by ${day}.`,
  goodUntil: (time) => `Price and day are good until ${time}.`,
  unclear: (said) =>
    `Not in this order, because I did not understand it: ${said}. Say it in other words, or ask the maker.`,
  howToAccept: 'Tap “Order this” to order it.',
};

const said = (voice: Voice, part: (line: Line, voice: Voice) => string): string => {
  const line = sampleLine(voice.shop);
  return quote(line === undefined ? 'as usual' : part(line, voice));
};

function wholeExample(voice: Voice): string {
  const line = sampleLine(voice.shop);
  if (line === undefined) return voice.count(voice.shop.orders.least, heads);
  const { spec, quantity } = line;
  const parts = [partName(voice, 'paint', spec.paint), partName(voice, 'guard', spec.guard)];
  return `${voice.count(quantity, heads)}, ${headName(voice, spec)}, ${parts.join(', ')}, to ${voice.place(voice.shop.place)}`;
}
