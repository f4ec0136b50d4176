import { z } from 'zod';
import { KEEPERS, LINE_SLOTS, type LineSlot } from '../shop/words.ts';
import { wordsAgreed } from './agreed.ts';
import type { LineWords } from './reader/reading.ts';
import { partialSpecSchema, type PartialSpec } from './spec.ts';

/** A line that is still being talked about. */
export const draftLineSchema = z.strictObject({
  spec: partialSpecSchema,
  quantity: z.number().int().nullable(),
  /** A guard was asked for, its colour was not said. */
  wantsGuard: z.boolean(),
  /** The buyer wants to choose hook and fittings one by one. */
  each: z.boolean(),
  /** Cents a head that the maker asked for a wish. */
  extra: z.number().int().min(0).default(0),
  /** Reference photos, by the platform's file id. */
  photos: z.array(z.string().max(300)).max(10),
  /** What the buyer typed that made or changed the line, in their own words. */
  said: z.array(z.string().max(300)).max(10).default([]),
});
export type DraftLine = Readonly<z.infer<typeof draftLineSchema>>;

export const ASKS = [...LINE_SLOTS, 'usual', 'shipTo', 'needBy'] as const;
/** What a question asks for: a slot, all open fittings as usual, where the parcel goes, or the day it is wanted by. */
export type Ask = (typeof ASKS)[number];

/** An order that is still being talked about. The next question follows from it; nothing else is remembered of the talk. */
export const draftSchema = z.strictObject({
  id: z.string(),
  /** Counts every change, so that a button drawn for an older state is known as such. */
  version: z.number().int(),
  lines: z.array(draftLineSchema).max(50),
  /** The line that short answers are about. */
  current: z.number().int().min(0),
  needBy: z.iso.date().nullable(),
  /** To be made ahead of others for that day, at the shop's charge for haste. */
  rush: z.boolean().default(false),
  shipTo: z.string().nullable(),
  /** A slot that the buyer wants to change from the summary. */
  changing: z.enum(ASKS).nullable(),
  /** Slots answered, newest last: what "back" asks again. */
  trail: z.array(z.enum(ASKS)).max(200),
  /** Said and not understood, in the buyer's own words, until it is answered or the maker is asked. */
  unclear: z.array(z.strictObject({ slot: z.string(), said: z.string().max(300) })).max(20),
  /** Findings that the maker let pass, by `passKey`. */
  passed: z.array(z.string()).max(50).default([]),
  /** How often in a row an answer was not understood. */
  misses: z.number().int().min(0),
  touchedAt: z.number(),
});
export type Draft = Readonly<z.infer<typeof draftSchema>>;

export const emptyLine: DraftLine = {
  spec: {},
  quantity: null,
  wantsGuard: false,
  each: false,
  extra: 0,
  photos: [],
  said: [],
};

export const emptyDraft = (id: string, shipTo: string | null, now: number): Draft => ({
  id,
  version: 0,
  lines: [emptyLine],
  current: 0,
  needBy: null,
  rush: false,
  shipTo,
  changing: null,
  trail: [],
  unclear: [],
  passed: [],
  misses: 0,
  touchedAt: now,
});

/** Photos that one line keeps. */
export const MOST_PHOTOS = 10;

/** Whether nothing was said of any head yet. */
export const isBlank = ({ lines }: Draft): boolean =>
  lines.every(({ spec, quantity }) => quantity === null && Object.keys(spec).length === 0);

/** The line that is being talked about. */
export const currentLine = (draft: Draft): DraftLine => draft.lines[draft.current] ?? emptyLine;

/** The draft with one line replaced. */
export const withLine = (draft: Draft, at: number, line: DraftLine): Draft => ({
  ...draft,
  lines: draft.lines.map((old, index) => (index === at ? line : old)),
});

/** A line with a value put into a slot; what was paid more for a wish goes when the last wish does. A slot that no longer goes with it is the check's business. */
export function putSlot(line: DraftLine, slot: LineSlot, value: string | number): DraftLine {
  if (slot === 'quantity') return { ...line, quantity: Number(value) };
  if (slot === 'guard' && value === 'yes') return { ...clearSlot(line, 'guard'), wantsGuard: true };
  if (slot === 'keeper' && !isKeeper(value)) return line;
  const spec: PartialSpec = { ...line.spec, [slot]: String(value) };
  const isAgreed = Object.values(spec).some((one) => wordsAgreed(one) !== undefined);
  return { ...line, wantsGuard: slot === 'guard' ? false : line.wantsGuard, spec, extra: isAgreed ? line.extra : 0 };
}

/** The draft with a message kept at each line that it made or changed; `before` is the draft that it met. */
export const quoting = (before: Draft, after: Draft, text: string): Draft => ({
  ...after,
  lines: after.lines.map((line, at) =>
    JSON.stringify(line) === JSON.stringify(before.lines[at])
      ? line
      : { ...line, said: [...line.said, text.trim().slice(0, 300)].slice(-10) },
  ),
});

/** A line with everything put into it that was said of it. */
export function putWords(line: DraftLine, words: LineWords): DraftLine {
  return LINE_SLOTS.reduce((filled, slot) => {
    const value = words[slot];
    return value === undefined ? filled : putSlot(filled, slot, value);
  }, line);
}

/** A line with a slot open again. */
export function clearSlot(line: DraftLine, slot: LineSlot): DraftLine {
  if (slot === 'quantity') return { ...line, quantity: null };
  return {
    ...line,
    spec: Object.fromEntries(Object.entries(line.spec).filter(([name]) => name !== slot)) as PartialSpec,
  };
}

const isKeeper = (value: string | number): boolean => KEEPERS.some((keeper) => keeper === value);
