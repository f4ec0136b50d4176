import { describe, expect, test } from 'vitest';
import { told, type Story } from './story.ts';

const HUNDRED = '100 1/4 football brown 3/0 brown guard no dressing wire keeper lead to Ohio';
const SIXTY = '60 1/4 football red 3/0 brown guard no dressing wire keeper lead to Ohio';

async function ordered(voice: Story['buyer'], said: string): Promise<void> {
  await voice.says(said);
  await voice.taps('Order this');
  await voice.says('Sam Fisher, 12 Shore Road, Columbus, OH 43004');
}

async function does({ maker, later }: Story, work: string, minutes = 10): Promise<string> {
  await maker.says('bench');
  await maker.taps(work);
  await later(minutes);
  return maker.taps('Done, all good');
}

/** The first order up to its guards; both orders' heads are poured together. */
async function toGuards(story: Story): Promise<void> {
  await story.until('18:30');
  for (const work of ['Pour', 'Trim', 'Paint brown', 'Clear eyes']) await does(story, work);
  for (let load = 0; load < 3; load++) await does(story, 'Bake', 26);
  await story.later(31);
}

describe('spare heads', () => {
  test('take no guards that are put aside for another order: they are left out, which is said before and after', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, HUNDRED);
      await ordered(other, SIXTY);
      await maker.says('count brown guards 160');
      await toGuards(story);
      expect(await maker.says('bench')).toMatch(
        /Set guards: 100 heads\. \d+ heads over stay out: what they would take is put aside for other orders/,
      );
      expect(await maker.taps('Set guards: 100')).toMatch(/\d+ HEADS OVER STAY OUT/);
      await story.later(20);
      expect(await maker.taps('Done, all good')).toMatch(
        /K-1001-1: 100 heads good\.[\s\S]*Left out, as nothing was free/,
      );
      expect(await maker.says('stock')).toMatch(/brown guards: 60, 60 put aside/);
      const lot = desk().lots['K-1001-1'];
      expect((lot?.good ?? 0) + (lot?.scrap ?? 0)).toBeGreaterThan(100);
      expect(await maker.says('queue')).not.toContain('As the bench stands now');
    }));

  test('are guarded where guards are free for them', () =>
    told(async (story) => {
      const { buyer, other, maker } = story;
      await ordered(buyer, HUNDRED);
      await ordered(other, SIXTY);
      await maker.says('count brown guards 163');
      await toGuards(story);
      expect(await maker.says('bench')).toMatch(/Set guards: 103 heads\. \d heads? over stay/);
    }));
});

test('work for which there is not enough is said so before it is begun, and what was taken beyond the count when it is done', () =>
  told(async (story) => {
    const { buyer, maker } = story;
    await ordered(buyer, '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
    await story.until('18:30');
    await maker.says('count 60 degree 3/0 hooks 10');
    expect(await maker.says('bench')).toMatch(
      /Pour 1\/4 oz football head, lead: 27 heads\. 3\/0 hooks .* for 10 of 27/,
    );
    expect(await maker.taps('Pour')).toMatch(/3\/0 HOOKS .* FOR 10 OF 27\nIf more is there, count it before you start/);
    await story.later(30);
    expect(await maker.taps('Done, all good')).toMatch(/Taken beyond the count: 17 3\/0 hooks/);
    expect(await maker.says('journal')).toContain('+17');
  }));
