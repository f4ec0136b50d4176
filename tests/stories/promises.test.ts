import { describe, expect, test } from 'vitest';
import { told, type Story } from './story.ts';

const GUARDED = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const BALLS = '10 1/8 ball unpainted, size 1, lead, to Ohio';

async function ordered(voice: Story['buyer'], said: string): Promise<void> {
  await voice.says(said);
  await voice.taps('Order this');
  await voice.says('Sam Fisher, 12 Shore Road, Columbus, OH 43004');
}

async function does({ maker, later }: Story, work: string, minutes = 10): Promise<void> {
  await maker.says('bench');
  await maker.taps(work);
  await later(minutes);
  await maker.taps('Done, all good');
}

/** The first lot poured, then lost on the day of its promise. */
async function slipped(story: Story): Promise<void> {
  await ordered(story.buyer, GUARDED);
  await story.maker.says('paid K-1001');
  await story.until('18:30', 2);
  await does(story, 'Pour', 30);
  await story.until('18:30', 1);
  await story.maker.says('bench');
  await story.maker.taps('Trim');
  await story.maker.says('27 bad');
  await story.maker.says('K-1001');
}

describe('a promise that slips', () => {
  test('is told early, and whoever will not wait cancels with all of it to be given back', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await slipped(story);
      const total = desk().orders['K-1001']?.money.total ?? 0;
      await maker.taps('Tell the buyer');
      expect(buyer.sees()).toMatch(/will be late: it was promised for Thursday, December 3 and will ship/);
      expect(buyer.buttons()).toEqual(['I can wait', 'Ask the maker', 'Cancel this order']);
      await buyer.taps('Cancel this order');
      await buyer.taps('Yes, cancel it');
      expect(buyer.chat().join('\n')).toMatch(/Order K-1001 is cancelled/);
      expect(desk().orders).toEqual({});
      expect(desk().lots).toEqual({});
      expect(maker.chat().join('\n')).toMatch(new RegExp(`${(total / 100).toFixed(2)}`));
      await maker.says('unpaid');
      expect(maker.sees()).toMatch(new RegExp(`K-1001, Sam: give back \\$${(total / 100).toFixed(2)}`));
    }));

  test('may be talked over: what the buyer wants changed goes to the maker, and the order stands meanwhile', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await slipped(story);
      await maker.taps('Tell the buyer');
      await buyer.taps('Ask the maker');
      await buyer.says('Could you leave the guards out, if that is quicker?');
      expect(maker.sees()).toMatch(/Could you leave the guards out/);
      await maker.taps('Reply');
      await maker.says('Yes, then it ships Saturday.');
      expect(buyer.chat().join('\n')).toMatch(/Yes, then it ships Saturday/);
      expect(desk().orders['K-1001']).toBeDefined();
    }));
});

describe('the head at the bench', () => {
  test('stands with the buyer’s own words and photo at every step, on the lot’s card too', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await buyer.says(GUARDED);
      await buyer.sends('photo');
      await buyer.says('make that 30, sharp hooks please');
      await buyer.taps('Order this');
      const words = /In the buyer’s words: “25 quarter ounce football[^”]*” “make that 30, sharp hooks please”/;
      await maker.says('bench');
      expect(await maker.taps('Pour')).toMatch(
        /\(K-1001-1\)[\s\S]*1\/4 OZ FOOTBALL HEAD[\s\S]*In the buyer’s words: “25/,
      );
      expect(await maker.taps('Photos of K-1001, line 1 (1)')).toMatch(/^Photo 1 of 1 for K-1001/);
      expect(await maker.says('lot K-1001-1')).toMatch(words);
      expect(await maker.says('K-1001')).toMatch(words);
      await maker.taps('Done, all good');
      await maker.says('bench');
      expect(await maker.taps('Trim')).toMatch(/TRIM[\s\S]*GREEN PUMPKIN[\s\S]*In the buyer’s words: “25/);
    }));
});

describe('changes by tap', () => {
  test('of the hours: a day is closed and opened again, each shown before it is made', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, BALLS);
      await maker.says('hours');
      expect(maker.sees()).toMatch(/BENCH HOURS\n- Mon, Nov 30: 6:30 PM – 9:30 PM/);
      expect(await maker.taps('Close Mon, Nov 30')).toMatch(/^No bench hours on Monday, November 30/);
      expect(desk().daysOff).toEqual([]);
      await maker.taps('Yes, do it so');
      expect(desk().daysOff).toEqual(['2026-11-30']);
      expect(await maker.says('horas')).toMatch(/- Mon, Nov 30: closed/);
      await maker.taps('Open Mon, Nov 30');
      await maker.taps('Yes, do it so');
      expect(desk().daysOff).toEqual([]);
      await maker.says('hours friday 17:00-20:00');
      await maker.taps('Yes, do it so');
      expect(await maker.says('hours')).toMatch(/- Fri, Dec 4: 5:00 PM – 8:00 PM/);
    }));

  test('of an order’s turn and of a lot: first, on hold, released, split, begun anew', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, BALLS);
      await maker.says('K-1002');
      expect(await maker.taps('Put it first')).toMatch(/^Order K-1002 comes before all others/);
      await maker.taps('Yes, do it so');
      expect(desk().first).toEqual(['K-1002']);
      await maker.says('K-1001');
      expect(await maker.taps('Put it on hold')).toMatch(/K-1001: .* → no day/);
      await maker.taps('Yes, do it so');
      expect(await maker.says('bench')).not.toMatch(/football/);
      await maker.says('sigue K-1001');
      await maker.taps('Yes, do it so');
      expect(desk().held).toEqual([]);
      await maker.says('lote K-1001-1');
      await maker.taps('Split off 12 heads');
      await maker.taps('Yes, do it so');
      expect(desk().lots).toMatchObject({ 'K-1001-1': { heads: 13 }, 'K-1001-1b': { heads: 12 } });
      await does(story, 'Pour 1/4');
      await maker.says('lot K-1001-1');
      await maker.taps('All scrap');
      await maker.taps('Yes, do it so');
      expect(desk().lots['K-1001-1']).toBeUndefined();
      expect(Object.values(desk().lots).find(({ scrap }) => scrap > 0)).toMatchObject({ heads: 13, good: 0 });
    }));

  test.each([
    ['off tonight', /^No bench hours on Monday, November 30 from 5:00 PM on\./, /Mon, Nov 30: closed/],
    ['off tuesday evening', /^No bench hours on Tuesday, December 1 from 5:00 PM on\./, /Tue, Dec 1: closed/],
    ['off tuesday after 8pm', /from 8:00 PM on/, /Tue, Dec 1: 6:30 PM – 8:00 PM/],
    ['off tuesday after 8', /from 8:00 PM on/, /Tue, Dec 1: 6:30 PM – 8:00 PM/],
    ['off saturday morning', /Saturday, December 5 until 12:00 PM/, /Sat, Dec 5: 12:00 PM – 2:00 PM/],
    ['off saturday until 10', /Saturday, December 5 until 10:00 AM/, /Sat, Dec 5: 10:00 AM – 2:00 PM/],
    ['off tuesday 7:00-8:00 pm', /from 7:00 PM to 8:00 PM/, /Tue, Dec 1: 6:30 PM – 7:00 PM, 8:00 PM – 9:30 PM/],
    ['libre martes desde las 20', /from 8:00 PM on/, /Tue, Dec 1: 6:30 PM – 8:00 PM/],
    ['libre el martes por la noche', /from 5:00 PM on/, /Tue, Dec 1: closed/],
    ['libre mañana', /^No bench hours on Tuesday, December 1\.$/m, /Tue, Dec 1: closed/],
  ])('“%s” is away for just that, once it is confirmed', (said, would, hours) =>
    told(async ({ buyer, maker }) => {
      await ordered(buyer, BALLS);
      expect(await maker.says(said)).toMatch(would);
      expect(await maker.says('hours')).not.toMatch(hours);
      await maker.taps('Yes, do it so');
      expect(await maker.says('hours')).toMatch(hours);
    }),
  );

  test.each([
    ['extra tonight 22:00-23:00', /^Extra bench hours on Monday, November 30, 10:00 PM to 11:00 PM\./],
    ['hours this evening 18:00-20:00', /^Bench hours on Monday, November 30 from 6:00 PM to 8:00 PM, and no others\./],
    ['extra esta noche de 22 a 23', /^Extra bench hours on Monday, November 30, 10:00 PM to 11:00 PM\./],
  ])('“%s” is of today', (said, would) =>
    told(async ({ maker }) => {
      expect(await maker.says(said)).toMatch(would);
    }),
  );

  test.each([
    ['off 2020-01-01', /the day is over/],
    ['libre 31 de febrero', /Which day\?/],
    ['off', /Which day\?/],
    ['extra friday 15:00-13:00', /from when to when\?/],
    ['hours friday', /from when to when\?/],
    ['first K-99999', /no open order K-99999/],
    ['pausa', /Which order\?/],
    ['remake K-1001-1', /Nothing of K-1001-1 is poured yet/],
    ['estante K-9', /Which lot\?/],
    ['split K-1001-1', /how many heads/],
    ['partir K-1001-1 400', /K-1001-1 has 10 heads for its order/],
    ['join K-1001-1', /Nothing else of its order is like K-1001-1/],
    ['shelve K-1001-1', /K-1001-1 is not finished: pour comes next/],
    ['split K-1001-7 2', /There is no lot K-1001-7/],
    ['hold K-1001-1', /Order K-1001 is on hold/],
  ])('a slip in “%s” gets a clear sentence and changes nothing', (said, answer) =>
    told(async ({ buyer, maker, desk }) => {
      await ordered(buyer, BALLS);
      const { lots, daysOff, extraHours, first, held } = desk();
      expect(await maker.says(said)).toMatch(answer);
      expect(desk()).toMatchObject({ lots, daysOff, extraHours, first, held });
    }),
  );
});
