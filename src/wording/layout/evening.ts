import type { Change } from '../../domain/desk/change.ts';
import { cautionText } from '../cautions.ts';
import { capital, lines, paragraphs } from '../clip.ts';
import type { EveningWords } from '../eveningWords.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { work } from './bench.ts';
import { buyerSaid } from './buyerSaid.ts';
import { large, specLines } from './spec.ts';

/** The end of the bench hours: what must not be forgotten, what still runs, what could cure overnight. */
export function closeDown({ facts }: SayingOf<'close-down'>, voice: Voice, { evening: words }: Phrases): string {
  const rows = (heading: string, all: readonly Parameters<typeof work>[0][]): string | null =>
    all.length === 0 ? null : lines(heading, ...all.map((one) => `- ${work(one, voice)}`));
  return paragraphs(
    words.closing,
    facts.baking === null ? null : lines(words.ovenOn, `- ${work(facts.baking, voice)}`),
    rows(words.stillRuns, facts.running),
    rows(words.overnight, facts.overnight),
    lines(words.closingCare, ...facts.cautions.map((caution) => `- ${cautionText(caution, voice.language)}`)),
  );
}

/** One lot: the head big, how many are good, and when each step was. */
export function lotCard({ lot, said }: SayingOf<'lot-card'>, voice: Voice, { evening: words, bench }: Phrases): string {
  const heads = (count: number): string => voice.count(count, voice.terms.heads);
  const at = (instant: number | null): string | null => (instant === null ? null : voice.clock(instant));
  const had = lot.steps.filter(({ startedAt, doneAt }) => startedAt !== null || doneAt !== null);
  return paragraphs(
    words.lot(lot.id, lot.order),
    lines(large(heads(lot.good > 0 ? lot.good : lot.heads)), ...specLines(voice, bench, lot.spec)),
    buyerSaid(said, SAID_MOST, voice, words),
    lot.over > 0 ? bench.shelved(heads(lot.over)) : null,
    lot.shelf > 0 ? words.offShelf(heads(lot.shelf)) : null,
    had.length === 0
      ? words.nothingYet
      : lines(
          words.history,
          ...had.map(
            ({ step, startedAt, doneAt, through }) =>
              `- ${words.step(capital(voice.terms.steps[step]), at(startedAt), at(doneAt))}${through > 0 ? `, ${heads(through)}` : ''}`,
          ),
          words.counted(voice.number(lot.good), voice.number(lot.scrap)),
        ),
  );
}

/** Room for the buyer's own words on a lot's card. */
const SAID_MOST = 400;

/** The bench hours of the days to come, one a line. */
export function hours({ days }: SayingOf<'hours'>, voice: Voice, { evening: words }: Phrases): string {
  const row = ({ day, spans }: (typeof days)[number]): string => {
    const open = spans.map(({ from, to }) => `${voice.hour(from)} – ${voice.hour(to)}`);
    return `- ${voice.shortDay(day)}: ${open.length === 0 ? words.closed : open.join(', ')}`;
  };
  return paragraphs(lines(words.hours, ...days.map(row)), words.hoursHow);
}

/** What a change would do, order by order. */
export function changeEffect(
  { change, effects }: SayingOf<'change-effect'>,
  voice: Voice,
  { evening: words }: Phrases,
): string {
  const day = (said: string | null): string | null => said && voice.shortDay(said);
  const rows = effects.map(({ order, promised, before, after }) => {
    const late = after !== null && after > promised ? ` ${words.late(voice.shortDay(promised))}` : '';
    return `- ${words.effect(order, day(before), day(after))}${late}`;
  });
  return paragraphs(
    changeText(change, voice, words),
    rows.length === 0 ? words.noEffect : lines(words.effects, ...rows),
  );
}

export const changed = ({ change }: SayingOf<'changed'>, voice: Voice, { evening: words }: Phrases): string =>
  changeText(change, voice, words);

/** Minutes and scrap as learned, each beside the shop file's; the file's alone while there is not enough. */
export function minutes(
  { rows, scrap, evenings }: SayingOf<'minutes'>,
  voice: Voice,
  { evening: words }: Phrases,
): string {
  const { steps, casting } = voice.shop;
  const tenth = (value: number): string => voice.number(Math.round(value * 100) / 100);
  const both = ({ setup, each }: { setup: number; each: number }, factor: number): string =>
    `${tenth(setup * factor)} + ${tenth(each * factor)}`;
  const percent = (share: number): string => voice.percent(share, 1);
  const learnt = scrap.share === casting.scrapShare ? null : percent(scrap.share);
  return lines(
    words.minutes,
    ...rows.map(
      ({ step, times, factor }) =>
        `- ${words.minutesRow(voice.terms.steps[step], both(steps[step], 1), factor === 1 ? null : both(steps[step], factor), Math.round(times), voice)}`,
    ),
    words.scrap(percent(casting.scrapShare), learnt, voice.number(scrap.heads), voice.number(scrap.bad)),
    words.missed(
      percent(evenings.share),
      voice.number(Math.round(evenings.missed)),
      voice.number(Math.round(evenings.all)),
    ),
  );
}

/** Every change has words of its own. */
function changeText(change: Change, voice: Voice, { would }: EveningWords): string {
  const write = would[change.do] as (facts: Change, voice: Voice) => string;
  return write(change, voice);
}
