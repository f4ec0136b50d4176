import { describe, expect, test } from 'vitest';
import { told, type Story } from './story.ts';

const GREEN = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const BLACK = '20 quarter ounce football black, 3/0, brown guard, no skirt, to Ohio';
const HEAVY = '40 half ounce flipping black, 4/0, black guard, no skirt, to Ohio';

async function ordered({ buyer }: Story, ...lines: readonly string[]): Promise<void> {
  for (const line of lines) {
    await buyer.says(line);
    await buyer.taps('Order this');
  }
}

/** Starts work from the newest bench list and ends it with all good. */
async function does(story: Story, work: string): Promise<void> {
  await story.maker.says('bench');
  await story.maker.taps(work);
  await story.later(5);
  await story.maker.taps('Done, all good');
}

/** How many heads the week has for a step, all days together. */
const planned = (week: string, step: string): number =>
  [...week.matchAll(new RegExp(`${step} (?:[^;\\n]*, )?(\\d+)`, 'g'))].reduce(
    (sum, [, heads]) => sum + Number(heads),
    0,
  );

describe('what is said at the bench', () => {
  test('“3 bad” just after “done” counts the work that was just done', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN);
      await does(story, 'Pour');
      expect(await maker.says('3 bad')).toMatch(/Pour: done\.[\s\S]*Scrapped: 3\.[\s\S]*24 heads good/);
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 24, scrap: 3 });
    }));

  test('of two lots poured together it is asked which one the bad heads were', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN, BLACK);
      await does(story, 'Pour');
      expect(await maker.says('2 bad')).toMatch(/Which\?/);
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 27, scrap: 0 });
      expect(await maker.taps('K-1002-1: 2 bad')).toMatch(/^Pour: done\.[\s\S]*Scrapped: 2 \(K-1002-1: 2\)\./);
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 27, scrap: 0 });
      expect(desk().lots['K-1002-1']).toMatchObject({ good: 20, scrap: 2 });
    }));

  test('hours later it is no longer about that work', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN);
      await does(story, 'Pour');
      await story.later(90);
      expect(await maker.says('3 bad')).toMatch(/Nothing is running/);
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 27 });
    }));

  test('is answered below the words, though the card of that work stands further up', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story, GREEN);
      await does(story, 'Pour');
      await maker.says('undo');
      await maker.says('done');
      expect(maker.chat().at(-1)).toMatch(/^Pour: done/);
    }));

  test('work that runs again after “undo” has its buttons at hand', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN);
      await does(story, 'Pour');
      expect(await maker.says('undo')).toMatch(/^POUR/);
      await maker.taps('3 bad');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 24, scrap: 3 });
    }));
});

describe('undo', () => {
  test('after money it first says which work it would take back', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN);
      await does(story, 'Pour');
      await maker.says('paid K-1001 20');
      expect(await maker.says('undo')).toMatch(/last work noted was “pour” done/);
      expect(desk().lots['K-1001-1']?.good).toBe(27);
      await maker.taps('Undo');
      expect(desk().lots['K-1001-1']?.good).toBe(0);
      expect(desk().orders['K-1001']?.ledger).toHaveLength(1);
    }));

  test('of work of hours ago says what it is before it takes it back', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN);
      await does(story, 'Pour');
      await maker.says('paid K-1001 20');
      await story.later(180);
      expect(await maker.says('undo')).toMatch(/last work noted was “pour” done, Mon 5:0\d PM/);
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 27 });
      await maker.taps('Undo');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 0 });
    }));
});

describe('heads poured again', () => {
  test('come first while the mold is hot, so that a few bad ones break no promise', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story, GREEN, BLACK, HEAVY);
      await story.until('18:30');
      await maker.says('bench');
      await maker.taps('Pour 1/4 oz football');
      await story.later(34);
      expect(await maker.says('4 bad K-1001-1')).toMatch(/Scrapped: 4 \(K-1001-1: 4\)\./);
      await maker.taps('Done');
      expect(maker.sees()).toMatch(/Too few are left: 2 heads to be poured again, as lot K-1001-1b/);
      expect(maker.chat().join('\n')).not.toMatch(/in danger/);
    }));
});

describe('the oven', () => {
  test('“5 more” before the bake is over adds to it and never cuts it short', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story, GREEN);
      for (const work of ['Pour', 'Trim', 'Paint', 'Clear eyes']) await does(story, work);
      await maker.says('bench');
      await maker.taps('Bake');
      const bake = () => Object.values(desk().timers).find(({ kind }) => kind === 'bake')?.dueAt ?? 0;
      const before = bake();
      await maker.says('5 more');
      expect(bake()).toBe(before + 5 * 60_000);
    }));

  test('reminds of the heads on the rack, not of those that did not fit', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story, GREEN, BLACK.replace('20', '30'));
      for (const work of ['Pour', 'Pour', 'Trim', 'Paint green', 'Paint black', 'Clear eyes']) await does(story, work);
      await maker.says('bench');
      await maker.taps('Bake');
      const rack = /(\d+) HEADS \(K-1002-1\)/.exec(maker.sees())?.[1];
      await story.later(40);
      expect(rack).toBe('21');
      expect(maker.sees()).toContain('BAKE DONE');
      expect(maker.sees()).toContain('K-1002-1: 21 × ');
      await maker.taps('Done');
      await story.until('07:00', 1);
      expect(await maker.says('digest')).toMatch(/Bake 350°F: 11 heads/);
    }));
});

describe('work in several evenings', () => {
  test('is counted once in the week, and its metal once in the digest', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story, GREEN, BLACK, HEAVY);
      await story.until('21:00');
      expect(planned(await maker.says('week'), 'Pour')).toBe(27 + 22 + 43);
      await story.until('07:00', 1);
      const grams = Number(/To melt: ([\d,]+) g/.exec(await maker.says('digest'))?.[1]?.replace(',', ''));
      expect(grams).toBeLessThan(2.5 * (27 + 22 + 43) * 0.5 * 28.35);
    }));

  test('eyes come first after the paint, while the heads are hot', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story, GREEN, BLACK, HEAVY);
      await story.buyer.says('10 quarter ounce ball white, no guard, to Ohio');
      await story.buyer.taps('As usual');
      await story.buyer.taps('Order this');
      for (const work of ['Pour 1/4 oz football', 'Trim']) await does(story, work);
      await does(story, 'Paint green');
      expect(maker.buttons()[0]).toMatch(/Clear eyes: 27/);
    }));
});

describe('a garage that is too cold', () => {
  test('is said to be, though nothing cures in it yet', () =>
    told(async (story) => {
      expect(await story.maker.says('garage 40')).toMatch(/Below 50°F epoxy may never cure through: set no guards/);
    }));

  test('endangers the promise of what stands still in it, however long it has stood', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story, '25 quarter ounce football unpainted, 3/0, black guard, no skirt, to Ohio');
      for (const work of ['Pour', 'Trim', 'Set guards']) await does(story, work);
      await maker.says('garage 40');
      await story.until('19:00', 4);
      expect(maker.chat().join('\n')).toMatch(/K-1001 of Sam is in danger/);
      expect(await maker.says('K-1001')).toMatch(/Cure runs to (?:Sun|Mon|Tue)/);
    }));
});

describe('a change', () => {
  test('that was made already says so when it is tapped again, and tells hours as all others are told', () =>
    told(async (story) => {
      const { maker } = story;
      expect(await maker.says('extra friday 13:00-15:00')).toMatch(/Friday, December 4, 1:00 PM to 3:00 PM/);
      await maker.taps('Yes, do it so');
      await maker.forges('apply|-|0|extra 2026-12-04 13:00 15:00');
      expect(maker.sees()).toMatch(/changes nothing/);
    }));

  test('words that were meant for a buyer find the button to answer with', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await buyer.says('ask the maker');
      await buyer.says('Do you ship in padded envelopes?');
      await maker.says('Yes, always');
      expect(maker.buttons()[0]).toBe('Reply');
      await maker.taps('Reply');
      await maker.says('Yes, always');
      expect(buyer.chat().join('\n')).toContain('Yes, always');
    }));
});

describe('words that are no word', () => {
  test('are answered in one line, and a word without its number asks for that number', () =>
    told(async ({ maker }) => {
      expect(await maker.says('asdf')).toMatch(/^I did not get that, and nothing has changed\.[^\n]*$/);
      expect(await maker.says('help')).toMatch(/^bench: /);
      expect(await maker.says('oven')).toMatch(/What does the oven really have\? Type it as “oven 350°F”/);
      expect(await maker.says('lot K-1')).toMatch(/K-1\b/);
    }));
});
