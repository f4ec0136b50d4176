import { describe, expect, test } from 'vitest';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { told, type Story } from './story.ts';

const GUARDED = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const BALLS = '20 1/8 ball black, size 1, to Ohio';

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

/** Everything of it done on one evening, so that it only has to be handed in. */
async function packed(story: Story): Promise<void> {
  await ordered(story.other, BALLS);
  await story.until('18:30');
  for (const [step, minutes] of [
    ['Pour', 25],
    ['Trim', 5],
    ['Paint', 12],
    ['Clear', 3],
    ['Bake', 26],
  ] as const)
    await does(story, step, minutes);
  await story.later(31);
  await does(story, 'Pack', 5);
}

const all = (voice: Story['buyer']): string => voice.chat().join('\n');

describe('an order on hold', () => {
  test('is told as on hold to everybody, has no ship day, and is in danger at once; taken off hold it has its day again', () =>
    told(async (story) => {
      const { buyer, maker, until } = story;
      await ordered(buyer, GUARDED);
      await maker.says('hold K-1001');
      await maker.taps('Yes, do it so');
      expect(maker.sees()).toMatch(/K-1001 of Sam is in danger: promised for Thursday, December 3, and it is on hold/);
      expect(maker.sees()).toContain('Off hold now, it would ship Thursday, December 3.');
      for (const shown of [await maker.says('queue'), await maker.says('K-1001'), await buyer.says('status')]) {
        expect(shown).toContain('Order K-1001: on hold');
        expect(shown).toContain('While it is on hold it has no ship day.');
        expect(shown).not.toContain('Ships Thursday');
      }
      await until('07:00', 3);
      const digest = await maker.says('digest');
      expect(digest).toContain('- K-1001, Sam: promised Thu, Dec 3, ON HOLD');
      expect(digest).not.toMatch(/MUST LEAVE TODAY|Promised soon/);
      await maker.says('K-1001');
      await maker.taps('Let it take its turn');
      await maker.taps('Yes, do it so');
      expect(await buyer.says('status')).toMatch(/As the bench stands now it would ship Saturday, December 5/);
    }));

  test('that is put on hold again after it went on is told again', () =>
    told(async ({ buyer, maker, later }) => {
      await ordered(buyer, GUARDED);
      for (const word of ['hold', 'release', 'hold']) {
        await later(1);
        await maker.says(`${word} K-1001`);
        await maker.taps('Yes, do it so');
      }
      expect(maker.chat().filter((text) => /is in danger: .* and it is on hold/.test(text))).toHaveLength(2);
    }));
});

describe('an order that waits for its deposit', () => {
  const deposit = (shop: Shop): Shop => ({
    ...shop,
    payment: { ...shop.payment, startsWhen: 'deposit', deposit: 50_000 },
  });

  test('has no ship day until the money is here, which the buyer hears when ordering; then it has one that holds', () =>
    told(
      async ({ buyer, maker, until, desk }) => {
        expect(await buyer.says(GUARDED)).toContain('Ships Thursday, December 3 if it is paid today;');
        await buyer.taps('Order this');
        await buyer.says('Sam Fisher, 12 Shore Road, Columbus, OH 43004');
        expect(all(buyer)).toContain(
          'Paid today, it ships Thursday, December 3; its ship day is set when the payment is here.',
        );
        for (const shown of [await maker.says('queue'), await buyer.says('status')]) {
          expect(shown).toContain('Order K-1001: waiting for $21.21 to be paid');
          expect(shown).not.toContain('December 3');
        }
        await until('07:00', 3);
        const digest = await maker.says('digest');
        expect(digest).toContain('Begin once paid: K-1001 ($21.21).');
        expect(digest).not.toMatch(/MUST LEAVE|DANGER|LATE|Promised soon/);
        expect(all(maker)).not.toMatch(/is in danger|is late/);
        await maker.says('paid K-1001 21.21');
        expect(buyer.sees()).toMatch(/^Order K-1001 has its turn at the bench now. It ships /);
        const day = desk().orders['K-1001']?.promise.ships ?? '';
        expect(day > '2026-12-04').toBe(true);
        expect(all(maker)).not.toMatch(/is in danger|is late/);
      },
      { shop: deposit },
    ));

  test('cannot be put on hold as well, and the maker is told what it waits for', () =>
    told(
      async ({ buyer, maker }) => {
        await ordered(buyer, GUARDED);
        expect(await maker.says('hold K-1001')).toMatch(/^K-1001 waits for its money, so it is off the bench already/);
      },
      { shop: deposit },
    ));

  test('and is begun without it has its day from then on, and its buyer hears it', () =>
    told(
      async ({ buyer, maker, desk }) => {
        await ordered(buyer, GUARDED);
        await maker.says('release K-1001');
        await maker.taps('Yes, do it so');
        expect(buyer.sees()).toContain('Order K-1001 has its turn at the bench now. It ships Thursday, December 3.');
        expect(desk().orders['K-1001']?.promise.ships).toBe('2026-12-03');
      },
      { shop: deposit },
    ));
});

describe('material that is short and on no order', () => {
  test('puts the promise in danger at once, with what is missing; ordered, the day stays what it was', () =>
    told(async ({ buyer, maker, later }) => {
      await ordered(buyer, GUARDED);
      await maker.says('count black guards 10');
      await later(1);
      expect(maker.sees()).toMatch(/in danger[\s\S]*Black guards: 15 short, none on order/);
      const late = /would ship (\w+, \w+ \d+)/.exec(await maker.says('queue'))?.[1];
      expect(await buyer.says('status')).toContain(`it would ship ${late}`);
      await maker.says('ordered 100 black guards');
      expect(await maker.says('queue')).toContain(`it would ship ${late}`);
      await maker.says('count black guards 30');
      expect(await maker.says('queue')).toContain('Ships Thursday, December 3.');
    }));

  test('is short for the order whose turn is later, not for both', () =>
    told(async ({ buyer, other, maker }) => {
      await ordered(buyer, GUARDED);
      await ordered(other, GUARDED);
      await maker.says('count black guards 30');
      const queue = await maker.says('queue');
      expect(queue).toMatch(
        /Order K-1001[\s\S]*Ships Thursday, December 3\.\n\nOrder K-1002[\s\S]*As the bench stands now/,
      );
    }));
});

describe('a delivery that has not come', () => {
  test('counts no more for what to buy than for the plan: it is offered, with the supplier to be asked', () =>
    told(async ({ buyer, maker, until, later }) => {
      await ordered(buyer, GUARDED);
      await maker.says('count black guards 10');
      await maker.says('ordered 100 black guards for 2026-12-02');
      expect(await maker.says('buy')).toMatch(/^Nothing needs to be bought/);
      await until('12:00', 3);
      await maker.says('K-1001');
      await maker.taps('What to buy');
      expect(maker.sees()).toContain(
        '100 black guards: orders wait for 15. 100 were due Wed, Dec 2: ask the supplier, or order anew',
      );
      await later(1);
      await maker.taps('Ordered');
      expect(await maker.says('buy')).toMatch(/^Nothing needs to be bought/);
    }));

  test('is told as overdue and asked for again, and no order is promised on it for tomorrow', () =>
    told(async ({ buyer, maker, until }) => {
      await until('07:00', 10);
      expect(maker.sees()).toMatch(/^Overdue. Tap what has come:\n- 200 6\/0 hooks/);
      await until('07:00', 3);
      expect(await maker.says('stock')).toMatch(/6\/0 hooks .*: 90, 200 more were due Thu, Dec 3, 10 days late/);
      expect(await maker.says('digest')).toMatch(/200 6\/0 hooks [^;]*, OVERDUE since Thu, Dec 3/);
      const quote = await buyer.says('120 1 oz flipping bare no guard no dressing to Ohio');
      expect(quote).toContain('more were due Thursday, December 3 and have not come.');
      expect(quote).not.toContain('December 14');
    }));
});

describe('a day told to a buyer', () => {
  test('is always one on which post leaves: what is packed and late goes with the next post, and is told so everywhere', () =>
    told(async (story) => {
      const { other, maker, until } = story;
      await packed(story);
      await until('12:30', 5);
      await until('07:00', 1);
      expect(await maker.says('digest')).toMatch(
        /LATE\n- K-1001, Alex: promised Tue, Dec 1, packed, next post Mon, Dec 7/,
      );
      await maker.says('K-1001');
      await maker.taps('Tell the buyer Mon, Dec 7');
      expect(other.sees()).toContain('will ship Monday, December 7');
      await maker.forges('delay|K-1001|0|2026-12-13');
      await maker.forges('delay|K-1001|0|2026-13-45');
      expect(other.sees()).toContain('will ship Monday, December 7');
    }));

  test('is the one that holds now, and never the one of an old button: that is answered with a fresh one', () =>
    told(async ({ buyer, maker, until, later }) => {
      await ordered(buyer, GUARDED);
      await maker.says('count black guards 10');
      await later(1);
      await until('12:00', 4);
      const told = /K-1001 of Sam is (?:in danger|late): [^.]* would ship (\w+, \w+ \d+)/;
      const days = maker.chat().flatMap((text) => told.exec(text)?.[1] ?? []);
      expect(days[0]).toBe('Saturday, December 12');
      expect(days.at(-1)).toBe('Thursday, December 17');
      expect(await maker.taps('Tell the buyer Tue, Dec 15')).toMatch(
        /^That day no longer holds for K-1001: it is \w+, December \d+ now/,
      );
      expect(all(buyer)).not.toContain('will be late');
      await maker.taps('Tell the buyer');
      expect(buyer.sees()).toContain('Order K-1001 will be late');
    }));

  test('is not told at all once the order is out of danger', () =>
    told(async ({ buyer, maker, later }) => {
      await ordered(buyer, GUARDED);
      await maker.says('count black guards 10');
      await later(1);
      await maker.says('count black guards 40');
      expect(await maker.taps('Tell the buyer')).toBe('K-1001 is no longer in danger, so its buyer is told nothing.');
      expect(all(buyer)).not.toContain('will be late');
    }));

  test('and not yet answered is what the order says, with the choice still open', () =>
    told(async (story) => {
      const { other, maker, until, desk } = story;
      await packed(story);
      await until('13:00', 1);
      await maker.taps('Tell the buyer Wed, Dec 2');
      expect(await other.says('status')).toContain(
        'It was promised for Tuesday, December 1, and you were told Wednesday, December 2 instead. Will you wait',
      );
      expect(await maker.says('queue')).toContain('The buyer was told Wednesday, December 2 instead');
      await other.taps('Order K-1001');
      await other.taps('I can wait');
      expect(desk().orders['K-1001']).toMatchObject({ slip: null, promise: { ships: '2026-12-02' } });
    }));
});

describe('the card of a promise in danger', () => {
  test('of a packed order says that it is late and has the button for the post, once and not every day', () =>
    told(async (story) => {
      const { maker, until, desk } = story;
      await packed(story);
      await until('13:00', 1);
      expect(maker.sees()).toMatch(
        /K-1001 of Alex is late: .*it is packed: the next post leaves Wednesday, December 2/,
      );
      expect(maker.buttons()).toEqual(['Tell the buyer Wed, Dec 2', 'Handed in at the post', 'Order K-1001']);
      await until('13:00', 2);
      expect(maker.chat().filter((text) => text.includes('is late'))).toHaveLength(1);
      await maker.taps('Handed in at the post');
      await maker.taps('No tracking number');
      expect(desk().orders).toEqual({});
    }));

  test('names the hours that would save it, and they do', () =>
    told(async (story) => {
      const { buyer, maker, until } = story;
      await ordered(buyer, GUARDED);
      await until('18:30', 1);
      for (const [step, minutes] of [
        ['Pour', 30],
        ['Trim', 15],
        ['Paint', 15],
        ['Clear', 5],
        ['Bake', 26],
      ] as const)
        await does(story, step, minutes);
      await until('20:31');
      await does(story, 'Set guards', 12);
      await until('07:00', 2);
      expect(await maker.says('queue')).toContain('it would ship Friday, December 4');
      const card = maker.chat().findLast((text) => text.includes('is in danger')) ?? '';
      expect(card).toMatch(/With hours on Thu, Dec 3, .* as well, it would ship Thursday, December 3\./);
      await maker.taps('Thu, Dec 3, also');
      await maker.taps('Yes, do it so');
      expect(await maker.says('queue')).toContain('Ships Thursday, December 3.');
    }));

  test('names nothing where nothing helps', () =>
    told(async (story) => {
      const { buyer, maker, until } = story;
      await ordered(buyer, GUARDED);
      await until('18:30', 2);
      expect(all(maker)).toMatch(
        /is in danger[\s\S]*Neither its turn nor three hours more on one day would change that/,
      );
    }));
});

describe('what is planned', () => {
  const SKIRTED = '20 1/4 football black, 3/0, brown guard, white skirt, to MN';

  test('is what the bench offers: one session for all that goes together, in the digest and in the week', () =>
    told(async ({ buyer, other, maker, until }) => {
      await ordered(buyer, GUARDED);
      await ordered(other, SKIRTED);
      await until('07:00', 1);
      const pour = 'Pour 1/4 oz football head, lead';
      expect(await maker.says('bench')).toContain(`${pour}: 49 heads`);
      expect(await maker.says('digest')).toMatch(
        /1\. Pour 1\/4 oz football head, lead: 49 heads, .*\n2\. Trim: 49 heads, .*\n3\. Paint/,
      );
      expect(await maker.says('week')).toContain(`${pour}, 49 heads`);
    }));

  test('keeps apart at the bench what would push an earlier promise, and says so', () =>
    told(async ({ buyer, other, maker, until, later }) => {
      await ordered(buyer, GUARDED);
      await ordered(other, SKIRTED.replace('20', '30'));
      await until('18:30');
      expect(await maker.says('bench')).toMatch(
        /lead: 27 heads\n- Pour .*: 32 heads\. Begun before Mon 7:\d0 PM it would push what was promised earlier/,
      );
      await maker.taps('Pour 1/4 oz football head, lead: 27');
      await later(34);
      await maker.taps('Done, all good');
      expect(await maker.says('queue')).not.toContain('As the bench stands now');
      await later(30);
      await maker.says('bench');
      expect(maker.buttons()).toContain('Pour 1/4 oz football head, lead: 32');
    }));
});
