import { describe, expect, test } from 'vitest';
import { headsOf } from '../../src/domain/desk/sessionPicture.ts';
import { MAKER, told, type Story, type Voice } from './story.ts';

const HOOK = 'hook:60-flat-heavy:3/0';
const LEAD = 'metal:lead';
const GUARDED = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

async function ordered(voice: Voice, said: string): Promise<void> {
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

async function doesAll(story: Story, works: readonly string[]): Promise<void> {
  for (const work of works) await does(story, work);
}

async function cancels({ buyer, maker }: Story): Promise<void> {
  await buyer.says('my orders');
  await buyer.taps('Order K-1001');
  await buyer.taps('Cancel this order');
  await buyer.taps('Yes, cancel it');
  await maker.taps('Let it be cancelled');
}

describe('an order that is cancelled', () => {
  test('while its heads cool leaves no timer behind', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await doesAll(story, ['Pour', 'Trim', 'Paint', 'Clear eyes', 'Bake']);
      expect(await maker.says('timers')).toMatch(/Cooling; K-1001-1/);
      await cancels(story);
      expect(await maker.says('timers')).toMatch(/No timers are running/);
      expect(desk().timers).toEqual({});
      const before = maker.chat().length;
      await story.later(60);
      expect(maker.chat().slice(before).join()).not.toMatch(/COOL/);
    }));

  test('while its heads bake is reminded of by its name until the rack is out', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await doesAll(story, ['Pour', 'Trim', 'Paint', 'Clear eyes']);
      await maker.says('bench');
      await maker.taps('Bake');
      await cancels(story);
      expect(await maker.says('bench')).toMatch(/Bake 350°F: 27 heads, K-1001-1 \(cancelled\), since/);
      expect(await maker.says('timers')).toMatch(/K-1001-1 \(cancelled\): /);
      await story.toNext();
      await story.toNext();
      expect(maker.sees()).toMatch(/^BAKE DONE[\s\S]*K-1001-1 \(cancelled\)/);
      expect(await maker.taps('Done')).toMatch(/^Bake: done\.\s+K-1001-1 \(cancelled\)/);
      expect(desk().timers).toEqual({});
    }));

  test('while hands are on its heads takes them out of the work', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await does(story, 'Pour');
      await maker.says('bench');
      await maker.taps('Trim');
      await cancels(story);
      expect(desk().sessions).toEqual({});
      expect(await maker.says('bench')).toMatch(/nothing running/);
    }));

  test('while it is poured takes the heads, the hooks and the lead with it', () =>
    told(async (story) => {
      const { buyer, other, maker, desk, later } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, GUARDED.replace('25', '10'));
      await maker.says('bench');
      await maker.taps('Pour 1/4 oz football head, lead: 38');
      await later(25);
      await maker.says('3 bad K-1001-1');
      await buyer.says('cancel K-1001');
      await buyer.taps('Yes, cancel it');
      expect(maker.sees()).toContain('24 heads not finished: counted as scrap.');
      expect(await maker.says('K-1001')).toContain('24 heads not finished: counted as scrap.');
      await maker.taps('Let it be cancelled');
      expect(maker.sees()).toContain('24 heads not finished: counted as scrap.');
      const closed = desk().settling['K-1001'] ?? expect.fail();
      expect(closed.made).toMatchObject([{ heads: 0, scrap: 27 }]);
      expect(closed.used).toMatchObject({ [HOOK]: 27, [LEAD]: expect.any(Number) });
      expect(await maker.says('journal')).toMatch(/−27 3\/0 hooks .*used, K-1001, now/);
      await maker.says('done');
      expect(desk().onHand[HOOK]).toBe(420 - 38);
      expect(desk().lots['K-1002-1']).toMatchObject({ good: 11, scrap: 0 });
      expect(desk().learned.counted.poured).toBe(38);
      expect(desk().learned.steps).toEqual({});
    }));

  test('while it is trimmed with another takes its own scrap along, and the other has only what is its own', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, GUARDED.replace('25', '10'));
      await does(story, 'Pour 1/4 oz football head, lead: 38');
      await maker.says('bench');
      await maker.taps('Trim');
      await maker.says('2 bad K-1001-1');
      await maker.says('1 bad K-1002-1');
      await cancels(story);
      expect(desk().settling['K-1001']?.made).toMatchObject([{ heads: 0, scrap: 27 }]);
      expect(await maker.says('done')).toMatch(/Scrapped: 1[^]*K-1002-1: 10 heads good/);
      expect(desk().learned.counted).toEqual({ poured: 38, bad: 3 });
      await maker.says('undo');
      expect(maker.sees()).toMatch(/Scrapped: 1(?!\d)/);
    }));
});

describe('a card of work that lots share', () => {
  test('pictures each head with the lot that it is of, never the first one for all', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, '20 quarter ounce football black, 3/0, brown guard, white skirt, to Ohio');
      await does(story, 'Pour');
      await maker.says('bench');
      await maker.taps('Trim');
      const [session] = Object.values(desk().sessions);
      expect(session && headsOf(desk(), session)).toMatchObject({
        each: [
          { spec: { guard: 'black', dressing: 'none' }, lots: [{ lot: 'K-1001-1', heads: 27 }] },
          { spec: { guard: 'brown', dressing: 'skirt-white' }, lots: [{ lot: 'K-1002-1', heads: 22 }] },
        ],
      });
      expect(story.rehearsal.chats.messagesOf(MAKER).at(-1)?.photo).toBeDefined();
    }));

  test('says of which lot the scrap is, and the lot’s history how many had each step', () =>
    told(async (story) => {
      const { buyer, other, maker } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, GUARDED.replace('25', '10'));
      await maker.says('bench');
      await maker.taps('Pour 1/4 oz football head, lead: 38');
      await maker.taps('Count K-1002-1');
      expect(await maker.taps('1 bad')).toMatch(/Scrapped: 1 \(K-1002-1: 1\)\./);
      await maker.taps('Done');
      await does(story, 'Trim');
      const card = await maker.says('lot K-1002-1');
      expect(card).toMatch(/- Pour: .*, 11 heads\n- Trim: .*, 10 heads\nGood: 10. Scrapped: 1\./);
      expect(await maker.says('minutes')).toMatch(/\(1 bad of 38 poured\)/);
    }));

  test('has one picture for lots of one head', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, GUARDED.replace('25', '10'));
      await maker.says('bench');
      await maker.taps('Pour 1/4 oz football head, lead: 38');
      const [session] = Object.values(desk().sessions);
      expect(session && headsOf(desk(), session)).toMatchObject({ guard: 'black' });
    }));
});

describe('the base-hole pin', () => {
  test('is named on the card of the dip, where it comes out hot, and only where there is one', () =>
    told(async (story) => {
      const { buyer, other, maker } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, '10 1/8 ball black, size 1, lead, to Ohio');
      await doesAll(story, ['Pour 1/4', 'Pour 1/8', 'Trim']);
      await maker.says('bench');
      const dip = await maker.taps('Paint green');
      expect(dip).toMatch(/pin: PULL IT HOT, RIGHT AFTER THE DIP/);
      expect(dip).toMatch(/Pull pins with pliers/);
      await maker.taps('Done, all good');
      await maker.says('bench');
      expect(await maker.taps('Paint black')).not.toMatch(/pin/i);
    }));

  test('does not trouble heads that have none when their eyes are cleared', () =>
    told(async (story) => {
      await ordered(story.buyer, '10 1/8 ball black, size 1, lead, to Ohio');
      await doesAll(story, ['Pour', 'Trim', 'Paint']);
      await story.maker.says('bench');
      const eyes = await story.maker.taps('Clear eyes');
      expect(eyes).toMatch(/hot/);
      expect(eyes).not.toMatch(/pin/i);
    }));
});

describe('the oven', () => {
  test('at the heat it is set to does what it is set to do', () =>
    told(async ({ maker }) => {
      expect(await maker.says('oven 350')).toMatch(/20 minutes does\./);
      expect(await maker.says('oven 325')).toMatch(/20 minutes is too short there/);
    }));

  test('tells how long the powder stands it, also after five more minutes', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await ordered(buyer, GUARDED);
      await doesAll(story, ['Pour', 'Trim', 'Paint', 'Clear eyes']);
      await maker.says('bench');
      await maker.taps('Bake');
      await story.toNext();
      await story.toNext();
      await maker.taps('5 more minutes');
      await story.toNext();
      expect(maker.sees()).toMatch(/^BAKE DONE.*\nPowder stands 5 minutes over its hold\./);
    }));
});

describe('heads made over', () => {
  const SKIRTED = '20 quarter ounce football black, 3/0, brown guard, white skirt, to Ohio';

  test('cost no load in the oven of their own: the ordered ones go first, and the spare is let go', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, SKIRTED);
      await doesAll(story, ['Pour', 'Trim', 'Paint green', 'Paint black', 'Clear eyes']);
      expect((await maker.says('digest')).match(/Bake 350°F: \d+ heads?/g)).toEqual(['Bake 350°F: 48 heads']);
      await maker.says('bench');
      expect(await maker.taps('Bake 350°F: 48')).toMatch(/NOT ON THE RACK: 1 made over/);
      await maker.taps('Done, all good');
      expect(maker.sees()).toMatch(/K-1002-1: 1 made over did not fit the rack and is let go/);
      expect(maker.sees()).toMatch(/K-1001-1: 27 heads good. Next: cool/);
      expect(desk().lots).toMatchObject({ 'K-1001-1': { good: 27 }, 'K-1002-1': { good: 21, scrap: 1 } });
      expect(Object.values(desk().timers)).toMatchObject([{ kind: 'cool', lots: ['K-1001-1', 'K-1002-1'] }]);
    }));

  test('stay with their lot where a second load is needed anyway', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, '30 quarter ounce football black, 3/0, brown guard, no skirt, to Ohio');
      await doesAll(story, ['Pour', 'Pour', 'Trim', 'Paint green', 'Paint black', 'Clear eyes', 'Bake 350°F: 48']);
      expect(desk().lots).toMatchObject({ 'K-1001-1': { good: 27 }, 'K-1002-1': { good: 32 } });
      await does(story, 'Bake 350°F: 11');
      expect(maker.chat().join()).not.toMatch(/let go/);
      expect(desk().lots).toMatchObject({ 'K-1001-1': { good: 27 }, 'K-1002-1': { good: 32 } });
    }));

  test('are baked in a load of their own where the maker wants it so', () =>
    told(async (story) => {
      const { buyer, other, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await ordered(other, SKIRTED);
      await doesAll(story, ['Pour', 'Trim', 'Paint green', 'Paint black', 'Clear eyes', 'Bake']);
      await maker.taps('Bake the spare one too');
      expect(desk().lots).toMatchObject({ 'K-1002-1': { good: 22, scrap: 0 } });
      await does(story, 'Bake 350°F: 1');
      expect(desk().lots).toMatchObject({ 'K-1002-1': { good: 22, scrap: 0 } });
    }));
});

describe('a reminder that heads are cool, or cured', () => {
  test('has the next step to be started with one tap', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await doesAll(story, ['Pour', 'Trim', 'Paint', 'Clear eyes', 'Bake']);
      await story.toNext();
      expect(maker.sees()).toMatch(/^COOL/);
      await maker.taps('Set guards: 27');
      expect(Object.values(desk().sessions)).toMatchObject([{ step: 'guard' }]);
    }));
});

const BALLS = '10 1/8 ball unpainted, size 1, lead, to Ohio';

async function packed(story: Story): Promise<void> {
  await ordered(story.buyer, BALLS);
  await doesAll(story, ['Pour', 'Trim', 'Pack']);
}

describe('the post', () => {
  test('has no tracking number while its order is not packed, and the maker is told so', () =>
    told(async ({ buyer, maker, desk }) => {
      await buyer.says('20 1/8 ball black, size 1, to Ohio');
      await buyer.taps('Order this');
      for (const said of ['tracking K-1001 LX 1', 'tracking K-1001'])
        expect(await maker.says(said)).toMatch(/^K-1001 is not packed yet, so no parcel of it can have gone/);
      expect(desk().orders['K-1001']?.tracking).toBeNull();
    }));

  test('is told of with one tap an order, and the tracking number can follow', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await packed(story);
      await story.until('10:30', 1);
      expect(maker.sees()).toMatch(/K-1001 must be handed in/);
      expect(await maker.taps('Handed in: K-1001')).toMatch(/K-1001 is off the bench/);
      expect(desk().orders).toEqual({});
      expect(buyer.sees()).toMatch(/K-1001 is in the post/);
      await maker.taps('Add the tracking number');
      await maker.says('LX 1234');
      expect(maker.sees()).toBe('The tracking number of K-1001 is kept, and its buyer has been told.');
      expect(buyer.sees()).toBe('The tracking number of your order K-1001: LX 1234');
      expect(await buyer.says('K-1001')).toMatch(
        /shipped[\s\S]*Handed in at the post: Tue, Dec 1[\s\S]*Tracking number: LX 1234/,
      );
      expect(await story.other.says('K-1001')).toMatch(/no open order/);
      await maker.says('tracking K-1001 LX 1235');
      expect(await maker.says('K-1001')).toMatch(/Tracking number: LX 1235/);
    }));
});

describe('an order that has left the bench', () => {
  test('leaves no reminder behind that was still to be told in the morning', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, '10 quarter ounce football unpainted, 3/0, black guard, no skirt, to Ohio');
      await doesAll(story, ['Pour', 'Trim', 'Set guards']);
      await story.until('23:30', 1);
      await doesAll(story, ['Pack']);
      await maker.taps('Handed in');
      await maker.taps('No tracking number');
      expect(desk().timers).toEqual({});
    }));

  test('can still be looked up by the maker: its card, what it cost, its lots and their history', () =>
    told(async (story) => {
      const { maker } = story;
      await packed(story);
      await maker.taps('Handed in');
      await maker.says('TRACK-0001');
      expect(await maker.says('cost K-1001')).toMatch(/K-1001/);
      expect(await maker.says('K-1001')).toMatch(/Order K-1001: shipped[\s\S]*Tracking number: TRACK-0001/);
      expect(await maker.taps('Lot K-1001-1')).toMatch(/HISTORY[\s\S]*Pack/);
      expect(await maker.says('lot K-1001-9')).toMatch(/no open order/);
    }));
});

describe('the digest', () => {
  test('leads from a late order, and from a wish to cancel, to a card that can answer it', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(buyer, GUARDED);
      await does(story, 'Pour');
      await buyer.says('cancel K-1001');
      await buyer.taps('Yes, cancel it');
      await story.until('07:00', 4);
      const digest = maker.chat().find((text) => /Want to cancel: K-1001/.test(text));
      expect(digest).toMatch(/LATE\n- K-1001, Sam: promised Thu, Dec 3/);
      await maker.says('digest');
      await maker.taps('Order K-1001');
      expect(maker.buttons().join()).toMatch(/Tell the buyer/);
      await maker.taps('Keep making it');
      expect(desk().orders['K-1001']?.cancelAskedAt).toBeNull();
    }));
});
