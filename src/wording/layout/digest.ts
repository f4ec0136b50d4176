import type { StockFacts } from '../../domain/desk/facts.ts';
import type { Digest } from '../../domain/desk/facts.ts';
import { capital, clipped, lines, paragraphs } from '../clip.ts';
import { amountOf, itemName, valueName } from '../names.ts';
import { workName } from '../work.ts';
import type { Voice } from '../voice.ts';
import type { DigestWords } from '../digestWords.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { work as readyWork } from './bench.ts';
import { inShort, threatOf } from './danger.ts';
import { unpaidRow } from './pay.ts';
import { shortTimer } from './timers.ts';

/** The morning in short, for the height of a phone: a section only where there is something to say, a few rows of each; the rest is behind buttons. */
export const digest = ({ digest: facts }: SayingOf<'digest'>, voice: Voice, phrases: Phrases): string =>
  paragraphs(
    opening(facts, voice, phrases.digest),
    inDanger(facts, voice, phrases),
    leaving(facts, voice, phrases.digest),
    atTheBench(facts, voice, phrases),
    around(facts, voice, phrases),
    waiting(facts, voice, phrases),
  );

/** Rows of a section, and characters of somebody's words. */
const MOST = { danger: 3, work: 7, timers: 4, named: 3, waiting: 3, said: 60 } as const;

/** What is late, then what is in danger; of the two together no more than fit. */
function inDanger({ danger }: Digest, voice: Voice, phrases: Phrases): string | null {
  const { digest: words } = phrases;
  const rows = (late: boolean): readonly string[] =>
    danger
      .filter((one) => one.late === late)
      .map((one) => {
        const row = words.dangerRow(one.order, one.buyer, threatOf(one, voice.shortDay));
        return [row, inShort(one, voice, phrases)].filter(Boolean).join('. ');
      });
  const late = rows(true);
  const room = Math.max(1, MOST.danger - late.length);
  return lines(
    listed(words.late, few(late, MOST.danger, phrases)),
    listed(words.danger, few(rows(false), room, phrases)),
  );
}

/** What has to leave today, what is packed, what was promised for the next days, what waits for its money. */
function leaving(facts: Digest, voice: Voice, words: DigestWords): string {
  const { danger, due, toPost, leaving: must, unbegun } = facts;
  const soon = due
    .filter(({ order }) => danger.every((one) => one.order !== order))
    .map(({ order, promised }) => words.dueRow(order, voice.weekday(promised)));
  const unpaid = unbegun.map(({ order, cents }) => words.unbegunRow(order, voice.money(cents)));
  return lines(
    must === null ? null : words.leaving(voice.list(must.orders), voice.clock(must.by)),
    toPost.length === 0 ? null : words.toPost(voice.list(toPost)),
    soon.length === 0 ? null : words.due(voice.list(soon)),
    unpaid.length === 0 ? null : words.unbegun(voice.list(unpaid)),
  );
}

/** Today's work as planned, else what could be started. */
function atTheBench({ work, ready, melt }: Digest, voice: Voice, phrases: Phrases): string | null {
  const { digest: words } = phrases;
  const planned = work.slice(0, MOST.work).map((one, at) => `${at + 1}. ${workRow(one, voice)}`);
  const later = work.slice(MOST.work);
  const minutes = later.reduce((sum, one) => sum + one.minutes, 0);
  const metals = melt.map(({ metal, grams }) => words.meltOf(valueName(voice, 'metal', metal), voice.grams(grams)));
  if (planned.length === 0) {
    const could = ready.map((one) => readyWork(one, voice));
    return listed(words.ready, few(could, MOST.work, phrases));
  }
  return lines(
    words.work,
    ...planned,
    later.length === 0 ? null : words.moreWork(later.length, voice.duration(minutes)),
    melt.length === 0 ? null : words.melt(voice.list(metals)),
  );
}

/** What runs, what is short and what comes, and what was done: a line each. */
function around({ timers, short, deliveries, done }: Digest, voice: Voice, phrases: Phrases): string {
  const { digest: words } = phrases;
  const running = timers.map((one) => shortTimer(one, voice, phrases));
  const missing = short.map((row) => shortRow(row, voice, words));
  const arriving = deliveries.map(({ item, named, overdue, count }) => {
    const what = [itemName(voice, item), amountOf(item, count, voice)] as const;
    return overdue > 0
      ? words.overdueRow(...what, voice.shortDay(named))
      : words.deliveryRow(...what, voice.weekday(named));
  });
  const had = done.map(({ step, heads }) => `${voice.terms.steps[step]} ${voice.number(heads)}`);
  const told = (rows: readonly string[], most: number): string => few(rows, most, phrases).join('; ');
  return lines(
    running.length === 0 ? null : words.timers(told(running, MOST.timers)),
    missing.length === 0 ? null : words.short(told(missing, MOST.named)),
    arriving.length === 0 ? null : words.deliveries(told(arriving, MOST.named)),
    done.length === 0 ? null : words.done(voice.list(had)),
  );
}

/** What waits for a word from somebody. */
function waiting(facts: Digest, voice: Voice, phrases: Phrases): string {
  const { questions, unpaid, cancels, unaddressed, undelivered } = facts;
  const { digest: words, business } = phrases;
  const asked = questions.map(({ said }) => voice.terms.quote(clipped(said, MOST.said)));
  const owed = unpaid.map((row) => unpaidRow(row, voice, business));
  return lines(
    listed(words.questions, few(asked, MOST.waiting, phrases)),
    listed(words.unpaid, few(owed, MOST.waiting, phrases)),
    cancels.length === 0 ? null : words.cancels(voice.list(cancels)),
    unaddressed.length === 0 ? null : words.unaddressed(voice.list(unaddressed)),
    undelivered === 0 ? null : words.undelivered(undelivered, voice),
  );
}

/** The first rows, and how many more there are. */
const few = (rows: readonly string[], most: number, { evening }: Phrases): readonly string[] =>
  rows.length <= most ? rows : [...rows.slice(0, most), evening.more(rows.length - most)];

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
