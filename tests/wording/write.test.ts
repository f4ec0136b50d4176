import { describe, expect, test } from 'vitest';
import type { Card, CardButton, Saying } from '../../src/domain/desk/card.ts';
import { LABEL_WORDS } from '../../src/domain/desk/label.ts';
import { TOASTS, card } from '../../src/domain/desk/turn.ts';
import { letterSchema } from '../../src/app/letter.ts';
import { LANGUAGES, SPEC_SLOTS } from '../../src/domain/shop/words.ts';
import { choicesFor } from '../../src/domain/order/choices.ts';
import { universalIn } from '../../src/domain/order/universal.ts';
import { parseTap } from '../../src/wording/buttons.ts';
import { toastText } from '../../src/wording/toast.ts';
import { write } from '../../src/wording/write.ts';
import { PHRASES } from '../../src/wording/phrases.ts';
import { ball, football, lot, SAMPLES, sayings, session, shop, timer, work } from './samples.ts';

const text = (say: Saying, language: 'en' | 'es' = 'en'): string => write(shop, language, card(7, say)).text;
const said = sayings.flatMap((say) =>
  LANGUAGES.map((language) => ({ code: say.code, language, text: text(say, language) })),
);
const lengthOf = (words: string): number => Array.from(words).length;

describe('everything that can be said', () => {
  test.each(Object.keys(SAMPLES))('"%s" reads well in each language', (code) => {
    for (const { text } of said.filter((one) => one.code === code)) {
      expect(text).not.toMatch(/undefined|NaN|\[object|null|Infinity|=>|\$\{/);
      expect(text).not.toMatch(/ {2}(?! )\S| [,.;:]|\.\.|\n{3}|^\s|\s$/);
      expect(lengthOf(text)).toBeGreaterThan(3);
      expect(lengthOf(text)).toBeLessThanOrEqual(4096);
    }
  });

  test.each(sayings.map((say, at) => [say.code, at] as const))('"%s" is other words in Spanish (%i)', (_code, at) => {
    const say = sayings[at];
    if (say === undefined || say.code === 'order-address') return;
    expect(text(say, 'es')).not.toBe(text(say, 'en'));
  });

  test('no message blames, apologises or calls anything invalid', () => {
    for (const { text } of said)
      expect(text).not.toMatch(/\b(invalid|oops|illegal|error|wrong|sorry|inválid|incorrect)/i);
  });

  test('no message says anything by a picture sign alone', () => {
    for (const { text } of said) expect(text).not.toMatch(/\p{Extended_Pictographic}/u);
  });

  test('letters with these words can be queued', () => {
    const rest = { key: 'k', queuedAt: 0, notBefore: 0, attempts: 0, sendingSince: null };
    for (const say of sayings) {
      const letter = write(shop, 'en', card(7, say, { slot: 's', place: 'over', kind: 'news', picture: football }));
      expect(letterSchema.parse({ ...letter, ...rest })).toMatchObject({
        to: 7,
        slot: 's',
        place: 'over',
        kind: 'news',
      });
    }
  });
});

describe('what a message tells people to type or tap', () => {
  const toldIn = (language: 'en' | 'es', say: Saying): readonly string[] =>
    [
      ...text(say, language).matchAll(language === 'en' ? /(?:type|tap) “([^”]+)”/gi : /(?:escriba|toque) «([^»]+)»/gi),
    ].map(([, word = '']) => word);
  const codes = [
    'welcome',
    'help',
    'privacy',
    'started-over',
    'cancel-refused',
    'for-maker-only',
    'ask-tracking',
    'summary',
  ];

  test.each(LANGUAGES)('is a word that works or a button that there is (%s)', (language) => {
    const labels = Object.values(PHRASES[language].labels.words);
    const told = sayings.filter(({ code }) => codes.includes(code)).flatMap((say) => toldIn(language, say));
    expect(told.length).toBeGreaterThan(4);
    for (const word of told) expect(labels.includes(word) || universalIn(word) !== undefined, word).toBe(true);
  });

  test.each(LANGUAGES)('help lists only words that always work (%s)', (language) => {
    const [line = ''] = /(?<=: )[^:\n]+(?=\.\n\n(?:Type an|Escriba el))/.exec(text({ code: 'help' }, language)) ?? [];
    const words = line.split(', ');
    expect(words.length).toBeGreaterThan(5);
    for (const word of words) expect(universalIn(word), word).toBeDefined();
  });

  test.each(LANGUAGES)("the maker's help lists only words that work (%s)", (language) => {
    const listed = text({ code: 'maker-help' }, language).split('\n\n')[0]?.split('\n') ?? [];
    expect(listed.length).toBeGreaterThan(6);
    for (const line of listed) {
      const [word = ''] = line.split(':');
      expect(universalIn(word) !== undefined || /^(garage|reckon) /.test(word), word).toBe(true);
    }
  });
});

describe('buttons', () => {
  const tap = { act: 'help', on: '-', version: 0, arg: '-' } as const;
  const button = (label: CardButton['label'], arg = '-'): CardButton => ({ label, tap: { ...tap, arg } });
  const rowsOf = (rows: Card['rows'], language: 'en' | 'es' = 'en', say: Saying = { code: 'help' }) =>
    write(shop, language, card(7, say, { rows })).rows;

  test.each(LANGUAGES)('every word on a button is short, and no two are the same (%s)', (language) => {
    const labels = rowsOf([LABEL_WORDS.map((word) => button({ code: 'word', word }, word))], language).flat();
    expect(labels).toHaveLength(LABEL_WORDS.length);
    expect(new Set(labels.map(({ label }) => label)).size).toBe(labels.length);
    for (const { label } of labels) expect(lengthOf(label)).toBeLessThanOrEqual(40);
  });

  test.each(LANGUAGES)('every choice of every slot has a short label of its own (%s)', (language) => {
    for (const slot of SPEC_SLOTS) {
      const values = choicesFor(shop, {}, slot);
      const labels = rowsOf(
        [values.map((value) => button({ code: 'choice', ask: slot, value }, value))],
        language,
      ).flat();
      expect(labels).toHaveLength(values.length);
      for (const { label } of labels) expect(lengthOf(label)).toBeLessThanOrEqual(40);
    }
  });

  test('a label begins with a capital and says what it does', () => {
    const labels = rowsOf([
      [
        button({ code: 'choice', ask: 'guard', value: 'none' }),
        button({ code: 'choice', ask: 'paint', value: 'bare' }),
        button({ code: 'choice', ask: 'hook', value: '1' }),
        button({ code: 'choice', ask: 'quantity', value: '25' }),
        button({ code: 'choice', ask: 'usual', value: '25' }),
        button({ code: 'choice', ask: 'shipTo', value: 'US-MN' }),
        button({ code: 'way', put: { metal: 'bismuth-tin', paint: 'bare' } }),
        button({ code: 'way', put: { quantity: 5 } }),
        button({ code: 'start', work: { step: 'pour', family: 'football-3/8-lead', shares: session.shares } }),
        button({ code: 'scrapped', count: 0 }),
        button({ code: 'arrived', item: 'hook:90-round:2', count: 200 }),
      ],
    ]);
    expect(labels.flat().map(({ label }) => label)).toEqual([
      'No guard',
      'Unpainted',
      'Size 1 hook',
      '25 heads',
      'As usual, 25 heads',
      'Minnesota',
      'Make it unpainted and bismuth-tin',
      'Make it 5 heads',
      'Pour 3/8 oz football head, lead: 32',
      'None bad',
      'Arrived: 200 size 2 hooks (90° round bend)',
    ]);
  });

  test('a button carries exactly the tap it stands for', () => {
    const stands = { act: 'answer', on: 'D1', version: 41, arg: 'weight=3/8' } as const;
    const [[only] = []] = rowsOf([[{ label: { code: 'choice', ask: 'weight', value: '3/8' }, tap: stands }]]);
    expect(parseTap(only?.data ?? '')).toEqual(stands);
  });

  test('two buttons that do the same stand there once', () => {
    const bench = button({ code: 'word', word: 'bench' });
    expect(rowsOf([[bench], [bench]])).toEqual([[{ label: 'Bench', data: 'help|-|0|-' }]]);
  });

  test('two reminders put off by five minutes are told apart by what they remind of', () => {
    const say = { code: 'timers-due', timers: [timer('bake', 1), timer('glue', 1)], wasOff: 30 } as const;
    const more = (on: string): CardButton => ({ label: { code: 'word', word: 'five-more' }, tap: { ...tap, on } });
    expect(
      rowsOf([[more('T-bake'), more('T-glue')]], 'en', say)
        .flat()
        .map(({ label }) => label),
    ).toEqual(['5 more minutes', '5 more minutes (glue mix)']);
  });

  test('a label never grows past what the platform takes', () => {
    const item = `hook:${'very-long-pattern-'.repeat(12)}:2`;
    const [[only] = []] = rowsOf([[button({ code: 'arrived', item, count: 1 })]]);
    expect(lengthOf(only?.label ?? '')).toBeLessThanOrEqual(100);
  });
});

describe('answers on a button', () => {
  test.each(TOASTS.flatMap((toast) => LANGUAGES.map((language) => [toast, language] as const)))(
    '"%s" is short (%s)',
    (toast, language) => {
      expect(lengthOf(toastText(toast, language) ?? '')).toBeLessThanOrEqual(200);
    },
  );

  test('they are other words in Spanish', () => {
    for (const toast of TOASTS) expect(toastText(toast, 'es')).not.toBe(toastText(toast, 'en'));
  });
});

describe('pictures', () => {
  test('a picture shows the head big and its parts below', () => {
    expect(write(shop, 'en', card(7, { code: 'posted', order: 'K-1' }, { picture: football })).picture).toEqual({
      kind: 'head',
      spec: football,
      caption: [
        '3/8 oz football head',
        '4/0 hook · green pumpkin',
        'brown guard · wire keeper',
        'green pumpkin skirt · lead',
      ],
    });
  });

  test('heads of several lots are pictured each with its lots', () => {
    const each = [
      {
        spec: football,
        lots: [
          { lot: 'K-1-1', heads: 27 },
          { lot: 'K-2-1', heads: 1 },
        ],
      },
      { spec: ball, lots: [{ lot: 'K-3-1', heads: 22 }] },
    ];
    const picture = write(shop, 'en', card(7, { code: 'posted', order: 'K-1' }, { picture: { each } })).picture;
    expect(picture).toMatchObject({
      kind: 'heads',
      heads: [
        {
          spec: football,
          caption: [
            'K-1-1: 27 heads · K-2-1: 1 head',
            '3/8 oz football head',
            expect.anything(),
            expect.anything(),
            expect.anything(),
          ],
        },
        { spec: ball },
      ],
    });
  });

  test('words too long to stand under a picture go out without it', () => {
    const about = (length: number): Card =>
      card(7, { code: 'maker-says', text: 'x'.repeat(length), about: '' }, { picture: ball });
    expect(write(shop, 'en', about(900)).picture).not.toBeNull();
    expect(write(shop, 'en', about(1100)).picture).toBeNull();
  });
});

describe('long texts', () => {
  test('a text past the limit is cut at a word, and says so', () => {
    const long = text({ code: 'maker-says', text: 'walleye '.repeat(700), about: 'x' });
    expect(lengthOf(long)).toBeLessThanOrEqual(4096);
    expect(long).toMatch(/walleye…$/);
  });

  test('faces and other signs outside the common plane count as one each', () => {
    expect(lengthOf(text({ code: 'maker-says', text: '🎣'.repeat(5000), about: 'x' }))).toBe(4096);
  });

  test('however many lots share an oven load, its cautions are never cut off', () => {
    const lots = Array.from({ length: 48 }, (_, at) => ({
      lot: { ...lot, id: `K-${1000 + at}-1` },
      heads: 1,
      said: [],
    }));
    const shares = lots.map(({ lot, heads }) => ({ lot: lot.id, heads }));
    const said = text({ code: 'session', session: { ...session, step: 'bake', shares }, lots, facts: work });
    expect(lengthOf(said)).toBeLessThan(4096);
    expect(said).toMatch(/Check your local codes and the safety data sheets\.$/);
  });
});

test("nobody's words are taken apart or dressed up", () => {
  const words = '<b>_*[x](y)&amp;';
  expect(text({ code: 'maker-says', text: words, about: words })).toContain(words);
});
