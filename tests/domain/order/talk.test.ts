import { describe, expect, test } from 'vitest';
import { currentLine, emptyDraft, type Draft } from '../../../src/domain/order/draft.ts';
import { nextAsk, questionsLeft, wholeLine } from '../../../src/domain/order/next.ts';
import type { LineWords, Reading } from '../../../src/domain/order/reader/reading.ts';
import { answered, backed, hear } from '../../../src/domain/order/talk.ts';
import type { Line, Spec } from '../../../src/domain/order/spec.ts';
import { usualSpec } from '../../../src/domain/order/choices.ts';
import { SHOP } from '../../demoShop.ts';

const NOW = 0;
const start = emptyDraft('D1', null, NOW);

const PAST: readonly Line[] = [
  { spec: usualSpec(SHOP, { style: 'ball', weight: '1/8', paint: 'red' }) as Spec, quantity: 60 },
];

const reading = (lines: readonly LineWords[], more: Partial<Reading> = {}): Reading => ({
  lines,
  needBy: null,
  shipTo: null,
  unclear: [],
  refers: null,
  ...more,
});

const heard = (draft: Draft, lines: readonly LineWords[], more: Partial<Reading> = {}): Draft =>
  hear(SHOP, draft, reading(lines, more), { ask: nextAsk(SHOP, draft)?.ask, past: PAST, now: NOW });

describe('only what is missing is asked', () => {
  test('an empty draft asks for the style first', () =>
    expect(nextAsk(SHOP, start)).toEqual({ ask: 'style', line: 0 }));

  test('style, weight, paint, the fittings as usual, and where it goes', () => {
    let draft = start;
    const asked: string[] = [];
    const taps = [
      ['style', 'football'],
      ['weight', '1/4'],
      ['paint', 'black'],
    ] as const;
    for (const [slot, value] of taps) {
      asked.push(nextAsk(SHOP, draft)?.ask ?? '');
      draft = answered(draft, slot, value, NOW);
    }
    expect(asked).toEqual(['style', 'weight', 'paint']);
    expect(nextAsk(SHOP, draft)?.ask).toBe('usual');
  });

  test('a message that says it all leaves nothing to ask', () => {
    const draft = heard(
      start,
      [
        {
          quantity: 25,
          style: 'football',
          weight: '1/4',
          hook: '3/0',
          paint: 'green-pumpkin',
          guard: 'black',
          dressing: 'none',
        },
      ],
      { shipTo: 'US-OH' },
    );
    expect(nextAsk(SHOP, draft)).toBeUndefined();
    expect(wholeLine(SHOP, currentLine(draft))).toMatchObject({
      quantity: 25,
      spec: { keeper: 'wire', metal: 'lead' },
    });
  });

  test('a ball head has no guard, no dressing and one keeper to ask for', () => {
    const draft = heard(start, [{ quantity: 25, style: 'ball', weight: '1/4', hook: '2/0', paint: 'black' }]);
    expect(nextAsk(SHOP, draft)?.ask).toBe('shipTo');
  });

  test('a guard that is wanted without a colour is asked for', () => {
    const draft = heard(start, [
      { quantity: 25, style: 'football', weight: '1/4', hook: '3/0', paint: 'black', guard: 'yes', dressing: 'none' },
    ]);
    expect(nextAsk(SHOP, draft)?.ask).toBe('guard');
  });

  test('a metal that was not understood is asked for instead of being taken as usual', () => {
    const draft = heard(
      start,
      [{ quantity: 30, style: 'swim', weight: '1/4', hook: '3/0', paint: 'black', guard: 'none', dressing: 'none' }],
      { unclear: [{ slot: 'metal', said: 'tungsten' }], shipTo: 'US-OH' },
    );
    expect(nextAsk(SHOP, draft)?.ask).toBe('metal');
    expect(draft.unclear).toEqual([{ slot: 'metal', said: 'tungsten' }]);
    expect(answered(draft, 'metal', 'tin', NOW).unclear).toEqual([]);
  });

  test('the questions left go down as answers come in', () => {
    const counts = [
      start,
      answered(start, 'style', 'ball', NOW),
      answered(answered(start, 'style', 'ball', NOW), 'weight', '1/8', NOW),
    ].map((draft) => questionsLeft(SHOP, draft));
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    expect(new Set(counts).size).toBe(3);
  });
});

describe('several lines', () => {
  const first: LineWords = { quantity: 20, style: 'swim', weight: '1/4', paint: 'black' };

  test('one message may hold several', () =>
    expect(heard(start, [first, { ...first, weight: '3/8' }]).lines).toHaveLength(2));

  test('a message that names another head adds a line', () => {
    const draft = heard(heard(start, [first]), [{ quantity: 12, style: 'ball', weight: '1/16' }]);
    expect(draft.lines.map(({ spec }) => spec.style)).toEqual(['swim', 'ball']);
    expect(draft.current).toBe(1);
  });

  test('a message with a slot or two changes the line at hand', () => {
    const draft = heard(heard(start, [first]), [{ paint: 'white' }]);
    expect(draft.lines).toHaveLength(1);
    expect(draft.lines[0]?.spec.paint).toBe('white');
  });

  test('no more lines than the shop takes in an order', () => {
    const many = Array.from({ length: 14 }, () => first);
    expect(heard(start, many).lines).toHaveLength(SHOP.orders.lines);
  });
});

describe('going back', () => {
  test('asks the last slot again and keeps its answer', () => {
    const draft = answered(answered(start, 'style', 'ball', NOW), 'weight', '1/8', NOW);
    const back = backed(draft, NOW);
    expect(back && nextAsk(SHOP, back)?.ask).toBe('weight');
    expect(back?.lines[0]?.spec.weight).toBe('1/8');
  });

  test('at the first question there is nothing to go back to', () => expect(backed(start, NOW)).toBeUndefined());

  test('every change is a new version, and hearing nothing new is none', () => {
    const draft = heard(start, [{ style: 'ball' }]);
    expect(draft.version).toBe(1);
    expect(heard(draft, [{ style: 'ball' }])).toBe(draft);
  });
});

describe('words that lean on what was said before', () => {
  const first: LineWords = { quantity: 20, style: 'swim', weight: '1/4', paint: 'black' };
  const draft = heard(start, [first]);
  const after = (words: LineWords, refers: NonNullable<Reading['refers']>, from = draft): readonly unknown[] =>
    heard(from, [words], { refers }).lines.map(({ spec, quantity }) => [quantity, spec.style, spec.weight, spec.paint]);

  test('the same but white is another line', () =>
    expect(after({ paint: 'white' }, { kind: 'same', which: null })).toEqual([
      [20, 'swim', '1/4', 'black'],
      [20, 'swim', '1/4', 'white'],
    ]));

  test('another 20 of those are 20 more of the line', () =>
    expect(after({ quantity: 20 }, { kind: 'another', which: null })).toEqual([[40, 'swim', '1/4', 'black']]));

  test('another 10 in white are a line of their own', () =>
    expect(after({ quantity: 10, paint: 'white' }, { kind: 'another', which: null })).toEqual([
      [20, 'swim', '1/4', 'black'],
      [10, 'swim', '1/4', 'white'],
    ]));

  test('like last time is the last order, with what is said otherwise', () =>
    expect(after({ quantity: 48 }, { kind: 'last-time', which: null }, start)).toEqual([[48, 'ball', '1/8', 'red']]));

  test('make the 3/8 ones 30 finds the line it means', () => {
    const two = heard(draft, [{ ...first, weight: '3/8' }]);
    expect(after({ weight: '1/4', quantity: 30 }, { kind: 'change', which: { weight: '1/4' } }, two)).toEqual([
      [30, 'swim', '1/4', 'black'],
      [20, 'swim', '3/8', 'black'],
    ]);
    expect(after({}, { kind: 'remove', which: 2 }, two)).toEqual([[20, 'swim', '1/4', 'black']]);
  });
});
