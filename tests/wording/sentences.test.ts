import { describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../src/domain/craft/care.ts';
import { HOUR } from '../../src/domain/craft/time.ts';
import type { Saying } from '../../src/domain/desk/card.ts';
import { card } from '../../src/domain/desk/turn.ts';
import { emptyLine } from '../../src/domain/order/draft.ts';
import { KIND, type Remark } from '../../src/domain/order/finding.ts';
import { moneyFor } from '../../src/domain/quote/quote.ts';
import type { Language } from '../../src/domain/shop/words.ts';
import { cautionText } from '../../src/wording/cautions.ts';
import { write } from '../../src/wording/write.ts';
import {
  bareLot,
  because,
  digest,
  draft,
  facts,
  findings,
  football,
  lot,
  NOW,
  oneLineMoney,
  order,
  quote,
  session,
  shop,
  timer,
  work,
} from './samples.ts';

const text = (say: Saying, language: Language = 'en'): string => write(shop, language, card(7, say)).text;
/** Spaces of every width as a common one. */
const plain = (words: string): string => words.replaceAll(/[\u00A0\u202F]/g, ' ');
const money = (cents: number, locale = 'en-US'): string =>
  plain(new Intl.NumberFormat(locale, { style: 'currency', currency: shop.currency }).format(cents / 100));

const summary = (more: Partial<Extract<Saying, { code: 'summary' }>> = {}): Extract<Saying, { code: 'summary' }> => ({
  code: 'summary',
  draft,
  quote,
  madeGrams: [10.7, 2.7],
  usual: [['keeper', 'metal'], []],
  notes: [],
  missed: null,
  sooner: [],
  ...more,
});

describe('the summary', () => {
  test('says that nothing is ordered yet, and how to order it', () => {
    expect(text(summary())).toMatch(/^Please check it\. Nothing is ordered yet\./);
    expect(text(summary())).toContain('Tap “Order this” to order it.');
    expect(text(summary(), 'es')).toContain('Todavía no se ha pedido nada.');
  });

  test('says first of all that the day wanted cannot be kept', () => {
    expect(text(summary({ missed: '2026-11-28' }))).toMatch(
      /^You wanted it by Saturday, November 28\. The soonest I can promise is Monday, November 30\./,
    );
  });

  test('says what stands as usual on a line of its own', () => {
    expect(text(summary())).toContain('\nAs usual, since you did not say: wire keeper and lead.\n');
    expect(text(summary())).toContain(
      '1. 30 × 3/8 oz football head, 4/0 hook, green pumpkin, brown guard, green pumpkin skirt\n',
    );
  });

  test('shows the price with its parts, what the number saves, and every sum as the shop writes money', () => {
    const [line] = quote.money.lines;
    const words = text(summary());
    expect(words).toContain('head $1.05 + paint $0.25 + guard $0.30 + dressing $0.90 = $2.50');
    expect(words).toContain(`30 × $2.50, less ${money(line?.off ?? 0)} for quantity = ${money(line?.total ?? 0)}`);
    expect(words).toContain(`TOTAL: ${money(quote.money.total)}`);
    expect(text(summary(), 'es')).toContain(`TOTAL: ${money(quote.money.total, 'es-US')}`);
  });

  test('names what a small order is topped up by', () => {
    expect(oneLineMoney.topUp).toBeGreaterThan(0);
    const small = summary({ quote: { ...quote, lines: quote.lines.slice(1), money: oneLineMoney } });
    expect(text(small)).toContain(`Up to the least order of $15.00: ${money(oneLineMoney.topUp)}`);
  });

  test('gives the day, the reasons in order of time, and until when it is good, in the zone of the shop', () => {
    const words = text(summary());
    expect(words).toContain('Ships Monday, November 30.');
    expect(words).toContain(
      'Why then: material is here Thu 5:10 AM; the bench opens Thu 6:10 AM; hands are taken until Thu 5:10 PM; paint is done Thu 6:10 PM; the oven is taken until Thu 7:10 PM; cure runs to Sat 1:10 AM; post leaves Sun 11:10 PM; room is kept for a bad evening, so Tue, Dec 1 is what I can promise.',
    );
    expect(words).toContain('good until Sat, Nov 28, 7:10 PM.');
  });

  test('names the date of each reason when they go past a week', () => {
    const later = because.map((reason) => (reason.code === 'post' ? { ...reason, by: NOW + 200 * HOUR } : reason));
    expect(text(summary({ quote: { ...quote, because: later } }))).toContain('post leaves Fri, Dec 4, 3:10 AM');
  });

  test('says back what was not understood, in the words it was said in', () => {
    expect(text(summary())).toContain('Not in this order, because I did not understand it: “with <b>glitter</b>”.');
  });

  test('names what it waits for, with the day', () => {
    const why: Remark = {
      code: 'waits-for-stock',
      slots: ['hook'],
      item: 'hook:60-flat-heavy:6/0',
      need: 120,
      free: 90,
      instead: ['5/0'],
      day: '2026-12-03',
      due: null,
    };
    expect(text(summary({ notes: [{ kind: KIND[why.code], line: 0, why, ways: [] }] }))).toContain(
      'Line 1: It waits for 6/0 hooks (60° flat eye, heavy): more arrive Thursday, December 3. The ship day counts that in. Here now, and it fits the mold: 5/0 hook.',
    );
  });

  test('a rule on lead that holds for all lines is said once, with its source, its date and a caution', () => {
    const why: Remark = {
      code: 'law-notice',
      slots: ['metal'],
      place: 'US-NH',
      why: 'from-later',
      row: 'x',
      fact: { en: 'It is banned.', es: 'Se prohíbe.' },
      citation: 'RSA 1',
      asOf: '2026-07',
      since: '2027-01-01',
      tag: 'V2',
    };
    const words = text(summary({ notes: [0, 1].map((line) => ({ kind: KIND[why.code], line, why, ways: [] })) }));
    expect(words.match(/It is banned\./g)).toHaveLength(1);
    expect(words).toContain('It comes into force on January 1, 2027.');
    expect(words).toContain('(RSA 1; as of July 2026; as reported by another source)');
    expect(words).toContain('Check your local rules.');
  });
});

describe('a long order', () => {
  const lines = Array.from({ length: shop.orders.lines }, () => ({ spec: football, quantity: 30 }));
  const money = moneyFor(shop, lines, 'US-MN');
  const unclear = Array.from({ length: 20 }, (_, at) => ({ slot: 'paint', said: `${at} ${'glitter '.repeat(30)}` }));
  const long = { ...draft, lines: lines.map(() => draft.lines[0] ?? emptyLine), unclear };

  test('still shows every line with its price, the total, the day and how to order it', () => {
    if (money === undefined) throw new Error('The demo shop posts to Minnesota.');
    const words = text(
      summary({
        draft: long,
        quote: { ...quote, lines, money },
        usual: lines.map(() => ['keeper', 'metal']),
        notes: findings,
      }),
    );
    expect(words.match(/^\d+\. 30 × 3\/8 oz football head/gm)).toHaveLength(lines.length);
    expect(words).toContain('TOTAL: ');
    expect(words).toContain('Ships Monday, November 30.');
    expect(words).toMatch(/Tap “Order this” to order it\.$/);
  });

  test('still shows what is asked', () => {
    const say = { code: 'question', ask: 'paint', findings: [], usual: null } as const;
    expect(text({ ...say, draft: long, progress: { line: 1, lines: 10, left: 1 } })).toMatch(
      /What color\?[^]*question\.$/,
    );
  });
});

describe('a question', () => {
  const ask = (more: Partial<Extract<Saying, { code: 'question' }>>): string =>
    text({
      code: 'question',
      draft: { ...draft, lines: draft.lines.slice(0, 1), unclear: [] },
      ask: 'paint',
      findings: [],
      usual: null,
      progress: { line: 1, lines: 1, left: 3 },
      ...more,
    });

  test('says what is known so far in one line, what is asked, and about how many more come', () => {
    expect(ask({}).split('\n')).toEqual([
      'So far: 30 × 3/8 oz football head, 4/0 hook, green pumpkin, brown guard, green pumpkin skirt, 1 photo kept, wanted by Tue, Dec 1, to Minnesota',
      '',
      'What color?',
      'Tap one or type it.',
      '',
      'About 2 more questions after this.',
    ]);
  });

  test('the first one shows how to say it all at once', () => {
    const fresh = { ...draft, lines: [emptyLine], needBy: null, unclear: [], shipTo: null };
    expect(ask({ draft: fresh, ask: 'style' })).toContain(
      '“24 heads, 3/8 oz football head, black, black guard, to Minnesota”',
    );
  });

  test('shows what stands there when it is asked again', () => {
    expect(ask({ draft: { ...draft, changing: 'hook' }, ask: 'hook' })).toContain('Now: 4/0 hook.');
  });

  test('says what the usual parts are', () => {
    const bare = { ...emptyLine, spec: { style: 'football', weight: '3/8', paint: 'green-pumpkin' } };
    expect(ask({ draft: { ...draft, lines: [bare] }, ask: 'usual', usual: football })).toContain(
      'Usual here: 4/0 hook, brown guard, wire keeper, green pumpkin skirt, and lead.',
    );
  });
});

describe('what was not understood', () => {
  const missed = (misses: number): string => text({ code: 'not-understood', draft, misses, hint: 'weight' });

  test('gets a hint, then an example, then a person', () => {
    expect(missed(1)).toContain('Tap a button below, or type something like “3/8 oz”.');
    expect(missed(2)).toContain('for this question, “3/8 oz”');
    expect(missed(3)).toContain('Let a person read it');
  });

  test('never gets the same text twice, however often it happens', () => {
    const texts = Array.from({ length: 12 }, (_, at) => missed(at + 1));
    expect(new Set(texts).size).toBe(texts.length);
  });
});

describe('an order', () => {
  test('once placed, tells its number, money, day, how to pay, and what is still needed', () => {
    const words = text({ code: 'accepted', order });
    for (const part of [
      'K-1042',
      money(order.money.total),
      'Monday, November 30',
      'Pay by bank transfer',
      'within 7 days',
    ])
      expect(words).toContain(part);
    expect(words).toMatch(/type the name and address for the parcel, all in one message\.$/);
  });

  test('tells step by step how far it is', () => {
    const words = text({ code: 'order', facts });
    expect(words).toContain('Step 1 of 10, up next: pour');
    expect(words).toContain('Step 1 of 10: being poured');
    expect(words).toContain('All steps done');
  });

  test('tells at once when the bench would break its promise', () => {
    expect(text({ code: 'order', facts: { ...facts, ships: '2026-12-02' } })).toContain(
      'Promised for Monday, November 30. As the bench stands now it would ship Wednesday, December 2.',
    );
  });
});

describe('at the bench', () => {
  const pour = (more: Partial<Extract<Saying, { code: 'session' }>> = {}): Extract<Saying, { code: 'session' }> => ({
    code: 'session',
    session,
    lots: [{ lot, heads: 32, said: [] }],
    facts: { ...work, bake: null, glue: null, cureHours: null, counts: [] },
    ...more,
  });

  test('every part of a head stands on its own line, in capitals where it matters', () => {
    expect(text(pour()).split('\n').slice(0, 11)).toEqual([
      'POUR',
      '',
      '32 HEADS (K-1042-1)',
      '3/8 OZ FOOTBALL HEAD',
      'Hook: 4/0, 60° flat eye, heavy',
      'Paint: GREEN PUMPKIN',
      'Guard: BROWN',
      'Keeper: WIRE',
      'Dressing: GREEN PUMPKIN SKIRT',
      'Metal: LEAD',
      'Base-hole pin: IN',
    ]);
  });

  test('a mold with a pin says when the pin is left out, and one without says nothing of it', () => {
    const unguarded = { ...lot, spec: { ...football, guard: 'none' } };
    expect(text(pour({ lots: [{ lot: unguarded, heads: 32, said: [] }] }))).toContain('Base-hole pin: LEAVE OUT');
    expect(text(pour({ lots: [{ lot: bareLot, heads: 12, said: [] }] }))).not.toContain('pin:');
  });

  test('how hot, how long and how much is said for the step', () => {
    const words = text(pour({ facts: work }));
    expect(words).toContain('Melt 1,234 g, sprues and warming shots included.');
    expect(words).toContain('Heat the head for a count of 20 to 25 before the dip.');
    expect(words).toContain('Oven at 350°F. About 8 minutes until the heads are up to heat, then hold 20 minutes.');
    expect(words).toContain('3 glue mixes, at most 13 guards each. A mix stays workable for about 5 minutes.');
    expect(words).toContain('Full cure takes 30 hours in this garage.');
  });

  test('the cautions come last, with the word on local codes', () => {
    const words = text(pour({ facts: { ...work, cautions: [...CAUTIONS].slice(4, 8) } }));
    for (const caution of CAUTIONS.slice(4, 8)) expect(words).toContain(`- ${cautionText(caution, 'en')}`);
    expect(words).toMatch(/Check your local codes and the safety data sheets\.$/);
  });

  test('a reminder says what is due, for which heads, and how late it is', () => {
    expect(text({ code: 'timer-due', facts: timer('cure', 23) }).split('\n')).toEqual([
      'CURED. The glue has its full strength.',
      'It was due 23 minutes ago.',
      'K-1042-1: 30 × 3/8 oz football head',
    ]);
    expect(text({ code: 'timer-due', facts: timer('cool', 0) })).not.toContain('ago');
  });

  test('an oven left on says whether the paint still stands it', () => {
    expect(text({ code: 'timer-due', facts: timer('bake', 15) })).toContain('Powder stands 15 minutes over its hold.');
    expect(text({ code: 'timer-due', facts: timer('bake', 30) })).toContain('That is 2.5 times the hold: over-baked.');
  });

  test('a cure that stands still in the cold says so instead of a time', () => {
    const cure = timer('cure', 0);
    const course = { spells: [], since: NOW, celsius: 5, still: true };
    const cold = { ...cure, timer: { ...cure.timer, course } };
    expect(text({ code: 'timers', timers: [cold], coming: [] })).toContain('stands still, too cold');
    expect(text({ code: 'garage-set', celsius: 5, cures: [cold], leastCelsius: 10 })).toContain(
      'Below 50°F epoxy may never cure through.',
    );
  });
});

describe('the digest', () => {
  test('tells the hours, the work in order, and what is in danger once only', () => {
    const words = text({ code: 'digest', digest });
    expect(words).toMatch(/^Wednesday, November 25\.\nBench hours today: 3 hours, of which 25 minutes planned\./);
    expect(words).toContain('1. Pour 3/8 oz football head, lead: 30 heads, 25 minutes');
    expect(words).toContain('- K-1042, Ann: promised Mon, Nov 30, heading for Tue, Dec 1. ');
    expect(words.match(/K-1042, Ann: promised/g)).toHaveLength(1);
    expect(words).toContain('SHORT OF: 6/0 hooks (60° flat eye, heavy) (24 needed, 10 here)');
  });

  test('has a section only where there is something to say', () => {
    const none = {
      work: [],
      ready: [],
      due: [],
      toPost: [],
      timers: [],
      short: [],
      deliveries: [],
      questions: [],
      danger: [],
      unpaid: [],
    };
    const quiet = {
      ...digest,
      ...none,
      melt: [],
      done: [],
      leaving: null,
      unbegun: [],
      hours: 0,
      planned: 0,
      undelivered: 0,
      cancels: [],
      unaddressed: [],
    };
    expect(text({ code: 'digest', digest: quiet })).toBe(
      'Wednesday, November 25.\nNo bench hours today.\nNo work is waiting.',
    );
  });
});

test('a shop that works in Celsius is told its temperatures in Celsius', () => {
  const abroad = { ...shop, temperature: 'C' as const };
  expect(write(abroad, 'en', card(7, { code: 'too-cold', below: 10 })).text).toContain('below 10°C');
});

test('privacy tells what is kept, why, that it is encrypted, and how to get it or have it deleted', () => {
  for (const part of ['address', 'orders', 'encrypted', 'copy', 'deleted', 'ask the maker'])
    expect(text({ code: 'privacy' })).toContain(part);
});
