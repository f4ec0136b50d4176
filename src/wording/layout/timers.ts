import type { Coming } from '../../domain/desk/coming.ts';
import type { TimerFacts } from '../../domain/desk/facts.ts';
import { capital, lines, paragraphs } from '../clip.ts';
import type { EveningWords } from '../eveningWords.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { threatOf } from './danger.ts';
import { lotLines } from './order.ts';
import { lotName } from './spec.ts';

/** What is due, which lots, and how late; an oven says what being late does to the paint. */
export const timerDue = ({ facts }: SayingOf<'timer-due'>, voice: Voice, phrases: Phrases): string =>
  dueBlock(facts, voice, phrases);

/** All that fell due while the program was off, in one message. */
export const timersDue = ({ timers, wasOff }: SayingOf<'timers-due'>, voice: Voice, phrases: Phrases): string =>
  paragraphs(
    phrases.timer.wasOff(voice.duration(wasOff), timers.length, voice),
    ...timers.map((facts) => dueBlock(facts, voice, phrases)),
  );

/** What runs at the bench, then what falls due beside it, each by its own name. */
export function timers({ timers, coming }: SayingOf<'timers'>, voice: Voice, phrases: Phrases): string {
  const { timers: heading, noTimers } = phrases.bench;
  const rows = timers.map((facts) => `- ${timerLine(facts, voice, phrases)}`);
  const due = coming.slice(0, COMING_MOST).map((one) => `- ${comingLine(one, voice, phrases.evening)}`);
  const more = coming.length - due.length;
  return paragraphs(
    rows.length === 0 ? noTimers : lines(heading, ...rows),
    due.length === 0 ? null : lines(phrases.evening.coming, ...due, more > 0 ? phrases.evening.more(more) : null),
  );
}

const COMING_MOST = 15;

function comingLine(one: Coming, voice: Voice, words: EveningWords): string {
  if (one.what === 'danger') {
    return words.comesDanger(one.danger.order, threatOf(one.danger, voice.shortDay));
  }
  return (words.comes[one.what] as (facts: Coming, voice: Voice) => string)(one, voice);
}

/** "Cure, K-1001-1, 24 × 3/8 oz football head: Thu 7:02 PM". */
export function timerLine(facts: TimerFacts, voice: Voice, { timer: words }: Phrases): string {
  const { timer, lots, cancelled, lateMinutes, glue } = facts;
  const name = [
    capital(voice.terms.timers[timer.kind]),
    ...lots.map((lot) => `${lot.id}, ${lotName(voice, lot)}`),
    ...cancelled.map(voice.terms.cancelled),
  ].join('; ');
  if (timer.course?.still === true) return words.still(name);
  if (lateMinutes > 0) return words.over(name, voice.duration(lateMinutes));
  const mix = glue === null ? [] : [words.mix(glue.guards, glue.after, voice)];
  return [words.at(name, voice.clock(timer.dueAt)), ...mix].join('; ');
}

/** The same by its lots' numbers alone, for a line with others. */
export function shortTimer(facts: TimerFacts, voice: Voice, { timer: words }: Phrases): string {
  const { timer, lots, cancelled, lateMinutes } = facts;
  const named = [...lots.map(({ id }) => id), ...cancelled.map(voice.terms.cancelled)];
  const name = [voice.terms.timers[timer.kind], ...named].join(' ');
  if (timer.course?.still === true) return words.still(name);
  return lateMinutes > 0 ? words.over(name, voice.duration(lateMinutes)) : words.at(name, voice.clock(timer.dueAt));
}

function dueBlock(
  { timer, lots, cancelled, lateMinutes, overMinutes, glue }: TimerFacts,
  voice: Voice,
  { timer: words }: Phrases,
): string {
  return lines(
    words.due[timer.kind](voice),
    lateMinutes < 1 ? null : words.late(voice.duration(lateMinutes)),
    glue === null ? null : words.mixNext(glue.after, voice),
    timer.kind === 'bake' && overMinutes > 0 ? overbake(overMinutes, voice, words) : null,
    lotLines(lots, voice),
    ...cancelled.map(voice.terms.cancelled),
  );
}

/** Powder stands some time over its hold; past that the paint suffers. */
function overbake(late: number, voice: Voice, words: Phrases['timer']): string {
  const { holdMinutes, overbake: most } = voice.shop.oven;
  const share = (holdMinutes + late) / holdMinutes;
  return share <= most
    ? words.stillGood(voice.duration(late))
    : words.overbaked(voice.number(Math.round(share * 10) / 10));
}
