import type { WeekDay, WeekWork } from '../../domain/desk/week.ts';
import { STEPS } from '../../domain/shop/words.ts';
import { capital, CAPTION_MOST, clipped, lengthOf, lines } from '../clip.ts';
import type { Voice } from '../voice.ts';
import { workName } from '../work.ts';
import type { WeekWords } from '../weekWords.ts';
import type { Phrases, SayingOf } from '../words.ts';

/** The week in words that fit under its picture: where all cannot be said, later days are told more shortly, then earlier ones too. */
export function week({ week: { days, why } }: SayingOf<'week'>, voice: Voice, { week: words, draft }: Phrases): string {
  const short = (at: number): string => voice.shortDay(days.at(at)?.day ?? '');
  const heading = words.heading(short(0), short(-1));
  const reasons = why.map((one) =>
    (draft.hindrances[one.code] as (why: typeof one, voice: Voice) => string)(one, voice),
  );
  const told = (plain: number, from: number): string =>
    lines(
      heading,
      ...(reasons.length === 0 ? [] : [words.why, ...reasons]),
      ...days.map((day, at) => (at < from ? WAYS[plain] : WAYS[plain + 1])?.(day, voice, words)),
    );
  const tries = [told(0, days.length)];
  for (let plain = 0; plain + 1 < WAYS.length; plain++)
    for (let from = days.length - 1; from >= 0; from--) tries.push(told(plain, from));
  return clipped(tries.find((text) => lengthOf(text) <= CAPTION_MOST) ?? tries.at(-1) ?? heading, CAPTION_MOST);
}

type Way = (day: WeekDay, voice: Voice, words: WeekWords) => string;

/** How a day is told, from all of it to the least. */
const WAYS: readonly Way[] = [
  (day, voice, words) =>
    dayLine(day, voice, words, [...day.work.map(fullWork(voice, words)), ...marks(day, voice, words, 6)]),
  (day, voice, words) =>
    dayLine(day, voice, words, [...day.work.map(shortWork(voice, words)), ...marks(day, voice, words, 4)]),
  (day, voice, words) => dayLine(day, voice, words, [...summed(day, voice, words), ...marks(day, voice, words, 3)]),
  (day, voice, words) =>
    dayLine(day, voice, words, [...counted(day, voice, words), ...orderMarks(day, voice, words, 1)]),
];

function dayLine({ day, hours }: WeekDay, voice: Voice, words: WeekWords, parts: readonly string[]): string {
  const nothing = hours.length === 0 ? words.off : words.free;
  return `${voice.shortDay(day)}: ${parts.length === 0 ? nothing : parts.join('; ')}`;
}

/** "6:30 PM Pour 1/4 oz ball head, lead, 30 heads". */
const fullWork =
  (voice: Voice, words: WeekWords) =>
  (one: WeekWork): string =>
    at(one, voice, words, `${workName(voice, one)}, ${voice.count(one.heads, voice.terms.heads)}`);

const shortWork =
  (voice: Voice, words: WeekWords) =>
  (one: WeekWork): string =>
    at(one, voice, words, `${stepName(one, words)} ${voice.number(one.heads)}`);

/** Work with its hour; what goes on from the day before has only its end. */
const at = ({ from, to, begun }: WeekWork, voice: Voice, words: WeekWords, work: string): string =>
  begun < from ? words.goesOn(work, voice.hour(to)) : `${voice.hour(from)} ${work}`;

/** The heads of each step in all, and when the first begins. */
function summed({ work }: WeekDay, voice: Voice, words: WeekWords): readonly string[] {
  const [first] = work;
  if (first === undefined) return [];
  const heads = STEPS.flatMap((step) => {
    const own = work.filter((one) => one.step === step);
    return own[0] === undefined
      ? []
      : [`${stepName(own[0], words)} ${voice.number(own.reduce((sum, one) => sum + one.heads, 0))}`];
  });
  return [words.from(voice.hour(first.from), heads.join(', '))];
}

const counted = ({ work: [first, ...rest] }: WeekDay, voice: Voice, words: WeekWords): readonly string[] =>
  first === undefined ? [] : [words.from(voice.hour(first.from), voice.count(rest.length + 1, words.jobs))];

const marks = (day: WeekDay, voice: Voice, words: WeekWords, most: number): readonly string[] => [
  ...day.cures.map(({ heads, until, to }) => {
    const many = voice.count(heads, voice.terms.heads);
    return until > to ? words.cures(many, voice.clock(until)) : words.cured(many, voice.hour(until));
  }),
  ...orderMarks(day, voice, words, most),
];

function orderMarks({ ships, promised }: WeekDay, voice: Voice, words: WeekWords, most: number): readonly string[] {
  const named = promised.map(({ order, mark }) => (mark === null ? order : words[mark](order)));
  return [
    ...(ships.length === 0 ? [] : [words.ships(few(ships, voice, words, most))]),
    ...(promised.length === 0 ? [] : [words.promised(few(named, voice, words, most))]),
  ];
}

/** So many by name, and how many more there are. */
const few = (orders: readonly string[], voice: Voice, words: WeekWords, most: number): string =>
  voice.list(orders.length <= most ? orders : [...orders.slice(0, most), words.more(orders.length - most)]);

const stepName = ({ step }: WeekWork, words: WeekWords): string =>
  (words.steps as Readonly<Record<string, string>>)[step] ?? capital(step);
