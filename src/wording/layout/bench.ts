import { currentStep, type Lot } from '../../domain/bench/lot.ts';
import { headsIn, sparesOut, type Ready, type Session } from '../../domain/bench/session.ts';
import { sharedOut } from '../../domain/desk/extras.ts';
import type { LotFacts, WorkFacts } from '../../domain/desk/facts.ts';
import { cautionText } from '../cautions.ts';
import { capital, clipped, lines, paragraphs } from '../clip.ts';
import type { EveningWords } from '../eveningWords.ts';
import { buyerSaid } from './buyerSaid.ts';
import { amountOf, itemName } from '../names.ts';
import { workName } from '../work.ts';
import type { Voice } from '../voice.ts';
import type { BenchWords, Phrases, SayingOf } from '../words.ts';
import { large, pinLine, specLines, specName } from './spec.ts';
import { timerLine } from './timers.ts';

/** What runs, what can be started, and the timers. */
export function bench({ ready, running, timers }: SayingOf<'bench'>, voice: Voice, phrases: Phrases): string {
  const { bench: words } = phrases;
  const nothing = ready.length === 0 && running.length === 0;
  return paragraphs(
    listed(
      words.running,
      running.map((session) => `${work(session, voice)}, ${words.sinceTime(voice.clock(session.startedAt))}`),
    ),
    listed(
      words.ready,
      ready.map((one) => [work(one, voice), ...caveats(one, voice, words)].join('. ')),
    ),
    nothing ? words.nothing : null,
    listed(
      words.timers,
      timers.map((one) => timerLine(one, voice, phrases)),
    ),
  );
}

/** One piece of work: the heads big, then how, then the cautions. */
export function session(
  { session, lots, facts }: SayingOf<'session'>,
  voice: Voice,
  { bench: words, evening }: Phrases,
): string {
  return paragraphs(
    sessionHeading(session, voice),
    clipped(paragraphs(...lotBlocks(session, lots, voice, words, evening), ...cancelledIn(session, voice)), LOTS_MOST),
    shortLines({ ...session, short: facts.short }, voice, words),
    clipped(how(facts, voice, words), HOW_MOST),
    scrapLine(session, voice, words),
    cautionLines(facts.cautions, voice, words),
  );
}

/** A start button that is out of date: why, and what can be started instead. */
export function startPassed({ offer, why, ready }: SayingOf<'start-passed'>, voice: Voice, phrases: Phrases): string {
  const { bench: words } = phrases;
  const step = offer === null ? '' : voice.terms.steps[offer.step];
  return paragraphs(
    capital(words.passed[why](step, offer?.lot ?? '')),
    listed(
      words.ready,
      ready.map((one) => work(one, voice)),
    ),
  );
}

export const ovenTaken = ({ session }: SayingOf<'oven-taken'>, voice: Voice, { bench: words }: Phrases): string =>
  paragraphs(words.ovenTaken, `${work(session, voice)}, ${words.sinceTime(voice.clock(session.startedAt))}`);

export const count = ({ session, lot, heads }: SayingOf<'count'>, voice: Voice, { bench: words }: Phrases): string =>
  paragraphs(
    sessionHeading(session, voice),
    specName(voice, lot.spec),
    words.howMany(lot.id, voice.count(heads, voice.terms.heads)),
  );

/** What the work came to, and what each lot comes to next. */
export function stepDone(say: SayingOf<'step-done'>, voice: Voice, { bench: words }: Phrases): string {
  const { session, lots, topUps, letGo, beyond } = say;
  const left = leftIn(session);
  const heads = (number: number): string => voice.count(number, voice.terms.heads);
  const rows = lots.map((lot) => {
    const next = currentStep(lot)?.step;
    const then = next === undefined ? words.finished : words.next(voice.terms.steps[next]);
    const over = session.step === 'pack' && lot.over > 0 ? [words.shelved(heads(lot.over))] : [];
    return [words.good(lot.id, heads(lot.good)), then, ...over].join(' ');
  });
  return paragraphs(
    capital(words.stepDone(voice.terms.steps[session.step])),
    scrapLine(session, voice, words),
    lines(...rows, ...cancelledIn(session, voice), left === 0 ? null : words.leftOut(heads(left))),
    lines(...letGo.map(({ lot, heads: count }) => words.letGo(lot, count, voice))),
    beyond.length === 0
      ? null
      : words.beyond(
          voice.list(beyond.map(({ item, count }) => `${amountOf(item, count, voice)} ${itemName(voice, item)}`)),
        ),
    lines(...topUps.map((lot) => words.topUp(lot.id, heads(lot.heads)))),
  );
}

export const makerWelcome = (
  { cautions }: SayingOf<'maker-welcome'>,
  voice: Voice,
  { bench: words }: Phrases,
): string => paragraphs(words.makerWelcome, cautionLines(cautions, voice, words), words.makerHow);

/** What was scrapped, and of shared work of which lot; null where nothing was. */
function scrapLine({ shares, scrap }: Session, voice: Voice, words: BenchWords): string | null {
  const counts = Object.entries(scrap).filter(([, count]) => count > 0);
  const all = counts.reduce((sum, [, count]) => sum + count, 0);
  const each = shares.length > 1 ? counts.map(([lot, count]) => `${lot}: ${voice.number(count)}`) : [];
  return all === 0 ? null : words.scrapped(all, each.join(', '), voice);
}

/** Work by its step, what it is shared by, and its heads: "Pour 1/4 oz ball head, lead: 26 heads". */
export const work = (one: Ready | Session, voice: Voice): string =>
  [`${workName(voice, one)}: ${voice.count(headsIn(one), voice.terms.heads)}`, ...cancelledIn(one, voice)].join(', ');

/** Lots of a load whose orders were cancelled since, by name. */
const cancelledIn = ({ shares }: Pick<Session, 'shares'>, voice: Voice): readonly string[] =>
  shares.flatMap(({ lot, cancelled }) => (cancelled ? [voice.terms.cancelled(lot)] : []));

/** What a piece of work has not enough of by the book, and the spare heads that it leaves out. */
const caveats = (
  { short, ...one }: (Ready | (Session & { later?: number })) & Readonly<{ short: WorkFacts['short'] }>,
  voice: Voice,
  words: BenchWords,
): readonly string[] => {
  const left = leftIn(one);
  return [
    ...(one.later === undefined ? [] : [words.later(voice.clock(one.later))]),
    ...short.map(({ item, heads, of }) =>
      capital(words.short(itemName(voice, item), voice.number(heads), voice.number(of))),
    ),
    ...(left === 0 ? [] : [words.left(voice.count(left, voice.terms.heads))]),
  ];
};

function shortLines(
  one: Session & Readonly<{ short: WorkFacts['short'] }>,
  voice: Voice,
  words: BenchWords,
): string | null {
  const rows = caveats(one, voice, words);
  return rows.length === 0 ? null : lines(...rows.map((row) => large(row)), words.countAnew);
}

const leftIn = ({ shares }: Pick<Session, 'shares'>): number => shares.reduce((sum, { left = 0 }) => sum + left, 0);

/** The step large; with the heads of all lots when there are several. */
const sessionHeading = (session: Session, voice: Voice): string =>
  large(
    session.shares.length === 1
      ? voice.terms.steps[session.step]
      : `${voice.terms.steps[session.step]}: ${voice.count(headsIn(session), voice.terms.heads)}`,
  );

/** Up to here each lot gets all its lines. */
const MOST_BLOCKS = 6;
/** Room for lots and for how, so that the cautions after them are never cut off. */
const LOTS_MOST = 2000;
const HOW_MOST = 800;

/** Room for the buyer's words beside the head; all of them stand on the lot's own card. */
const SAID_MOST = 140;

function lotBlocks(
  session: Session,
  lots: readonly LotFacts[],
  voice: Voice,
  words: BenchWords,
  evening: EveningWords,
): readonly string[] {
  if (lots.length > MOST_BLOCKS)
    return lots.map(({ lot, heads }) =>
      lines(`${lot.id}: ${heads} × ${specName(voice, lot.spec) ?? ''}`, leftOut(session, lot, heads, voice, words)),
    );
  return lots.map(({ lot, heads, said }) =>
    lines(
      `${large(voice.count(heads, voice.terms.heads))} (${lot.id})`,
      leftOut(session, lot, heads, voice, words),
      ...specLines(voice, words, lot.spec),
      pinLine(voice, words, session.step, lot.spec),
      buyerSaid(said, SAID_MOST, voice, evening),
    ),
  );
}

/** How many go into the parcel and how many are over, or how many are left off the rack; null where all go. */
function leftOut({ step, scrap }: Session, lot: Lot, heads: number, voice: Voice, words: BenchWords): string | null {
  const out = sparesOut(lot, step, heads, scrap[lot.id] ?? 0);
  if (out > 0) return words.sparesOut(out, voice);
  const { parcel, over } = sharedOut(heads - (scrap[lot.id] ?? 0), lot.heads);
  return step === 'pack' && over > 0 ? words.packs(voice.number(parcel), voice.number(over)) : null;
}

/** How the work is done: only what this step has to say. */
function how({ melt, counts, bake, glue, cureHours }: WorkFacts, voice: Voice, words: BenchWords): string {
  return lines(
    melt === null ? null : words.melt(voice.grams(melt)),
    ...countLines(counts, voice, words),
    bake &&
      words.bake(
        voice.temperature(voice.shop.oven.celsius),
        voice.duration(Math.ceil(bake.comeUp)),
        voice.duration(bake.hold),
      ),
    bake?.overbaked ? words.lightest(voice.number(Math.round(bake.overbaked * 10) / 10)) : null,
    glue && words.glue(glue.mixes, glue.guardsPerMix, voice.duration(Math.floor(glue.potLife)), voice),
    cureHours === null ? null : words.cure(voice.duration(Math.ceil(cureHours) * 60)),
  );
}

/** How long each lot is heated before the dip; lots with one count share a line. */
function countLines(counts: WorkFacts['counts'], voice: Voice, words: BenchWords): readonly string[] {
  const spans = [...new Map(counts.map((one) => [spanOf(one), one])).values()];
  return spans.map((span) => {
    const lots = spans.length === 1 ? [] : counts.filter((one) => spanOf(one) === spanOf(span));
    return words.countTo(voice.list(lots.map(({ lot }) => lot)), Math.round(span.from), Math.round(span.to));
  });
}

const spanOf = ({ from, to }: WorkFacts['counts'][number]): string => `${Math.round(from)} ${Math.round(to)}`;

function cautionLines(cautions: WorkFacts['cautions'], voice: Voice, words: BenchWords): string | null {
  if (cautions.length === 0) return null;
  return lines(
    words.care,
    ...cautions.map((caution) => `- ${cautionText(caution, voice.language)}`),
    cautions.includes('codes-first') ? null : words.localCodes,
  );
}

const listed = (heading: string, rows: readonly string[]): string | null =>
  rows.length === 0 ? null : lines(heading, ...rows.map((row) => `- ${row}`));
