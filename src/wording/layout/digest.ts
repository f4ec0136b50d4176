import type { StockFacts } from '../../domain/desk/facts.ts';
import type { Digest } from '../../domain/desk/facts.ts';
import { capital, lines, paragraphs } from '../clip.ts';
import { amountOf, itemName, valueName } from '../names.ts';
import { workName } from '../work.ts';
import type { Voice } from '../voice.ts';
import type { DigestWords, Phrases, SayingOf } from '../words.ts';
import { work as readyWork } from './bench.ts';
import { unpaidRow } from './pay.ts';
import { timerLine } from './timers.ts';

/** The morning in short: a section only where there is something to say. */
export const digest = ({ digest: facts }: SayingOf<'digest'>, voice: Voice, phrases: Phrases): string =>
  paragraphs(
    opening(facts, voice, phrases.digest),
    ...promises(facts, voice, phrases.digest),
    ...atTheBench(facts, voice, phrases),
    ...onTheShelf(facts, voice, phrases.digest),
    ...waiting(facts, voice, phrases),
  );

type Section = string | null;

/** What was promised for the next days, what is in danger first. */
function promises({ danger, due, toPost, leaving }: Digest, voice: Voice, words: DigestWords): readonly Section[] {
  const short = voice.shortDay;
  const kept = due.filter(({ order }) => danger.every((one) => one.order !== order));
  const dangerRows = danger.map(({ order, promised, ships }) => words.dangerRow(order, short(promised), short(ships)));
  const dueRows = kept.map(({ order, promised, ships }) => words.dueRow(order, short(promised), ships && short(ships)));
  const packed = toPost.length === 0 ? null : words.toPost(voice.list(toPost));
  const by = leaving.by === null ? null : voice.clock(leaving.by);
  const today = leaving.orders.length === 0 ? null : words.leaving(voice.list(leaving.orders), by);
  return [listed(words.danger, dangerRows), today, packed, listed(words.due, dueRows)];
}

/** Today's work as planned, else what could be started, and what runs. */
function atTheBench({ work, ready, timers, melt, done }: Digest, voice: Voice, phrases: Phrases): readonly Section[] {
  const { digest: words } = phrases;
  const planned = work.map((one, at) => `${at + 1}. ${workRow(one, voice)}`);
  const could = ready.map((one) => readyWork(one, voice));
  const running = timers.map((one) => timerLine(one, voice, phrases));
  const metals = melt.map(({ metal, grams }) => words.meltOf(valueName(voice, 'metal', metal), voice.grams(grams)));
  const had = done.map(({ step, heads }) => `${voice.terms.steps[step]} ${voice.number(heads)}`);
  return [
    planned.length > 0
      ? lines(words.work, ...planned, melt.length === 0 ? null : words.melt(voice.list(metals)))
      : listed(words.ready, could),
    listed(words.timers, running),
    done.length === 0 ? null : words.done(voice.list(had)),
  ];
}

function onTheShelf({ short, deliveries }: Digest, voice: Voice, words: DigestWords): readonly Section[] {
  const shortRows = short.map((row) => shortRow(row, voice, words));
  const arriving = deliveries.map(({ item, day, count }) =>
    words.deliveryRow(itemName(voice, item), amountOf(item, count, voice), voice.shortDay(day)),
  );
  return [listed(words.short, shortRows), listed(words.deliveries, arriving)];
}

/** What waits for a word from somebody. */
const waiting = (
  { questions, unpaid, cancels, unaddressed, undelivered }: Digest,
  voice: Voice,
  { digest: words, business }: Phrases,
): readonly Section[] => [
  listed(
    words.questions,
    questions.map(({ said }) => voice.terms.quote(said)),
  ),
  listed(
    words.unpaid,
    unpaid.map((row) => unpaidRow(row, voice, business)),
  ),
  cancels.length === 0 ? null : words.cancels(voice.list(cancels)),
  unaddressed.length === 0 ? null : words.unaddressed(voice.list(unaddressed)),
  undelivered === 0 ? null : words.undelivered(undelivered, voice),
];

function opening({ day, hours, planned, work, ready, danger }: Digest, voice: Voice, words: DigestWords): string {
  const fits = planned === 0 ? '' : ` ${danger.length === 0 ? words.fits : words.doesNotFit}`;
  const minutes = hours === 0 ? words.noHours : words.hours(voice.duration(hours), voice.duration(planned)) + fits;
  return lines(words.heading(capital(voice.day(day))), minutes, work.length + ready.length === 0 ? words.quiet : null);
}

const workRow = (one: Digest['work'][number], voice: Voice): string =>
  `${workName(voice, one)}: ${voice.count(one.heads, voice.terms.heads)}, ${voice.duration(one.minutes)}`;

const shortRow = ({ item, onHand, reserved }: StockFacts, voice: Voice, words: DigestWords): string =>
  words.shortRow(itemName(voice, item), amountOf(item, reserved, voice), amountOf(item, onHand, voice));

const listed = (heading: string, rows: readonly string[]): string | null =>
  rows.length === 0 ? null : lines(heading, ...rows.map((row) => `- ${row}`));
