import { describe, expect, test } from 'vitest';
import { told, type Story } from './story.ts';

const GUARDED = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

async function ordered({ buyer }: Story): Promise<void> {
  await buyer.says(GUARDED);
  await buyer.taps('Order this');
  await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH 43004');
}

/** Messages of the maker's chat that are pictures with the week's words under them. */
const weeksIn = ({ rehearsal }: Story): number =>
  rehearsal.chats
    .messagesOf(101)
    .filter(({ photo, caption }) => photo !== undefined && (caption ?? '').startsWith('THE WEEK')).length;

describe('the week', () => {
  test('is a picture with the plan in words under it, for one word or one tap', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story);
      const week = await maker.says('week');
      expect(week).toMatch(/^THE WEEK: Mon, Nov 30 to Sun, Dec 6\nMon, Nov 30: 6:30 PM Pour 1\/4 oz football head/);
      expect(week).toMatch(/27 heads cure until/);
      expect(week).toContain('ships K-1001');
      expect(week).toContain('promised K-1001');
      expect(weeksIn(story)).toBe(1);
      await maker.taps('Queue');
      expect(await maker.taps('The week')).toBe(week);
      expect(weeksIn(story)).toBe(2);
    }));

  test('moves with what is done at the bench', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story);
      expect(await maker.says('week')).toMatch(/Pour/);
      await story.until('18:30');
      await maker.says('bench');
      await maker.taps('Pour');
      await story.later(20);
      await maker.taps('Done, all good');
      const after = await maker.says('week');
      expect(after).not.toMatch(/Pour/);
      expect(after).toMatch(/^THE WEEK[^\n]*\nMon, Nov 30: 6:50 PM Trim/);
    }));

  test('with nothing to do says so day by day', () =>
    told(async (story) => {
      expect(await story.maker.says('semana')).toMatch(/Mon, Nov 30: nothing planned\n.*\n.*\n.*\nFri, Dec 4: off/);
      expect(weeksIn(story)).toBe(1);
    }));

  test('is for the maker only', () =>
    told(async (story) => {
      expect(await story.buyer.says('week')).toMatch(/for the maker/);
      await story.buyer.forges('week|-|0|-');
      expect(story.buyer.sees()).not.toMatch(/THE WEEK/);
    }));
});
