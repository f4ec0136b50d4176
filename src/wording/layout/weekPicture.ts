import type { WeekPicture } from '../../app/letter.ts';
import { addDays, instantOf, localClock, type Day, type Instant } from '../../domain/craft/time.ts';
import type { Stretch } from '../../domain/desk/hours.ts';
import type { Week, WeekDay, WeekWork } from '../../domain/desk/week.ts';
import { STEPS } from '../../domain/shop/words.ts';
import { capital } from '../clip.ts';
import { valueName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { WeekWords } from '../weekWords.ts';

/** The week as it is drawn: places on the wall clock, in minutes of the day, and labels already in words. */
export function weekPicture({ now, days }: Week, voice: Voice, words: WeekWords): WeekPicture {
  const [today] = days;
  const shown = new Set(days.flatMap(({ work }) => work.map(({ step }) => step)));
  return {
    kind: 'week',
    title: words.heading(voice.shortDay(today?.day ?? ''), voice.shortDay(days.at(-1)?.day ?? '')),
    days: days.map((day) => dayOf(day, voice, words)),
    now: { at: minuteOf(now, today?.day ?? '', voice), label: words.now },
    hours: Array.from({ length: 24 }, (_, hour) => hourLabel(hour, voice)),
    legend: STEPS.filter((step) => shown.has(step)).map((step) => ({ step, label: capital(voice.terms.steps[step]) })),
    rows: words.rows,
    cure: days.some(({ cures }) => cures.length > 0) ? words.cure : null,
    late: days.some(({ promised }) => promised.some(({ mark }) => mark !== null)) ? words.lateMark : null,
  };
}

function dayOf(day: WeekDay, voice: Voice, words: WeekWords): WeekPicture['days'][number] {
  const place = (stretch: Stretch) => onWall(stretch, day.day, voice);
  const [weekday = '', date = ''] = [voice.weekday(day.day), String(Number(day.day.slice(8)))];
  return {
    weekday: capital(weekday),
    date,
    off: day.hours.length === 0 ? words.off : null,
    hours: day.hours.map(place),
    work: day.work.map((one) => ({ step: one.step, ...place(one), label: labelOf(one, voice, words) })),
    cures: day.cures.map((one) => ({
      ...place(one),
      begins: one.from > startOf(day.day, voice),
      ends: one.until === one.to,
    })),
    ships: [...day.ships],
    promised: day.promised.map(({ order, mark }) => ({ order, late: mark !== null })),
  };
}

/** What a block says, the most telling first: the step, its heads, then its weight or colour. */
function labelOf(one: WeekWork, voice: Voice, words: WeekWords): string[] {
  const step = (words.steps as Readonly<Record<string, string>>)[one.step] ?? one.step;
  const more = DETAIL[one.step]?.(one.family, voice);
  return [step, `×${voice.number(one.heads)}`, ...(more === undefined ? [] : [more])];
}

const DETAIL: Readonly<Record<string, (family: string, voice: Voice) => string | undefined>> = {
  pour: (family) => /-(\d+(?:\/\d+)?)-/.exec(family)?.[1],
  paint: (family, voice) => valueName(voice, 'paint', family),
};

/** A stretch of one day on the wall clock; one over the hour that a clock change repeats never ends before it begins. */
function onWall({ from, to }: Stretch, day: Day, voice: Voice): { from: number; to: number } {
  const begins = minuteOf(from, day, voice);
  return { from: begins, to: Math.max(begins, minuteOf(to, day, voice)) };
}

function minuteOf(at: Instant, day: Day, voice: Voice): number {
  if (at >= startOf(addDays(day, 1), voice)) return 24 * 60;
  const [hours = 0, minutes = 0] = localClock(at, voice.shop.zone).split(':').map(Number);
  return hours * 60 + minutes;
}

const startOf = (day: Day, { shop }: Voice): Instant => instantOf(day, '00:00', shop.zone);

/** A day on which no zone changes its clocks. */
const ORDINARY: Day = '2026-01-15';

/** A full hour in few letters. @example '6pm', '18' */
const hourLabel = (hour: number, voice: Voice): string =>
  voice
    .hour(instantOf(ORDINARY, `${String(hour).padStart(2, '0')}:00`, voice.shop.zone))
    .replace(':00', '')
    .replace(/\s*([ap])\.?\s?m\.?$/i, (_all, half: string) => `${half.toLowerCase()}m`);
