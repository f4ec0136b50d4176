import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { shareOf } from '../../src/domain/craft/money.ts';
import type { Shop } from '../../src/domain/shop/shop.ts';
import { BUYER, MAKER, OTHER, told, type Story } from './story.ts';

const HEADS = '25 quarter ounce football green pumpkin, 3/0, no guard, no skirt, to Minnesota';
const HOOK = 'hook:60-flat-heavy:3/0';

async function ordered({ buyer }: Story, said = HEADS): Promise<void> {
  await buyer.says(said);
  await buyer.taps('Order this');
  await buyer.says('Sam Fisher, 12 Shore Road, Duluth, MN 55801');
}

/** The order's work up to its paint. */
async function painted({ maker, until }: Story): Promise<void> {
  await until('18:30');
  await maker.says('bench');
  for (const work of ['Pour', 'Trim', 'Paint']) {
    await maker.taps(work);
    await maker.taps('Done, all good');
  }
}

/** All of the order's work, one step after the other. */
async function made(story: Story): Promise<void> {
  await painted(story);
  await rest(story);
}

async function rest({ maker, toNext }: Story): Promise<void> {
  await maker.says('bench');
  await maker.taps('Clear eyes');
  await maker.taps('Done, all good');
  await maker.taps('Bake');
  await toNext();
  await toNext();
  await maker.taps('Done');
  await toNext();
  await maker.says('bench');
  await maker.taps('Pack');
  await maker.taps('Done, all good');
}

async function posted({ maker }: Story): Promise<void> {
  await maker.says('K-1001');
  await maker.taps('Handed in');
  await maker.taps('No tracking number');
}

const dollars = (cents: number): string => `$${(cents / 100).toFixed(2)}`;

type Rows = Record<string, string>[];

/** The books of November as a general-purpose reader has them. */
async function books({ maker, rehearsal }: Story): Promise<Partial<Record<string, Rows>>> {
  await maker.says('books 2026-11');
  const files = rehearsal.chats.messagesOf(MAKER).flatMap(({ document }) => document ?? []);
  return Object.fromEntries(
    files.slice(-4).map(({ file_id, file_name = '' }) => {
      const file = rehearsal.room.read().files.find(({ id }) => id === file_id);
      const text = Buffer.from(file?.base64 ?? '', 'base64').toString();
      return [file_name.split('-')[0], parse(text, { columns: true })];
    }),
  );
}

const paying = (change: Partial<Shop['payment']>) => (shop: Shop) => ({
  ...shop,
  payment: { ...shop.payment, ...change },
});

describe('the stock by message', () => {
  test('comes, is counted and is ordered as it is said, and the journal says who and why', () =>
    told(async ({ maker, desk }) => {
      expect(await maker.says('got 200 4/0 60 degree hooks')).toContain('On hand now: 700');
      expect(await maker.says('count black guards 85')).toContain('On hand now: 85');
      expect(await maker.says('ordered 500 bags for 2026-12-09')).toContain('Wednesday, December 9');
      expect(desk().onHand).toMatchObject({ 'hook:60-flat-heavy:4/0': 700, 'guard:black': 85 });
      expect(desk().ordered).toEqual([{ item: 'bag', day: '2026-12-09', count: 500 }]);
      expect(desk().journal.map(({ by, why, ref }) => [by, why, ref])).toEqual([
        [MAKER, 'said', 'got 200 4/0 60 degree hooks'],
        [MAKER, 'said', 'count black guards 85'],
      ]);
      expect(await maker.says('journal')).toContain('“count black guards 85”');
      expect(await maker.says('stock')).toContain('500 more');
      await maker.taps('Arrived: 500 bags');
      expect(desk().ordered).toEqual([]);
      expect(desk().journal.at(-1)).toMatchObject({ why: 'arrived', item: 'bag', change: 500 });
    }));

  test('is listed with what is put aside, in work, on order and made over, and the rest in a line a kind', () =>
    told(async (story) => {
      const { maker, until } = story;
      await ordered(story);
      expect(await maker.says('stock')).toContain('- 3/0 hooks (60° flat eye, heavy): 420, 27 put aside');
      expect(maker.sees()).toContain('- 6/0 hooks (60° flat eye, heavy): 90, 200 more Thu, Dec 3');
      expect(maker.sees()).toMatch(/hooks 90° round bend: 1 \(480\), 2 \(620\)/);
      await until('18:30');
      await maker.says('bench');
      await maker.taps('Pour');
      await maker.taps('Done, all good');
      expect(await maker.says('stock')).toContain('- 3/0 hooks (60° flat eye, heavy): 393, 27 in work');
      expect(maker.sees().split('\n').length).toBeLessThan(25);
    }));

  test('shows heads that were made over', () =>
    told(async (story) => {
      await ordered(story);
      await made(story);
      await posted(story);
      expect(await story.maker.says('stock')).toMatch(
        /FINISHED HEADS ON THE SHELF\n- 2 × 1\/4 oz football head, 3\/0 hook/,
      );
    }));

  test('asks which item is meant, and a second tap changes nothing', () =>
    told(async ({ maker, desk }) => {
      expect(await maker.says('got 50 4/0 hooks')).toContain('nothing has changed yet');
      await maker.taps('4/0 hooks (30°');
      expect(desk().onHand['hook:30-flat-heavy:4/0']).toBe(350);
      await maker.taps('4/0 hooks (30°');
      expect(desk().onHand['hook:30-flat-heavy:4/0']).toBe(350);
      expect(await maker.says('journal')).toContain('“got 50”, now 350');
      expect(await maker.says('got 12 unicorns')).toContain('no item called “unicorns”');
    }));

  test('more lost than there was is asked back, and there are no half bags', () =>
    told(async ({ maker, desk }) => {
      expect(await maker.says('lost 5000 bags')).toMatch(
        /5,000 bags cannot be gone: by the book there are 600\. Nothing has changed/,
      );
      expect(await maker.says('count bags 600.5')).toContain('Bags are counted in whole pieces');
      expect(desk().onHand).toEqual({});
      expect(await maker.says('got 1.5 packs bags')).toContain('On hand now: 1,350');
      expect(await maker.says('lost 1350 bags')).toContain('On hand now: 0');
    }));

  test('changes with a reason, which the journal keeps', () =>
    told(async ({ maker, desk }) => {
      expect(await maker.says('lost 10 black guards because they were bent')).toMatch(/Taken off: 10 black guards/);
      expect(desk().journal.at(-1)).toMatchObject({ change: -10, ref: 'lost 10 black guards because they were bent' });
      expect(await maker.says('journal')).toContain('“lost 10 black guards because they were bent”');
    }));

  test('a buyer cannot change it', () =>
    told(async ({ buyer, desk }) => {
      await buyer.says('count black guards 0');
      await buyer.forges('stock-is|-|0|1=0=guard:black=120');
      await buyer.forges('bought|-|0|100=0=bag');
      expect(desk().onHand).toEqual({});
      expect(desk().ordered).toEqual([]);
    }));

  test('a delivery that was said survives the undo of what stood before it', () =>
    told(async (story) => {
      const { maker, desk, until } = story;
      await ordered(story);
      await until('18:30');
      await maker.says('bench');
      await maker.taps('Pour');
      await maker.taps('Done, all good');
      const used = 420 - (desk().onHand[HOOK] ?? 0);
      expect(used).toBeGreaterThanOrEqual(25);
      await maker.says('got 100 3/0 60 degree hooks');
      await maker.says('undo');
      expect(desk().onHand[HOOK]).toBe(520);
      expect(desk().journal.map(({ why }) => why)).toContain('taken-back');
      expect(desk().usage[HOOK]?.[0]?.amount).toBe(0);
    }));

  test('what an accepted order waits for is on the buying list, and one tap orders it', () =>
    told(async (story) => {
      const { maker, desk } = story;
      expect(await maker.says('what to buy')).toMatch(/Nothing needs to be bought[^]*too new[^]*In 4 weeks/);
      await ordered(story);
      await maker.says('count 3/0 60 degree hooks 10');
      expect(await maker.taps('What to buy')).toMatch(/From hook house:\n- 100 3\/0 hooks .*orders wait for 17/);
      await maker.taps('Ordered: 100 3/0 hooks');
      expect(desk().ordered).toEqual([{ item: HOOK, day: '2026-12-08', count: 100 }]);
      await maker.taps('Ordered: 100 3/0 hooks');
      expect(desk().ordered).toHaveLength(1);
      expect(await maker.says('buy')).toContain('Nothing needs to be bought');
    }));
});

describe('a hook that is short', () => {
  test('is named with its day, and the other size that fits is one tap away', () =>
    told(async ({ maker, buyer, desk }) => {
      await maker.says('count 3/0 60 degree hooks 10');
      await maker.says('ordered 200 3/0 60 degree hooks for 2026-12-09');
      expect(await buyer.says(HEADS)).toMatch(
        /more arrive Wednesday, December 9.*Here now, and it fits the mold: 2\/0/,
      );
      const late = desk().quotes['D1']?.promise.ships;
      await buyer.taps('Make it 2/0');
      expect(buyer.sees()).not.toContain('more arrive');
      expect(desk().drafts[BUYER]?.lines[0]?.spec.hook).toBe('2/0');
      expect(String(desk().quotes['D1']?.promise.ships) < String(late)).toBe(true);
    }));

  test('and comes with no delivery can be swapped, or the maker asked', () =>
    told(async ({ maker, buyer }) => {
      await maker.says('count 3/0 60 degree hooks 10');
      expect(await buyer.says(HEADS)).toMatch(/none is on order.*Here now/);
      expect(buyer.buttons()).toContain('Ask the maker');
      expect(await buyer.taps('Make it 2/0')).toContain('Order this');
    }));
});

describe('a shop that prices by margin', () => {
  test('quotes, costs and lists by what its heads cost it', () =>
    told(
      async (story) => {
        const { maker, buyer, rehearsal } = story;
        await ordered(story);
        expect(buyer.chat().join('\n')).toMatch(/25 × \$[\d.]+.* = \$[\d.]+/);
        expect(await maker.says('cost K-1001')).toMatch(/Left over: \$[\d.]+, 4\d% of the price/);
        await maker.says('prices');
        expect(rehearsal.chats.messagesOf(MAKER).at(-1)?.document?.file_name).toBe('price-list.pdf');
      },
      { shop: (shop) => ({ ...shop, prices: { ...shop.prices, rule: 'margin', margin: 40_000, breaks: [] } }) },
    ));
});

describe('what is paid', () => {
  test('in part, in full, back, and at another price; both sides hear', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story);
      expect(await maker.says('cost K-1001')).toMatch(
        /Left over: \$\d[\s\S]*Minutes by step, set-ups in: pour \d+, trim \d+/,
      );
      expect(await maker.says('paid K-1001 20')).toContain('Still due');
      expect(buyer.sees()).toContain('Your $20.00 for order K-1001 is here');
      expect(await maker.says('paid K-1001 2000')).toContain('nothing has changed');
      await maker.says('price K-1001 -5 thin paint');
      expect(buyer.sees()).toContain('“thin paint”');
      await maker.says('K-1001');
      await maker.taps('Money of K-1001');
      await maker.taps('Paid in full');
      expect(maker.sees()).toContain('Nothing is open');
      expect(buyer.sees()).toContain('paid in full');
      expect(await maker.says('unpaid')).toContain('Nobody owes anything');
      expect(await maker.says('refund K-1001 3 a bent hook')).toContain('$3.00 of K-1001 given back');
      expect(desk().orders['K-1001']?.ledger.map(({ kind }) => kind)).toEqual([
        'paid',
        'adjust',
        'paid',
        'refund',
        'adjust',
      ]);
    }));

  test('an order that shipped unpaid is remembered until it is paid, and the books have it once', () =>
    told(async (story) => {
      const { maker, buyer, desk, until } = story;
      await ordered(story);
      await made(story);
      await posted(story);
      expect(desk().orders).toEqual({});
      expect(Object.keys(desk().settling)).toEqual(['K-1001']);
      await until('07:00', 9);
      expect(maker.chat().join('\n')).toMatch(/MONEY OPEN\n- K-1001, Sam: \$[\d.]+, \d+ days? late/);
      await maker.says('paid K-1001');
      expect(desk().settling).toEqual({});
      expect(buyer.sees()).toContain('paid in full');
      expect(await maker.says('month 2026-11')).toMatch(/New: 1 order/);
      expect(await maker.says('tax 2026-Q4')).toMatch(/NOT ADVICE[\s\S]*1 order/);
    }));

  test('where the shop waits for a deposit, the bench has nothing to start until it is here', () =>
    told(
      async (story) => {
        const { maker, buyer, until } = story;
        await ordered(story);
        expect(buyer.chat().join('\n')).toContain('Work begins once the deposit of');
        await until('18:30');
        expect(await maker.says('bench')).not.toContain('CAN BE STARTED');
        await maker.says('K-1001');
        await maker.taps('Money of K-1001');
        expect(await maker.taps('Deposit paid')).toContain('The bench may begin it');
        expect(await maker.says('bench')).toContain('CAN BE STARTED');
      },
      { shop: paying({ startsWhen: 'deposit', deposit: 30_000 }) },
    ));

  test('a higher price and money given back want their reason, and the buyer’s card adds up by it', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story, HEADS.replace('Minnesota', 'Ohio'));
      const { total } = desk().orders['K-1001']?.money ?? expect.fail();
      expect(await maker.says('price K-1001 3')).toMatch(/What is the reason\? The buyer is told it/);
      expect(desk().orders['K-1001']?.ledger).toEqual([]);
      await maker.says('price K-1001 3 stronger hooks');
      expect(buyer.sees()).toContain('$3.00 on the price of order K-1001: “stronger hooks”');
      await maker.says('paid K-1001');
      expect(await maker.says('refund K-1001 5')).toContain('What is the reason?');
      await maker.says('refund K-1001 5 thin paint');
      expect(buyer.sees()).toContain('given back $5.00 of order K-1001: “thin paint”');
      expect(await buyer.says('K-1001')).toContain(
        `TOTAL: ${dollars(total)}\nChanged: +$3.00 (“stronger hooks”)\nChanged: -$5.00 (“thin paint”)\nTotal now: ${dollars(total - 200)}`,
      );
      expect(await maker.says('price K-1001 -1')).toContain('To give back: $1.00');
    }));

  test('what was not paid by its day is settled with one tap on the reminder, or on the list, once', () =>
    told(async (story) => {
      const { maker, desk, until } = story;
      await ordered(story);
      await until('07:30', 8);
      const total = desk().orders['K-1001']?.money.total ?? 0;
      const button = `Paid: K-1001 ${dollars(total)}`;
      expect(maker.chat().join('\n')).toContain('Not paid by the day it was due:');
      await maker.says('unpaid');
      expect(maker.buttons()).toContain(button);
      await maker.says('price K-1001 -2 thin paint');
      await maker.taps(button);
      expect(desk().orders['K-1001']?.ledger.some(({ kind }) => kind === 'paid')).toBe(false);
      await maker.says('unpaid');
      await maker.taps('Paid: K-1001');
      await maker.taps('Paid: K-1001');
      expect(desk().orders['K-1001']?.ledger.filter(({ kind }) => kind === 'paid')).toHaveLength(1);
      expect(await maker.says('unpaid')).toContain('Nobody owes anything');
    }));

  test('cancelled before the pour, all that was paid goes back', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story);
      await maker.says('paid K-1001');
      const paid = desk().orders['K-1001']?.money.total;
      await buyer.says('K-1001');
      await buyer.taps('Cancel this order');
      await buyer.taps('Yes, cancel it');
      expect(maker.sees()).toMatch(/By the shop’s rule nothing is kept\. .* goes back/);
      expect(buyer.chat().join('\n')).toMatch(/is cancelled.*By the shop’s rule nothing is kept\. .* goes back/);
      await maker.taps('Money of K-1001');
      await maker.taps('Given back');
      expect(desk().settling).toEqual({});
      expect(buyer.sees()).toContain('has given back');
      expect(paid).toBeGreaterThan(0);
    }));

  test('cancelled in paint, the buyer reads before saying yes what is kept and why, and so does the maker; what was not finished is scrap', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story);
      await painted(story);
      await maker.says('paid K-1001');
      const { money } = desk().orders['K-1001'] ?? expect.fail();
      const heads = money.total - money.tax - money.postage.cents;
      const keeps = dollars(heads - shareOf(heads, 25_000));
      await buyer.says('cancel K-1001');
      const rule = `75% of the price of heads that are in paint or past it is kept: ${keeps}. Postage and sales tax are not charged.`;
      expect(buyer.sees()).toContain(rule);
      expect(buyer.sees()).toContain('goes back');
      await buyer.taps('Yes, cancel it');
      expect(maker.sees()).toContain(rule);
      expect(maker.sees()).toContain('27 heads not finished: counted as scrap.\nFinish them before you let it go');
      await maker.taps('Let it be cancelled');
      expect(buyer.sees()).toContain(rule);
      expect(await buyer.says('K-1001')).toMatch(/Order K-1001: cancelled(?![^]*has not answered)/);
      expect(await maker.says('slip K-1001')).toContain('K-1001 is cancelled: nothing of it is posted');
      await maker.says('K-1001');
      expect(maker.buttons()).not.toContain('Packing slip');
      expect(maker.buttons()).toContain('Receipt');
      expect(maker.chat().join('\n')).not.toContain('stock is free again');
      expect(desk().shelf).toEqual({});
      const closed = desk().settling['K-1001'] ?? expect.fail();
      expect(closed.made).toMatchObject([{ heads: 0, scrap: 27 }]);
      expect(closed.used[HOOK]).toBe(27);
    }));

  test('who cancels unpaid heads in paint owes what somebody who had paid would not get back', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story);
      await painted(story);
      await buyer.says('cancel K-1001');
      const [, owed = ''] = /Nothing has been paid and (\$[\d.]+) is to be paid for the work/.exec(buyer.sees()) ?? [];
      await buyer.taps('Yes, cancel it');
      await maker.taps('Let it be cancelled');
      expect(await maker.says('unpaid')).toContain(`K-1001, Sam: ${owed}, due`);
      await maker.says('paid K-1001');
      expect(desk().settling).toEqual({});
    }));

  test('what the buyer was told when they asked stands, however long the maker goes on', () =>
    told(async (story) => {
      const { maker, buyer, desk, until } = story;
      await ordered(story);
      await until('18:30');
      await maker.says('bench');
      await maker.taps('Pour');
      await buyer.says('cancel K-1001');
      expect(buyer.sees()).toContain('50% of the price of heads that are cast is kept');
      await maker.taps('Done, all good');
      for (const work of ['Trim', 'Paint']) {
        await maker.taps(work);
        await maker.taps('Done, all good');
      }
      expect(await buyer.taps('Yes, cancel it')).toContain('75% of the price');
      expect(desk().orders['K-1001']?.cancelAskedAt).toBeNull();
      await buyer.taps('Yes, cancel it');
      const keeps = desk().orders['K-1001']?.cancelKeeps ?? 0;
      await rest(story);
      await maker.says('K-1001');
      expect(maker.sees()).toContain(
        `25 heads finished: onto the shelf.\nAs was told when cancelling was asked for, ${dollars(keeps)} is kept.`,
      );
      await maker.taps('Let it be cancelled');
      expect(desk().settling['K-1001']?.ledger.reduce((sum, { cents }) => sum + cents, 0)).toBe(
        keeps - (desk().settling['K-1001']?.money.total ?? 0),
      );
      expect(Object.values(desk().shelf)).toEqual([27]);
    }));

  test('a complaint after the parcel came is met: money goes back, or the price is changed, of an order that was posted and paid', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story);
      await made(story);
      await maker.says('paid K-1001');
      await posted(story);
      expect(desk().settling).toEqual({});
      expect(await maker.says('refund K-1001 2 chips in the paint')).toContain('$2.00 of K-1001 given back');
      expect(buyer.sees()).toContain('chips in the paint');
      expect(await maker.says('refund 1001 1 a bent hook')).toContain('$1.00 of K-1001 given back');
      expect(await maker.says('refund K-1001 500 all of it')).toContain('no more than that can go back');
      expect(desk().settling).toEqual({});
      expect(await maker.says('price K-1001 -3 scratched')).toContain('To give back: $3.21');
      expect(await maker.says('unpaid')).toContain('K-1001');
      await maker.says('K-1001');
      await maker.taps('Money of K-1001');
      await maker.taps('Given back: $3.21');
      expect(desk().settling).toEqual({});
      const { orders, payments } = await books(story);
      const back = payments?.filter(({ kind }) => kind === 'refund').map(({ amount }) => amount);
      expect(back).toEqual(['-2.00', '-1.00', '-3.21']);
      expect(orders).toMatchObject([{ order: 'K-1001', due: '0.00' }]);
    }));

  test('a price change never takes off more than the heads cost, and says how much can go', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story);
      const { money } = desk().orders['K-1001'] ?? expect.fail();
      const heads = money.total - money.tax - money.postage.cents;
      expect(await maker.says(`price K-1001 -${(heads + 1) / 100} too much`)).toContain(
        `At most ${dollars(heads)} can be taken off the price of K-1001`,
      );
      expect(desk().orders['K-1001']?.ledger).toEqual([]);
      expect(await maker.says(`price K-1001 -${heads / 100} a gift`)).toContain(`-${dollars(heads)} on the heads`);
    }));

  test('the account of an order that is paid and gone opens by its button', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story);
      await made(story);
      await posted(story);
      await maker.says('paid K-1001');
      expect(await maker.taps('Money of K-1001')).toContain('Settled, nothing is open.');
    }));

  test('nobody but the maker can say that something was paid', () =>
    told(async (story) => {
      const { buyer, desk } = story;
      await ordered(story);
      await buyer.says('paid K-1001');
      await buyer.forges('pay|K-1001|0|whole=0');
      expect(desk().orders['K-1001']?.ledger).toEqual([]);
    }));
});

describe('an address in another state than the price is for', () => {
  const TO_OHIO = 'Sam Fisher, 1 Main St, Columbus OH 43004';

  test('is told to both sides, and the buyer’s yes brings the postage and the tax of there', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await buyer.says(HEADS);
      await buyer.taps('Order this');
      const before = desk().orders['K-1001']?.money ?? expect.fail();
      expect(await buyer.says(TO_OHIO)).toContain(
        'The address for K-1001 is in Ohio, and the price is for Minnesota. To Ohio: postage',
      );
      expect(maker.sees()).toContain('CAREFUL: the address is in Ohio, postage and sales tax are for Minnesota.');
      expect(await maker.says('K-1001')).toContain('CAREFUL');
      expect(desk().orders['K-1001']).toMatchObject({ shipTo: 'US-MN', money: before, address: TO_OHIO });
      await buyer.taps('Yes, to Ohio');
      const { money, shipTo } = desk().orders['K-1001'] ?? expect.fail();
      expect([shipTo, money.tax]).toEqual(['US-OH', 0]);
      expect(money.total - money.postage.cents).toBe(before.total - before.tax - before.postage.cents);
      expect(buyer.sees()).toContain(`goes to Ohio now, for ${dollars(money.total)} in all`);
      expect(await maker.says('K-1001')).not.toContain('CAREFUL');
      await buyer.forges(`reship|K-1001|0|US-OH=${money.total}`);
      expect(desk().orders['K-1001']?.money).toEqual(money);
    }));

  test('once it is paid, both sides hear what is still due or goes back', () =>
    told(async (story) => {
      const { maker, buyer } = story;
      await buyer.says(HEADS.replace('Minnesota', 'Ohio'));
      await buyer.taps('Order this');
      await buyer.says(TO_OHIO);
      await maker.says('paid K-1001');
      await buyer.says('K-1001');
      await buyer.taps('Change the address');
      await buyer.says('Sam Fisher, 12 Shore Road, Duluth, MN 55801');
      await buyer.taps('Yes, to Minnesota');
      const [, due = ''] = /so (\$[\d.]+) is still due\./.exec(buyer.sees()) ?? [];
      expect(maker.sees()).toContain(`Still due: ${due}.`);
      await maker.taps('Money of K-1001');
      await maker.taps(`Paid in full: ${due}`);
      await buyer.says('K-1001');
      await buyer.taps('Change the address');
      await buyer.says(TO_OHIO);
      await buyer.taps('Yes, to Ohio');
      expect(buyer.sees()).toContain(`so ${due} goes back to you.`);
      expect(maker.sees()).toContain(`To give back: ${due}.`);
    }));

  test('is the maker’s to answer once the price was changed, and another address is as good', () =>
    told(async (story) => {
      const { buyer, desk } = story;
      await buyer.says(HEADS);
      await buyer.taps('Order this');
      await story.maker.says('price K-1001 -2 a friend');
      expect(await buyer.says(TO_OHIO)).toContain('the maker has to say');
      expect(buyer.buttons()).toEqual(['Ask the maker', 'Change the address']);
      await buyer.taps('Change the address');
      expect(await buyer.says('Sam Fisher, 12 Shore Road, Duluth, MN 55801')).toContain('you are done');
      expect(desk().orders['K-1001']?.shipTo).toBe('US-MN');
    }));

  test('nobody but the buyer can say yes to it', () =>
    told(async (story) => {
      await story.buyer.says(HEADS);
      await story.buyer.taps('Order this');
      await story.buyer.says(TO_OHIO);
      await story.other.forges('reship|K-1001|0|US-OH=1');
      await story.buyer.forges('reship|K-1001|0|US-OH=1');
      expect(story.desk().orders['K-1001']?.shipTo).toBe('US-MN');
    }));
});

describe('how a month went', () => {
  test('is a picture and the same in words: orders, hours, material, margin an hour, on time, scrap by mold', () =>
    told(async (story) => {
      const { maker, desk, rehearsal } = story;
      await ordered(story);
      await made(story);
      await posted(story);
      await maker.says('month 2026-11');
      const said = maker.sees();
      for (const part of [
        /New: 1 order. Shipped: 1 order/,
        /Sold: \$[\d.]+ for 25 heads/,
        /Material used: \$[\d.]+/,
        /for [\d.]+ hours at the bench/,
        /On time: 100%/,
        /AN HOUR LEAVES OVER\n- football head, 25 heads: \$/,
        /SCRAP BY MOLD\n- football: 0% \(0 of 27\)/,
      ])
        expect(said).toMatch(part);
      const { photo } = rehearsal.chats.messagesOf(MAKER).findLast(({ caption }) => caption === said) ?? {};
      expect(photo).toMatchObject([{ width: 1080 }]);
      const used = desk().settling['K-1001']?.used ?? {};
      const cents = Object.entries(used).reduce((sum, [item, amount]) => {
        const row = story.shop.stock.find((one) => one.item === item);
        return sum + (amount * (row?.costPerThousand ?? 0)) / 1000;
      }, 0);
      expect(said).toContain(`Material used: $${(Math.round(cents) / 100).toFixed(2)}`);
    }));

  test.each([
    'books 2026-11-31',
    'books 2026-02-30 2026-03-31',
    'books 2026-12-31 2026-10-01',
    'books 2026-13',
    'books 2026-Q7',
    'month 2026-13',
    'month october',
    'tax 2026-Q5',
    'tax 2026',
  ])('“%s” is no period: that is said with examples, and none is taken for another', (said) =>
    told(async ({ maker, rehearsal }) => {
      expect(await maker.says(said)).toMatch(/^I know no such period as “.+”, so nothing was worked out/);
      expect(rehearsal.chats.messagesOf(MAKER).some(({ document }) => document !== undefined)).toBe(false);
      const example = /Type “(.+?)”/.exec(maker.sees())?.[1] ?? '';
      expect(await maker.says(example)).not.toContain('no such period');
    }),
  );

  test('a return due on a Sunday is due on Monday, and the year is said', () =>
    told(async ({ maker }) => {
      expect(await maker.says('tax 2026-Q4')).toContain('is due Mon, February 1, 2027.');
    }));

  test('with nothing shipped says so, without a picture', () =>
    told(async ({ maker, rehearsal }) => {
      expect(await maker.says('month')).toContain('Nothing has shipped');
      expect(rehearsal.chats.messagesOf(MAKER).some(({ photo }) => photo !== undefined)).toBe(false);
    }));
});

describe('papers and books', () => {
  test('a packing slip, a receipt, an order sheet and the price list come as pictures and as files', () =>
    told(async (story) => {
      const { maker, rehearsal } = story;
      await ordered(story);
      await maker.says('slip K-1001');
      await maker.says('receipt K-1001');
      await maker.says('sheet K-1001');
      await maker.says('prices');
      const files = rehearsal.chats.messagesOf(MAKER).flatMap(({ document }) => document?.file_name ?? []);
      expect(files).toEqual([
        'packing-slip-K-1001.pdf',
        'receipt-K-1001.pdf',
        'order-sheet-K-1001.pdf',
        'price-list.pdf',
      ]);
      const pictures = rehearsal.chats
        .messagesOf(MAKER)
        .flatMap(({ photo, caption = '' }) => (photo?.[0]?.width === 1224 ? [caption] : []));
      expect(pictures).toEqual([
        'Packing slip of order K-1001',
        'Receipt of order K-1001',
        'Order sheet of order K-1001',
        'Price list',
      ]);
      expect(rehearsal.chats.messagesOf(BUYER).flatMap(({ document }) => document ?? [])).toEqual([]);
    }));

  test('whoever asks for the price list has it; in the middle of an order, prices are a question about it', () =>
    told(async ({ buyer, other, rehearsal }) => {
      await buyer.says('price list');
      await other.says(HEADS);
      expect(await other.says('prices')).not.toContain('Price list');
      const files = (person: number) =>
        rehearsal.chats.messagesOf(person).flatMap(({ document }) => document?.file_name ?? []);
      expect([files(BUYER), files(OTHER)]).toEqual([['price-list.pdf'], []]);
    }));

  test('a buyer who has paid something can have the receipt, and nobody else’s', () =>
    told(async (story) => {
      const { maker, buyer, other, rehearsal } = story;
      await ordered(story);
      await buyer.forges('receipt|K-1001|0|-');
      const files = (person: number) =>
        rehearsal.chats.messagesOf(person).flatMap(({ document }) => document?.file_name ?? []);
      expect(files(BUYER)).toEqual([]);
      await maker.says('paid K-1001 20');
      await buyer.says('K-1001');
      await buyer.taps('Receipt');
      await other.forges('receipt|K-1001|0|-');
      expect(files(BUYER)).toEqual(['receipt-K-1001.pdf']);
      expect(files(OTHER)).toEqual([]);
    }));

  test('“price K-1001 -10 scratched” takes its sales tax along, and receipt and books add up to the cent', () =>
    told(async (story) => {
      const { maker, buyer, desk } = story;
      await ordered(story);
      expect(await maker.says('price K-1001 -10 scratched')).toContain('-$10.00 on the heads, -$0.69 on the sales tax');
      expect(buyer.sees()).toContain('$10.69 off the price of order K-1001, sales tax of $0.69 in it: “scratched”');
      await made(story);
      await maker.says('paid K-1001');
      await posted(story);
      const { orders, taxes } = await books(story);
      const cents = (row: Record<string, string> | undefined, ...columns: string[]): number =>
        columns.reduce((sum, column) => sum + Math.round(Number(row?.[column]) * 100), 0);
      const sold = cents(taxes?.[0], 'sold_for');
      expect(cents(taxes?.[0], 'sales_tax')).toBe(Math.round((sold * 6875) / 100_000));
      const parts = ['heads_total', 'top_up', 'rush', 'postage', 'sales_tax', 'adjusted'];
      expect(cents(orders?.[0], ...parts)).toBe(cents(orders?.[0], 'total'));
      expect(cents(orders?.[0], 'due')).toBe(0);
      expect(desk().settling).toEqual({});
    }));

  test('a buyer types “receipt”, and has the one of what was paid, or hears when there will be one', () =>
    told(async (story) => {
      const { maker, buyer, other, rehearsal } = story;
      const files = () => rehearsal.chats.messagesOf(BUYER).flatMap(({ document }) => document?.file_name ?? []);
      await ordered(story);
      expect(await buyer.says('receipt')).toContain('There is no receipt yet');
      await made(story);
      await maker.says('paid K-1001');
      await posted(story);
      await buyer.says('can I get a receipt?');
      await buyer.says('receipt K-1001');
      expect(files()).toEqual(['receipt-K-1001.pdf', 'receipt-K-1001.pdf']);
      expect(await other.says('receipt K-1001')).toContain('There is no receipt of K-1001 yet');
    }));

  test('the books of a month are four tables that any reader opens', () =>
    told(async (story) => {
      const { maker, desk } = story;
      await ordered(story);
      await made(story);
      await maker.says('paid K-1001 20');
      await posted(story);
      const { orders, payments, materials, taxes } = await books(story);
      expect(orders).toMatchObject([{ order: 'K-1001', state: 'shipped', paid: '20.00', currency: 'USD' }]);
      expect(payments).toMatchObject([{ order: 'K-1001', kind: 'paid', amount: '20.00' }]);
      const hooks = materials?.find(({ item }) => item === HOOK);
      expect(Number(hooks?.['amount'])).toBe(420 - (desk().onHand[HOOK] ?? 0));
      for (const [item, count] of Object.entries(desk().onHand)) {
        const used = materials?.find((row) => row['item'] === item)?.['amount'];
        const opening = story.shop.stock.find((row) => row.item === item)?.onHand ?? 0;
        expect(opening - count, item).toBe(Number(used));
      }
      expect(taxes).toMatchObject([{ order: 'K-1001', excise_share_percent: '75' }]);
    }));
});

test.each([
  ['got', /^What came, and how many\? Type it with the number, such as “got 100 size 1 hooks/],
  ['ordered', /such as “ordered 100/],
  ['ordered bags', /such as “ordered 500 bags”/],
  ['count black guards', /such as “count 100 black/],
])('“%s” without a number is asked back for it', (said, asked) =>
  told(async ({ maker, desk }) => {
    const before = desk().onHand;
    expect(await maker.says(said)).toMatch(asked);
    expect(desk().onHand).toEqual(before);
    const example = /“(.+)”/.exec(maker.sees())?.[1] ?? '';
    expect(await maker.says(example)).toMatch(/^(?:Put away|Ordered|Counted): /);
  }),
);
