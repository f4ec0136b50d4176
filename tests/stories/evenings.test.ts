import { describe, expect, test } from 'vitest';
import { openStory, told, type Story } from './story.ts';

const GUARDED = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const PLAIN = '10 quarter ounce football brown, 3/0, no guard, no skirt, to Ohio';
const BALLS = '10 1/8 ball unpainted, size 1, lead, to Ohio';

async function ordered(voice: Story['buyer'], said: string): Promise<void> {
  await voice.says(said);
  await voice.taps('Order this');
  await voice.says('Sam Fisher, 12 Shore Road, Columbus, OH 43004');
}

/** Starts the next work by name and taps it done, all good. */
async function does({ maker, later }: Story, work: string, minutes = 10): Promise<string> {
  await maker.says('bench');
  await maker.taps(work);
  await later(minutes);
  return maker.taps('Done, all good');
}

const said = (voice: Story['maker'], pattern: RegExp): number =>
  voice.chat().filter((text) => pattern.test(text)).length;

describe('an evening', () => {
  test('with three orders: one pour a mold, one load in the oven, and the close-down card at the end of the hours', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, '25 quarter ounce football green pumpkin, 3/0, no guard, no skirt, to Ohio');
      await ordered(other, PLAIN);
      await ordered(other, '10 quarter ounce football green pumpkin, 3/0, no guard, no skirt, to Ohio');
      await story.until('18:30');
      await does(story, 'Pour', 40);
      expect(Object.values(desk().lots).map(({ good }) => good)).toEqual([27, 11, 11]);
      await does(story, 'Trim');
      expect(await maker.says('bench')).toMatch(/Paint green pumpkin: 38 heads\n.*Paint brown: 11 heads/);
      await does(story, 'Paint green', 20);
      await does(story, 'Paint brown', 8);
      await does(story, 'Clear eyes', 5);
      await maker.says('bench');
      await maker.taps('Bake');
      expect(Object.values(desk().sessions)).toMatchObject([
        { step: 'bake', shares: [{ heads: 27 }, { heads: 11 }, { heads: 10 }] },
      ]);
      await story.until('21:30');
      const closing = maker.chat().filter((text) => text.startsWith('Closing down for today'));
      expect(closing).toHaveLength(1);
      expect(closing[0]).toMatch(/OVEN IS STILL ON/);
      expect(closing[0]).toMatch(/dross/i);
      await story.later(5);
      expect(said(maker, /^Closing down for today/)).toBe(1);
    }));

  test('in which a whole lot is scrap: it begins anew, the maker owns up to the later day, and the buyer waits', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      const promised = desk().orders['K-1001']?.promise.ships ?? '';
      await story.until('18:30', 2);
      await does(story, 'Pour', 30);
      await story.until('18:30', 1);
      await maker.says('bench');
      await maker.taps('Trim');
      await maker.says('27 bad');
      expect(Object.values(desk().lots)).toMatchObject([{ id: 'K-1001-1b', heads: 25, good: 0, scrap: 27 }]);
      expect(maker.chat().join('\n')).toMatch(/K-1001 of Sam is in danger[\s\S]*WHAT IT WAITS ON/);
      await maker.says('K-1001');
      await maker.taps('Tell the buyer');
      expect(buyer.sees()).toMatch(/will be late/);
      await buyer.taps('I can wait');
      expect(desk().orders['K-1001']?.promise.ships).toMatch(/^2026-12/);
      expect((desk().orders['K-1001']?.promise.ships ?? '') > promised).toBe(true);
      expect(maker.sees()).toMatch(/waits for order K-1001/);
      const before = maker.chat().length;
      await story.later(1);
      expect(maker.chat().slice(before).join()).not.toMatch(/danger/);
    }));

  test('in which the power fails with the oven on: the first thing said afterwards is how late the rack is', async () => {
    const { story, close } = await openStory({}, Infinity);
    try {
      const { buyer, maker, rehearsal } = story;
      await ordered(buyer, GUARDED);
      await story.until('18:30');
      for (const work of ['Pour', 'Trim', 'Paint', 'Clear eyes']) await does(story, work, 5);
      await maker.says('bench');
      await maker.taps('Bake');
      expect(rehearsal.chats.messagesOf(101).length).toBeGreaterThan(0);
      await story.restart();
      await story.later(75);
      expect(maker.chat().join('\n')).toMatch(/I was off for 1 hour 15 minutes/);
      expect(maker.sees()).toMatch(/BAKE DONE[\s\S]*over-baked|over-baked[\s\S]*BAKE DONE/);
      await story.restart();
      await story.later(5);
      expect(maker.sees()).toMatch(/^BAKE DONE/);
      await maker.taps('Done');
      const quiet = maker.chat().length;
      await story.later(5);
      expect(maker.chat().slice(quiet).join()).not.toMatch(/BAKE/);
    } finally {
      await close();
    }
  });
});

describe('hands that forget, slip or come back late', () => {
  test('a tap forgotten until the next evening hardly changes what the bench believes of its pace', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await story.until('18:30');
      await does(story, 'Pour', 32);
      const known = desk().learned.steps['pour']?.mean ?? 0;
      await maker.says('bench');
      await maker.taps('Trim');
      await story.until('19:00', 1);
      await maker.taps('Done, all good');
      expect(Math.abs(known)).toBeLessThan(0.2);
      expect(desk().learned.steps['trim']?.mean).toBeLessThan(0.5);
      expect(await maker.says('minutes')).toMatch(/trim: 2 \+ 0\.3 \(timed 0 times\)/);
    }));

  test('a button tapped twice counts once', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await maker.says('bench');
      await maker.taps('Pour');
      await maker.forges('done|S1|0|K-1001-1=2');
      await maker.forges('done|S1|0|K-1001-1=2');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 25, scrap: 2 });
      expect(maker.notices().at(-1)).toBe('That is done already.');
    }));

  test('taps on cards of three days ago do what still can be done and say so of the rest', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await maker.says('bench');
      const start = 'start|-|0|pour/K-1001-1/1/27';
      await maker.forges(start);
      await story.until('19:00', 3);
      expect(await maker.forges(start)).toMatch(/^That runs already: pour, K-1001-1/);
      await maker.forges('done|S1|0|-');
      expect(desk().lots['K-1001-1']?.good).toBe(27);
      await story.until('19:00', 3);
      await maker.forges('done|S1|0|-');
      await maker.forges('more|T1|0|-');
      expect(desk().lots['K-1001-1']?.good).toBe(27);
    }));

  test('a start button of Monday does not start on Thursday what came since, and says what can be started', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await does(story, 'Pour', 30);
      await maker.taps('Trim: 27');
      await maker.taps('Done, all good');
      await story.until('18:30', 3);
      await ordered(other, BALLS);
      await does(story, 'Pour 1/8', 10);
      const seen = await maker.forges('start|-|0|trim/K-1001-1/1/27');
      expect(seen).toMatch(/^That is done already: trim, K-1001-1/);
      expect(seen).toMatch(/CAN BE STARTED\n- Trim: 12 heads/);
      expect(desk().sessions).toEqual({});
      await maker.taps('Trim: 12');
      expect(Object.values(desk().sessions)).toMatchObject([
        { step: 'trim', shares: [{ lot: 'K-1002-1', heads: 12 }] },
      ]);
    }));

  test('a start button does not take along heads that joined after it was shown', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await maker.says('bench');
      await ordered(other, PLAIN);
      expect(await maker.taps('Pour 1/4 oz football head, lead: 27')).toMatch(/not the same heads any more/);
      expect(desk().sessions).toEqual({});
      await maker.taps('Pour 1/4 oz football head, lead: 38');
      expect(Object.values(desk().sessions)).toMatchObject([{ step: 'pour' }]);
    }));
});

describe('words at the bench', () => {
  test('do what the buttons do, and ask which when more than one is meant', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      expect(await maker.says('done')).not.toMatch(/Nothing is running/);
      await ordered(buyer, GUARDED);
      expect(await maker.says('done')).toMatch(/Nothing is running/);
      await maker.says('start');
      expect(Object.values(desk().sessions)).toMatchObject([{ step: 'pour' }]);
      await maker.says('3 bad');
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 24, scrap: 3 });
      await ordered(other, PLAIN);
      expect(await maker.says('start')).toMatch(/Which\?/);
      await maker.taps('Pour');
      expect(await maker.says('2 bad')).toMatch(/Which\?/);
      await maker.taps('K-1002-1: 2 bad');
      await maker.says('done');
      expect(desk().lots['K-1002-1']).toMatchObject({ scrap: 2 });
    }));
});

describe('heads made over', () => {
  test('go on the shelf when the order is packed and serve the next one, which ships sooner at the same price', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, BALLS);
      for (const work of ['Pour', 'Trim']) await does(story, work);
      await maker.says('bench');
      expect(await maker.taps('Pack')).toContain('INTO THE PARCEL: 10. ON THE SHELF: 2.');
      await maker.taps('Done, all good');
      expect(maker.chat().at(-2)).toContain('K-1001-1: 10 heads good. Ready for the post. On the shelf: 2 heads');
      expect(Object.values(desk().shelf)).toEqual([2]);
      expect(await maker.says('stock')).toMatch(/2 × 1\/8 oz ball head/);
      await ordered(other, BALLS);
      expect(maker.chat().join('\n')).toMatch(/On the shelf already, to be packed: 2 heads/);
      expect(desk().shelf).toEqual({});
      expect(desk().lots).toMatchObject({ 'K-1002-1': { heads: 8, good: 0 }, 'K-1002-1s': { heads: 2, good: 2 } });
      expect(desk().orders['K-1002']).toMatchObject({ state: 'accepted' });
      expect(await maker.says('bench')).toMatch(/Pack: 2 heads/);
      await other.says('my orders');
      await other.taps('Order K-1002');
      await other.taps('Cancel this order');
      await other.taps('Yes, cancel it');
      expect(Object.values(desk().shelf)).toEqual([2]);
      await maker.taps('Handed in');
      await maker.says('TRACK-0001');
      expect(Object.values(desk().shelf)).toEqual([2]);
    }));

  test('come back off the shelf when the packing is taken back, unless another order has them by then', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, BALLS);
      for (const work of ['Pour', 'Trim', 'Pack']) await does(story, work);
      await maker.says('undo');
      expect(desk().shelf).toEqual({});
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 12, over: 0 });
      await maker.says('bench');
      await maker.taps('Done: Pack');
      await ordered(other, BALLS);
      expect(await maker.says('undo')).toMatch(/nothing to take back/);
      expect(desk().lots['K-1001-1']).toMatchObject({ good: 10, over: 2 });
    }));
});

describe('changes', () => {
  test('show what they would do to promises before they are made', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, BALLS);
      expect(await maker.says('off today')).toMatch(/No bench hours on Monday, November 30\.[\s\S]*K-1001: .* → /);
      expect(desk().daysOff).toEqual([]);
      await maker.taps('Yes, do it so');
      expect(desk().daysOff).toEqual(['2026-11-30']);
      expect(await maker.says('extra 2026-12-01 9:00-11:00')).toMatch(/9:00|09:00/);
      await maker.taps('Yes, do it so');
      expect(desk().extraHours).toEqual([{ date: '2026-12-01', from: '09:00', to: '11:00' }]);
      expect(await maker.says('hold K-1001')).toMatch(/on hold[\s\S]*no day/);
      await maker.taps('Yes, do it so');
      expect(await maker.says('bench')).toMatch(/Nothing to start/);
      await maker.says('release K-1001');
      await maker.taps('Yes, do it so');
      expect(await maker.says('bench')).toMatch(/Pour/);
      expect(await maker.says('off someday')).toMatch(/Which day/);
      expect(await maker.says('first K-9999')).toMatch(/changes nothing/);
    }));

  test('to lots: one is split, and its card shows its history where it stands', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await maker.says('split K-1001-1 10');
      await maker.taps('Yes, do it so');
      expect(desk().lots).toMatchObject({ 'K-1001-1': { heads: 15 }, 'K-1001-1b': { heads: 10 } });
      expect(await maker.says('lot K-1001-1')).toMatch(/Nothing done yet/);
      const cards = () => maker.chat().filter((text) => text.startsWith('Lot K-1001-1 of order K-1001'));
      await does(story, 'Pour');
      expect(cards()).toHaveLength(1);
      expect(cards()[0]).toMatch(/HISTORY\n- Pour: Mon 5:\d\d PM to Mon 5:\d\d PM/);
    }));
});

describe('glue', () => {
  test('has its pot life counted down mix by mix, with the guards that are left', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await ordered(buyer, '25 quarter ounce football unpainted, 3/0, black guard, no skirt, to Ohio');
      for (const work of ['Pour', 'Trim']) await does(story, work);
      await maker.says('bench');
      await maker.taps('Set guards');
      expect(await maker.says('timers')).toMatch(/Glue mix; K-1001-1, .*; at most 16 guards in this mix, 11 after it/);
      await story.toNext();
      expect(maker.sees()).toMatch(/GLUE MIX OVER[\s\S]*About 11 guards are still to be set/);
      expect(await maker.taps('Fresh mix')).toMatch(
        /^Fresh mix: at most 11 guards, until .*\. It is the last: none are left after it\.$/,
      );
      await story.toNext();
      expect(maker.chat().filter((text) => text.startsWith('GLUE MIX OVER')).length).toBeGreaterThan(0);
      expect(maker.sees()).toMatch(/GLUE MIX OVER/);
    }));
});

describe('what is said once a day', () => {
  test('the day a delivery is due, with a button that puts it away, and what must be handed in before the post leaves', () =>
    told(
      async (story) => {
        const { buyer, maker, desk } = story;
        await ordered(buyer, BALLS);
        for (const work of ['Pour', 'Trim', 'Pack']) await does(story, work);
        await story.until('07:00', 1);
        expect(maker.chat().filter((text) => text.startsWith('Due to arrive today'))).toHaveLength(1);
        expect(maker.chat().join('\n')).toMatch(/Done yesterday: pour 12, trim 12,? and pack 12/);
        await maker.taps('Arrived: 200 6/0');
        expect(desk().arrived).toHaveLength(1);
        await story.until('10:29');
        expect(said(maker, /must be handed in/)).toBe(0);
        await story.until('10:30');
        await story.until('11:15');
        expect(said(maker, /^K-1001 must be handed in at the post by Thu 12:00 PM/)).toBe(1);
      },
      { at: '2026-12-02T17:00' },
    ));
});

describe('the order sheet', () => {
  test('has the buyer’s photos at hand, and nobody but the maker gets at them', () =>
    told(async (story) => {
      const { buyer, other, maker, rehearsal } = story;
      await buyer.says(GUARDED);
      await buyer.sends('photo');
      await buyer.taps('Order this');
      await maker.says('K-1001');
      await maker.taps('Photos of K-1001, line 1 (1)');
      expect(maker.sees()).toBe('Photo 1 of 1 for K-1001: 25 × 1/4 oz football head');
      expect(rehearsal.chats.messagesOf(101).at(-1)?.photo).toBeDefined();
      await other.forges('photos|K-1001|0|0');
      expect(other.chat().join()).not.toMatch(/Photo 1/);
    }));
});

describe('a quote that nobody answers', () => {
  test('is told of once, some hours before it ends, by day', () =>
    told(async (story) => {
      const { buyer } = story;
      await buyer.says(GUARDED);
      await story.until('12:30', 3);
      const told = () => buyer.chat().filter((text) => text.startsWith('Your quote stands until'));
      expect(told()).toHaveLength(1);
      await story.later(60);
      expect(told()).toHaveLength(1);
      await buyer.taps('Go on with it');
      expect(buyer.sees()).toMatch(/Please check it/);
    }));
});
