import type { Hindrance } from '../../domain/plan/plan.ts';
import type { Finding } from '../../domain/order/finding.ts';
import { dividedCountry, partAsked } from '../../domain/order/divided.ts';
import type { Ask, Draft, DraftLine } from '../../domain/order/draft.ts';
import { isSoonest, openDay } from '../../domain/order/needBy.ts';
import { capital, clipped, lines, paragraphs } from '../clip.ts';
import { partName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { DraftWords } from '../draftWords.ts';
import type { FindingWords, Phrases, SayingOf } from '../words.ts';
import { fittingNames, specName } from './spec.ts';

/** One question: what is known, what was not understood, what is asked, and how much is still to come. */
export function question(
  { draft, ask, usual, progress }: SayingOf<'question'>,
  voice: Voice,
  { draft: words }: Phrases,
): string {
  const fresh = isFresh(draft);
  const fittings = usual && fittingNames(voice, usual, (slot) => draft.lines[draft.current]?.spec[slot] === undefined);
  return paragraphs(
    known(draft, voice, words),
    unclear(draft, voice, words.unclear),
    soonest(draft, words),
    lines(
      progress.lines > 1 ? words.lineOf(progress.line, progress.lines) : null,
      asked(draft, ask, voice, words),
      fittings && fittings.length > 0 ? words.usualIs(voice.list(fittings)) : null,
      fresh ? words.tip(voice) : ask === 'usual' ? null : words.tapOrType,
    ),
    draft.changing === null ? left(progress.left, voice, words) : nowStanding(draft, voice, words),
  );
}

/** The question; after a country alone, which part of it. */
function asked(draft: Draft, ask: Ask, voice: Voice, words: DraftWords): string {
  const country = ask === 'shipTo' ? partAsked(draft) : undefined;
  return country === undefined ? words.asks[ask](voice) : words.whichPart(voice.place(country));
}

/** What cannot be as it stands, why, and the ways out that the buttons hold. */
export function stuck(say: SayingOf<'stuck'>, voice: Voice, { draft: words, findings }: Phrases): string {
  const { draft } = say;
  const ways = say.findings.some((finding) => finding.ways.length > 0);
  return paragraphs(
    known(draft, voice, words),
    opening(say.findings, words),
    lines(...hindranceLines(say.why, voice, words)),
    findingLines(say.findings, draft.lines.length, voice, { draft: words, findings }),
    unclear(draft, voice, words.unclear),
    ways ? words.waysBelow : words.noWays,
  );
}

/** Why no plan can be made, each reason once. */
function hindranceLines(why: readonly Hindrance[], voice: Voice, { hindrances }: DraftWords): readonly string[] {
  const said = why.map((one) => (hindrances[one.code] as (why: Hindrance, voice: Voice) => string)(one, voice));
  return [...new Set(said)];
}

function opening(findings: readonly Finding[], words: DraftWords): string {
  if (findings.length === 0) return words.noDay;
  return findings.every(({ kind }) => kind === 'ask') ? words.askFirst : words.stuck;
}

/** A hint, then an example, then a person; after that always with the number of tries, so that no text comes three times. */
export function notUnderstood(
  { misses, hint: about }: SayingOf<'not-understood'>,
  voice: Voice,
  { draft }: Phrases,
): string {
  const hint = draft.hints[about](voice);
  if (misses <= 1) return draft.missed.hint(hint);
  if (misses === 2) return draft.missed.example(hint);
  return misses === 3 ? draft.missed.person : draft.missed.again(misses, hint);
}

export const changeWhat = ({ draft }: SayingOf<'change-what'>, voice: Voice, { draft: words }: Phrases): string =>
  paragraphs(
    draft.lines.length > 1 ? words.lineOf(draft.current + 1, draft.lines.length) : null,
    known(draft, voice, words),
    words.changeWhat,
  );

export const dropSure = ({ draft, again }: SayingOf<'drop-sure'>, voice: Voice, { draft: words }: Phrases): string =>
  paragraphs(known(draft, voice, words), again === null ? words.dropSure : words.dropFor(again));

export const goOn = ({ draft, since }: SayingOf<'continue'>, voice: Voice, { draft: words }: Phrases): string =>
  paragraphs(words.welcomeBack(voice.time(since)), known(draft, voice, words), words.goOn);

/** Findings one a line, with the number of the order's line when there are several. */
export const findingLines = (
  found: readonly Finding[],
  count: number,
  voice: Voice,
  { draft, findings }: Readonly<{ draft: DraftWords; findings: FindingWords }>,
): string =>
  lines(
    ...[...byText(found, voice, findings)].map(([text, of]) =>
      of.length > 0 && of.length < count ? `${draft.line(of.map(voice.number), voice)}: ${text}` : text,
    ),
    found.some(({ why }) => why.code.startsWith('law-')) ? draft.localRules : null,
  );

/** What is found, each sentence once, with the lines that it is about; what is about no slot is about the whole order. */
function byText(found: readonly Finding[], voice: Voice, findings: FindingWords): Map<string, readonly number[]> {
  const texts = new Map<string, readonly number[]>();
  for (const { why, line } of found) {
    const write = findings[why.code] as (facts: Finding['why'], voice: Voice) => string;
    const text = write(why, voice);
    texts.set(text, [...(texts.get(text) ?? []), ...(why.slots.length > 0 ? [line + 1] : [])]);
  }
  return texts;
}

/** Room for what is known and for what is not understood, so that the question after it always stands there. */
const KNOWN_MOST = 2200;
const UNCLEAR_MOST = 400;

/** What was not understood, in the buyer's own words; a day, and which part of a country, are asked about by questions of their own. */
export function unclear({ unclear }: Draft, voice: Voice, sentence: (said: string) => string): string | null {
  const open = unclear.filter(({ slot, said }) => slot !== 'needBy' && !(slot === 'shipTo' && dividedCountry(said)));
  return open.length === 0
    ? null
    : sentence(clipped(voice.list(open.map(({ said }) => voice.terms.quote(said))), UNCLEAR_MOST));
}

const soonest = ({ unclear }: Draft, words: DraftWords): string | null =>
  unclear.some(({ slot, said }) => slot === 'needBy' && isSoonest(said)) ? words.soonest : null;

/** What is known so far in a line; one a line of the order when there are several. Null when nothing is. */
export function known(draft: Draft, voice: Voice, words: DraftWords): string | null {
  const rows = draft.lines.map((line) => lineKnown(line, voice, words));
  const rest = [
    ...wantedBy(draft, voice).map(words.by),
    ...(draft.shipTo === null ? [] : [words.to(voice.place(draft.shipTo))]),
  ].join(', ');
  const [only] = rows;
  if (rows.length === 1) {
    const all = [only ?? '', rest].filter((part) => part !== '').join(', ');
    return all === '' ? null : `${words.soFar} ${all}`;
  }
  return lines(
    words.soFar,
    clipped(lines(...rows.map((row, at) => `${at + 1}. ${row ?? words.nothingYet}`)), KNOWN_MOST),
    rest === '' ? null : capital(rest),
  );
}

/** The day, or what was said of it until it is known. */
function wantedBy(draft: Draft, voice: Voice): readonly string[] {
  if (draft.needBy !== null) return [voice.shortDay(draft.needBy)];
  const said = openDay(draft);
  return said === undefined ? [] : [voice.terms.quote(said)];
}

function lineKnown({ spec, quantity, wantsGuard, photos }: DraftLine, voice: Voice, words: DraftWords): string | null {
  const name = specName(voice, spec);
  const count =
    quantity === null ? null : name === null ? voice.count(quantity, voice.terms.heads) : voice.number(quantity);
  const head = [count, name].filter((part) => part !== null).join(' × ');
  const parts = [
    ...(head === '' ? [] : [head]),
    ...(wantsGuard && spec.guard === undefined ? [words.wantsGuard] : []),
    ...(photos.length === 0 ? [] : [words.photos(photos.length, voice)]),
  ];
  return parts.length === 0 ? null : parts.join(', ');
}

function nowStanding(draft: Draft, voice: Voice, words: DraftWords): string | null {
  const { changing, shipTo, needBy } = draft;
  const line = draft.lines[draft.current];
  if (changing === null || changing === 'usual' || line === undefined) return null;
  if (changing === 'shipTo') return shipTo === null ? null : words.now(voice.place(shipTo));
  if (changing === 'needBy') return needBy === null ? null : words.now(voice.shortDay(needBy));
  if (changing === 'quantity')
    return line.quantity === null ? null : words.now(voice.count(line.quantity, voice.terms.heads));
  const value = line.spec[changing];
  return value === undefined ? null : words.now(partName(voice, changing, value));
}

const left = (count: number, voice: Voice, words: DraftWords): string | null =>
  count > 1 ? words.more(count - 1, voice) : count === 1 ? words.last : null;

/** Nothing was said yet. */
const isFresh = ({ lines, needBy, unclear }: Draft): boolean =>
  lines.length === 1 && needBy === null && unclear.length === 0 && isOpen(lines[0]);

const isOpen = (line: DraftLine | undefined): boolean =>
  line !== undefined && line.quantity === null && Object.values(line.spec).every((value) => value === undefined);
