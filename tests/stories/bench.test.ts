import { describe, expect, test } from 'vitest';
import { told, type Story } from './story.ts';

const GUARDED = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

async function ordered({ buyer }: Story, said = GUARDED): Promise<void> {
  await buyer.says(said);
  await buyer.taps('Order this');
  await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH 43004');
}

/** Starts the next work by name and taps it done, all good. */
async function does({ maker, later }: Story, work: string, minutes = 10): Promise<string> {
  await maker.taps(work);
  await later(minutes);
  return maker.taps('Done, all good');
}

async function toTheOven(story: Story): Promise<void> {
  await story.until('18:30');
  await story.maker.says('bench');
  for (const work of ['Pour', 'Trim', 'Paint', 'Clear eyes']) await does(story, work);
  await story.maker.taps('Bake');
}

describe('a day at the bench', () => {
  test('from the pour to the parcel, with every timer', () =>
    told(async (story) => {
      const { maker, buyer, toNext, desk } = story;
      await ordered(story);
      await toTheOven(story);
      expect(maker.sees()).toContain('350°F');
      await toNext();
      expect(maker.sees()).toMatch(/up to heat/i);
      await toNext();
      expect(maker.sees()).toMatch(/^BAKE|oven/i);
      await maker.taps('Done');
      await toNext();
      expect(maker.sees()).toMatch(/cool/i);
      await maker.says('bench');
      expect(await maker.taps('Set guards')).toMatch(/nitrile/i);
      await toNext();
      expect(maker.sees()).toMatch(/glue|mix/i);
      await maker.taps('Done, all good');
      await story.until('06:30', 1);
      expect(maker.chat().join('\n')).toMatch(/HANDLING|handled/i);
      await story.until('07:00');
      expect(maker.sees()).toContain('Bench hours today');
      await story.until('06:45', 1);
      expect(maker.sees()).toMatch(/cured/i);
      await maker.says('bench');
      await does(story, 'Pack');
      expect(buyer.sees()).toContain('packed');
      await maker.taps('Handed in');
      await maker.says('TRACK-0001');
      expect(buyer.sees()).toContain('TRACK-0001');
      expect(desk().orders).toEqual({});
      expect(desk().lots).toEqual({});
    }));

  test('an oven reminds every five minutes until it is answered, through quiet hours', () =>
    told(async (story) => {
      const { maker, later } = story;
      await ordered(story);
      await story.until('21:20');
      await maker.says('bench');
      for (const work of ['Pour', 'Trim', 'Paint', 'Clear eyes']) await does(story, work, 1);
      await maker.taps('Bake');
      await later(40);
      const told22 = maker.chat().filter((text) => text.startsWith('BAKE')).length;
      await later(5);
      await later(5);
      await later(2);
      expect(maker.chat().filter((text) => text.startsWith('BAKE')).length).toBe(told22 + 2);
      await maker.taps('5 more minutes');
      await later(4);
      const before = maker.chat().length;
      await later(2);
      expect(maker.chat().length).toBeGreaterThan(before);
      await maker.taps('Done');
      const after = maker.chat().length;
      await later(30);
      expect(maker.chat().slice(after).join()).not.toMatch(/BAKE/);
    }));

  test('orders of one mold are poured in one session, and scrap that makes one short is poured again', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story);
      await story.other.says('10 quarter ounce football brown, 3/0, no guard, no skirt, to Ohio');
      await story.other.taps('Order this');
      await story.until('18:30');
      expect(await maker.says('bench')).toMatch(/Pour .*38 heads/);
      await maker.taps('Pour');
      await maker.taps('Count K-1002-1');
      await maker.taps('4 bad');
      await maker.taps('Done');
      expect(desk().lots['K-1001-1']).toMatchObject({ heads: 25, good: 27, scrap: 0 });
      expect(desk().lots['K-1002-1']).toMatchObject({ heads: 7, good: 7, scrap: 4 });
      expect(desk().lots['K-1002-1b']).toMatchObject({ heads: 3, good: 0 });
    }));

  test('a mis-tap is taken back, and taking back twice takes back nothing more', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story);
      await maker.says('bench');
      await maker.taps('Pour');
      await maker.taps('3 bad');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 24, scrap: 3 });
      await maker.taps('Undo');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 0, scrap: 0 });
      expect(await maker.says('undo')).toMatch(/nothing/i);
      await maker.says('bench');
      await maker.taps('Done: Pour');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 27, scrap: 0 });
    }));

  test('the buyer hears when work begins and sees how far it is', () =>
    told(async (story) => {
      const { maker, buyer } = story;
      await ordered(story);
      await maker.says('bench');
      await maker.taps('Pour');
      expect(buyer.sees()).toContain('K-1001');
      expect(await buyer.says('where is my order')).toMatch(/K-1001/);
      await buyer.taps('Order K-1001');
      expect(buyer.sees()).toMatch(/pour/i);
    }));

  test('after a night switched off, what fell due is said at once, in one message, with how late it is', () =>
    told(async (story) => {
      const { maker, later } = story;
      await ordered(story);
      await story.until('18:30');
      await maker.says('bench');
      for (const work of ['Pour', 'Trim', 'Paint', 'Clear eyes']) await does(story, work, 5);
      await maker.taps('Bake');
      const before = maker.chat().length;
      await later(13 * 60);
      const news = maker.chat().slice(before);
      expect(news.filter((text) => /BAKE DONE|UP TO HEAT/.test(text))).toHaveLength(1);
      expect(news.join('\n')).toMatch(/hours/);
    }));

  test('a colder garage makes a running cure last longer', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story);
      await toTheOven(story);
      await story.later(40);
      await maker.taps('Done');
      await story.later(31);
      await maker.says('bench');
      await does(story, 'Set guards');
      const due = () => Object.values(desk().timers).find(({ kind }) => kind === 'cure')?.dueAt ?? 0;
      const before = due();
      await maker.says('garage 55 F');
      expect(due()).toBeGreaterThan(before);
      await maker.says('garage 40 F');
      expect(maker.chat().find((text) => text.includes('counts as 40°F'))).toMatch(/cold/i);
    }));

  test('the ready reckoner answers for any head and number', () =>
    told(async ({ maker }) => {
      const said = await maker.says('reckon 40 3/8 football black');
      expect(said).toMatch(/tin/i);
      expect(said).toMatch(/melt/i);
    }));
});

describe('the digest', () => {
  test('comes once a local day, at the shop’s hour, with what to do', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story);
      await story.until('06:59', 1);
      const quiet = maker.chat().filter((text) => text.includes('ench hours today')).length;
      await story.until('07:00');
      await story.until('07:01');
      const mornings = maker.chat().filter((text) => text.includes('ench hours today'));
      expect(mornings).toHaveLength(quiet + 1);
      expect(mornings.at(-1)).toMatch(/pour/i);
      expect(mornings.at(-1)).toContain('K-1001');
    }));

  test('a delivery is put away with one tap, once', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await maker.says('stock');
      await maker.taps('Arrived: 200 6/0');
      expect(desk().onHand['hook:60-flat-heavy:6/0']).toBe(290);
      await maker.forges('arrived|-|0|hook:60-flat-heavy:6/0@2026-12-03');
      expect(desk().onHand['hook:60-flat-heavy:6/0']).toBe(290);
    }));
});
