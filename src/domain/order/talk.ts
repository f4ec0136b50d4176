import { localDay } from '../craft/time.ts';
import { LINE_SLOTS, type LineSlot } from '../shop/words.ts';
import type { Shop } from '../shop/shop.ts';
import { currentLine, emptyLine, putSlot, putWords, withLine, type Ask, type Draft, type DraftLine } from './draft.ts';
import type { LineWords, Reading } from './reader/reading.ts';
import { refer } from './refer.ts';
import type { Line } from './spec.ts';

/** The draft after something was said: slots filled or changed, lines added, what was unclear kept in the buyer's words.
 *  The version counts on only when the draft is another one than before. */
export function hear(shop: Shop, draft: Draft, said: Reading, { ask, past, now }: Moment): Draft {
  const reading = inTime(shop, said, now);
  const lined = hearLines(shop, draft, reading, past).draft;
  const unclear = [...stillUnclear(lined, reading), ...reading.unclear].slice(-20);
  const heard: Draft = {
    ...lined,
    needBy: reading.needBy ?? lined.needBy,
    rush: reading.needBy === null && lined.rush,
    shipTo: reading.shipTo ?? lined.shipTo,
    unclear: unclear.map(({ slot, said }) => ({ slot, said: said.slice(0, 300) })),
  };
  if (JSON.stringify(heard) === JSON.stringify(draft)) return draft;
  return turned({ ...heard, changing: null, misses: 0, trail: trailOf(draft, heard, ask) }, now);
}

/** A day of a year that was named may be over: it was spoken of, and is no day to ship by. */
const inTime = ({ zone }: Shop, reading: Reading, now: number): Reading =>
  reading.needBy === null || reading.needBy >= localDay(now, zone)
    ? reading
    : { ...reading, needBy: null, unclear: [...reading.unclear, { slot: 'needBy', said: reading.needBy }] };

/** When something is heard: what was asked, and what the buyer ordered last. */
export type Moment = Readonly<{ ask: Ask | undefined; past: readonly Line[]; now: number }>;

/** How many lines of a message are more than the shop takes in one order; they are told, not heard. */
export const linesTooMany = (shop: Shop, draft: Draft, reading: Reading, past: readonly Line[]): number =>
  hearLines(shop, draft, reading, past).over;

/** The draft with one slot answered by a tap. */
export function answered(
  draft: Draft,
  ask: LineSlot | 'shipTo' | 'needBy',
  value: string | number,
  now: number,
): Draft {
  const put = putAnswer(draft, ask, value);
  const unclear = draft.unclear.filter(({ slot }) => slot !== ask);
  return turned({ ...put, unclear, changing: null, misses: 0, trail: [...draft.trail, ask].slice(-200) }, now);
}

function putAnswer(draft: Draft, ask: LineSlot | 'shipTo' | 'needBy', value: string | number): Draft {
  if (ask === 'shipTo') return { ...draft, shipTo: String(value) };
  if (ask === 'needBy') return { ...draft, needBy: value === ANY_DAY ? null : String(value), rush: false };
  return withLine(draft, draft.current, putSlot(currentLine(draft), ask, value));
}

/** The answer that no day is asked for. */
export const ANY_DAY = 'any';

/** The draft with the answered slot before asked again; its answer stands until another is given. */
export function backed(draft: Draft, now: number): Draft | undefined {
  const last = draft.trail.at(-1);
  if (last === undefined) return undefined;
  return turned({ ...draft, changing: last, trail: draft.trail.slice(0, -1), misses: 0 }, now);
}

/** A new version of the draft. */
export const turned = (draft: Draft, now: number): Draft => ({ ...draft, version: draft.version + 1, touchedAt: now });

/** The draft with the lines heard, and how many found no room. */
type Lined = Readonly<{ draft: Draft; over: number }>;

/** What leans on a line said before goes there; what is said beside it begins lines of its own. */
function hearLines(shop: Shop, draft: Draft, reading: Reading, past: readonly Line[]): Lined {
  const parted = divided(shop, draft, reading);
  if (parted) return { draft: parted, over: 0 };
  const leaning = refer(draft, reading, past);
  return reading.lines.slice(leaning.used).reduce<Lined>(
    (heard, words, at) => {
      const aimed = aimedAt(heard.draft, words);
      const isFresh = aimed === undefined && (leaning.used + at > 0 || startsLine(heard.draft, words, reading));
      return isFresh ? addLine(shop, heard, words) : { ...heard, draft: fillLine(heard.draft, words, aimed) };
    },
    { draft: leaning.draft, over: Math.max(0, leaning.draft.lines.length - shop.orders.lines) },
  );
}

function addLine(shop: Shop, { draft, over }: Lined, words: LineWords): Lined {
  if (draft.lines.length >= shop.orders.lines) return { draft, over: over + 1 };
  const line = putWords(begun(shop, draft, words), words);
  return { draft: { ...draft, lines: [...draft.lines, line], current: draft.lines.length }, over };
}

const fillLine = (draft: Draft, words: LineWords, at = draft.current): Draft =>
  withLine({ ...draft, current: at }, at, putWords(draft.lines[at] ?? emptyLine, words));

/** Words that have a size of their own and no style are of the style before them, if it is cast in that size. */
function begun({ molds }: Shop, { lines }: Draft, { style, weight }: LineWords): DraftLine {
  const before = lines.at(-1)?.spec.style;
  const isCast = molds.some((mold) => mold.style === before && mold.cavities.some((one) => one.weight === weight));
  return style === undefined && before !== undefined && isCast ? { ...emptyLine, spec: { style: before } } : emptyLine;
}

/** `size 2 on the eighths`: words that name the weight of one other line are of that line. */
function aimedAt({ lines, current }: Draft, words: LineWords): number | undefined {
  const isAside = words.quantity === undefined && words.style === undefined && Object.keys(words).length > 1;
  if (!isAside || words.weight === undefined || lines[current]?.spec.weight === words.weight) return undefined;
  const places = lines.flatMap(({ spec }, at) => (spec.weight === words.weight ? [at] : []));
  return places.length === 1 ? places[0] : undefined;
}

/** `25 in 1/4 and 25 in 1/8` of a line of 50: its parts stand in its place, if they say what it leaves open and add up to it. */
function divided(shop: Shop, draft: Draft, { lines: parts, refers }: Reading): Draft | undefined {
  const whole = currentLine(draft);
  const sum = parts.reduce((count, { quantity = 0 }) => count + quantity, 0);
  const isOpen = parts.every(({ quantity, ...words }) => quantity !== undefined && isLeftOpen(whole, words));
  const fits = draft.lines.length + parts.length - 1 <= shop.orders.lines;
  if (refers !== null || parts.length < 2 || sum !== whole.quantity || !isOpen || !fits) return undefined;
  const lines = draft.lines.flatMap((line, at) =>
    at === draft.current ? parts.map((part) => putWords(whole, part)) : line,
  );
  return { ...draft, lines };
}

const isLeftOpen = ({ spec }: DraftLine, words: Omit<LineWords, 'quantity'>): boolean =>
  Object.keys(words).length > 0 && Object.keys(words).every((slot) => spec[slot as keyof typeof spec] === undefined);

/** Whether words begin another line rather than fill or change the one being talked about: it is whole already, and they name a head of their own. */
function startsLine(draft: Draft, words: LineWords, reading: Reading): boolean {
  const line = currentLine(draft);
  const named = line.spec.style !== undefined && line.quantity !== null;
  if (!named || draft.changing !== null) return false;
  if (reading.refers?.kind === 'add') return true;
  return words.quantity !== undefined && (words.style !== undefined || words.weight !== undefined);
}

/** What was unclear before and has not been said since. */
function stillUnclear(draft: Draft, reading: Reading): Draft['unclear'] {
  const said = new Set<string>([
    ...reading.lines.flatMap((words) => Object.keys(words)),
    ...(['needBy', 'shipTo'] as const).filter((slot) => reading[slot] !== null),
  ]);
  return draft.unclear.filter(({ slot }) => !said.has(slot) && !reading.unclear.some((one) => one.slot === slot));
}

function trailOf(before: Draft, after: Draft, ask: Ask | undefined): Draft['trail'] {
  const filled = LINE_SLOTS.filter((slot) => slotOf(currentLine(before), slot) !== slotOf(currentLine(after), slot));
  const all = ask !== undefined && ask !== 'usual' && !filled.some((slot) => slot === ask) ? [...filled, ask] : filled;
  return [...before.trail, ...all].slice(-200);
}

const slotOf = (line: DraftLine, slot: LineSlot): string | number | null | undefined =>
  slot === 'quantity' ? line.quantity : line.spec[slot];
