import type { DigestWords } from '../digestWords.ts';
import type { BenchWords, TimerWords } from '../words.ts';

export const EN_BENCH: BenchWords = {
  makerWelcome: 'This chat is your order book and your bench. Before anything else:',
  makerHow:
    'Buyers order here by themselves; you hear of each order, and of each question they have for you. Tap “Bench” to see what can be started.',
  care: 'TAKE CARE:',
  running: 'RUNNING',
  ready: 'CAN BE STARTED',
  passed: {
    done: (step, lot) => `That is done already: ${step}, ${lot}. Nothing was started.`,
    running: (step, lot) => `That runs already: ${step}, ${lot}. Nothing was started.`,
    gone: (step, lot) => `${lot} is no longer on the bench: ${step} was not started.`,
    other: () => 'It is not the same heads any more. Nothing was started.',
  },
  nothing: 'Nothing to start and nothing running.',
  timers: 'TIMERS',
  noTimers: 'No timers are running.',
  sinceTime: (time) => `since ${time}`,
  slots: { hook: 'Hook', paint: 'Paint', guard: 'Guard', keeper: 'Keeper', dressing: 'Dressing', metal: 'Metal' },
  pin: {
    in: 'Base-hole pin: IN',
    none: 'Base-hole pin: LEAVE OUT',
    pullAfter: 'Base-hole pin: PULL IT HOT, RIGHT AFTER THE DIP',
    pull: 'Base-hole pin: IF STILL IN, PULL IT HOT',
  },
  short: (item, heads, of) => `${item} for ${heads} of ${of}`,
  countAnew: 'If more is there, count it before you start.',
  left: (heads) => `${heads} over stay out: what they would take is put aside for other orders`,
  later: (time) => `Begun before ${time} it would push what was promised earlier`,
  leftOut: (heads) => `Left out, as nothing was free for them: ${heads}. They count as scrap.`,
  beyond: (items) => `Taken beyond the count: ${items}. They were there, it seems; count what is left.`,
  melt: (grams) => `Melt ${grams}, sprues and warming shots included.`,
  countTo: (lot, from, to) =>
    `Heat the head for a count of ${from === to ? from : `${from} to ${to}`} before the dip${lot === '' ? '' : ` (${lot})`}.`,
  lightest: (times) =>
    `The lightest heads on this rack get ${times} times their hold, more than powder stands: bake them apart.`,
  bake: (heat, comeUp, hold) => `Oven at ${heat}. About ${comeUp} until the heads are up to heat, then hold ${hold}.`,
  glue: (mixes, each, life, voice) =>
    `${voice.count(mixes, { one: 'glue mix', other: 'glue mixes' })}, at most ${voice.count(each, { one: 'guard', other: 'guards' })} each. A mix stays workable for about ${life}.`,
  cure: (time) => `Full cure takes ${time} in this garage.`,
  scrapped: (count, lots, voice) => `Scrapped: ${voice.number(count)}${lots === '' ? '' : ` (${lots})`}.`,
  localCodes: '- Check your local codes and the safety data sheets.',
  ovenTaken: 'The oven already has a rack in it. Take that out first.',
  howMany: (lot, heads) => `How many of the ${heads} of ${lot} are scrap?`,
  stepDone: (step) => `${step}: done.`,
  good: (lot, good) => `${lot}: ${good} good.`,
  next: (step) => `Next: ${step}.`,
  finished: 'Ready for the post.',
  packs: (parcel, over) => `INTO THE PARCEL: ${parcel}. ON THE SHELF: ${over}.`,
  sparesOut: (count, voice) => `NOT ON THE RACK: ${voice.number(count)} made over.`,
  letGo: (lot, count, voice) =>
    `${lot}: ${voice.number(count)} made over did not fit the rack and ${count === 1 ? 'is' : 'are'} let go, so that no load is only for ${count === 1 ? 'it' : 'them'}.`,
  shelved: (heads) => `On the shelf: ${heads}, made over.`,
  topUp: (lot, heads) => `Too few are left: ${heads} to be poured again, as lot ${lot}.`,
  garage: (temperature) => `The garage counts as ${temperature} from now on.`,
  curesGoOn: 'Cures that run, at that temperature:',
  setNone: (least) => `Below ${least} epoxy may never cure through: set no guards until it is warmer.`,
  curesStill: (least) => `Below ${least} epoxy may never cure through. These stand still until it is warmer:`,
  reckoned: (quantity, cast) => `For ${quantity}, cast ${cast}: the usual scrap is counted in.`,
  weights: 'One head, hook included:',
  weighs: (metal, grams, ounces) => `${metal}: ${grams} (${ounces} oz)`,
  noBake: 'not for the oven',
  powder: (grams) => `Powder: about ${grams}.`,
  cured: (full, overnight, garage) => `Glue at ${garage}: handle after ${overnight}, full cure ${full}.`,
  noCure: (garage) => `Glue at ${garage}: too cold to cure.`,
};

const GUARDS = { one: 'guard', other: 'guards' } as const;

export const EN_TIMER: TimerWords = {
  due: {
    'up-to-heat': ({ duration, shop }) =>
      `UP TO HEAT. The hold of ${duration(shop.oven.holdMinutes)} counts from here.`,
    bake: () => 'BAKE DONE. Take the rack out of the oven.',
    cool: () => 'COOL. The heads can be handled.',
    glue: () => 'GLUE MIX OVER. Set no more guards with it; mix fresh.',
    handling: () => 'GLUE SET. The heads can be handled with care; the full cure still runs.',
    cure: () => 'CURED. The glue has its full strength.',
  },
  late: (duration) => `It was due ${duration} ago.`,
  overbaked: (times) =>
    `That is ${times} times the hold: over-baked. Light colors may have yellowed and the paint may chip. Try one head before you go on.`,
  stillGood: (over) => `Powder stands ${over} over its hold. Take it out now all the same.`,
  wasOff: (duration, count, voice) =>
    `I was off for ${duration}. ${voice.count(count, { one: 'thing', other: 'things' })} fell due since:`,
  at: (name, time) => `${name}: ${time}`,
  still: (name) => `${name}: stands still, too cold`,
  over: (name, late) => `${name}: due ${late} ago`,
  mix: (guards, after, voice) =>
    `at most ${voice.count(guards, GUARDS)} in this mix, ${after === 0 ? 'none' : voice.number(after)} after it`,
  mixNext: (after, voice) =>
    after === 0 ? 'All guards should be set by now.' : `About ${voice.count(after, GUARDS)} are still to be set.`,
};

export const EN_DIGEST: DigestWords = {
  heading: (day) => `${day}.`,
  hours: (hours, planned) => `Bench hours today: ${hours}, of which ${planned} planned.`,
  noHours: 'No bench hours today.',
  fits: 'Every promise fits.',
  doesNotFit: 'Not every promise fits.',
  melt: (metals) => `To melt: ${metals}.`,
  meltOf: (metal, grams) => `${grams} of ${metal}`,
  done: (steps) => `Done yesterday: ${steps}.`,
  leaving: (orders, by) => `MUST LEAVE TODAY, handed in by ${by}: ${orders}.`,
  unbegun: (orders) => `Begin once paid: ${orders}.`,
  unbegunRow: (order, money) => `${order} (${money})`,
  quiet: 'No work is waiting.',
  work: "TODAY'S WORK",
  ready: 'CAN BE STARTED',
  due: (orders) => `Promised soon: ${orders}.`,
  dueRow: (order, promised) => `${order} ${promised}`,
  moreWork: (count, duration) => `and ${count} more, ${duration} together (Week)`,
  toPost: (orders) => `Packed, waiting for the post: ${orders}.`,
  danger: 'IN DANGER',
  late: 'LATE',
  dangerRow: (order, buyer, { promised, ships, at }) =>
    `${order}, ${buyer}: promised ${promised}, ${at === 'hold' ? 'ON HOLD' : ships === null ? 'no day in sight' : `${at === 'post' ? 'packed, next post' : 'heading for'} ${ships}`}`,
  timers: (running) => `Running: ${running}.`,
  short: (items) => `SHORT OF: ${items}.`,
  shortRow: (item, needed, there) => `${item} (${needed} needed, ${there} here)`,
  deliveries: (items) => `Due to arrive: ${items}.`,
  deliveryRow: (item, amount, day) => `${amount} ${item} ${day}`,
  overdueRow: (item, amount, day) => `${amount} ${item}, OVERDUE since ${day}`,
  questions: 'WAITING FOR YOUR ANSWER',
  undelivered: (count, voice) =>
    `Not delivered this week: ${voice.count(count, { one: 'message', other: 'messages' })}. Type “health” to see how the program does.`,
  unpaid: 'MONEY OPEN',
  cancels: (orders) => `Want to cancel: ${orders}.`,
  unaddressed: (orders) => `No address yet: ${orders}.`,
};
