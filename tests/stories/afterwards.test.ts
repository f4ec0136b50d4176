import { describe, expect, test } from 'vitest';
import { told, type Story } from './story.ts';

const GREEN = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const ADDRESS = 'Sam Fisher, 12 Shore Road, Columbus, OH 43004';

async function ordered({ buyer }: Story): Promise<void> {
  await buyer.says(GREEN);
  await buyer.taps('Order this');
}

describe('after an order is placed', () => {
  test('a question is no address, and the address is still awaited', () =>
    told(async (story) => {
      const { buyer, desk } = story;
      await ordered(story);
      expect(await buyer.says('where is my order?')).toMatch(/Your orders:\n\nOrder K-1001/);
      expect(await buyer.says('thanks!')).toMatch(/You are welcome/);
      expect(await buyer.says('ok')).toMatch(/name and address/);
      expect(desk().orders['K-1001']?.address).toBeNull();
      expect(await buyer.says(ADDRESS)).toMatch(/The parcel of K-1001 goes to:/);
      expect(desk().orders['K-1001']?.address).toBe(ADDRESS);
    }));

  test.each([
    'where is it?',
    'Hi, where are my jigs?',
    'is it ready yet?',
    'has my order shipped',
    'when will it ship?',
    'how do I pay?',
    'did you get my payment?',
    'I want to cancel my order',
    '¿dónde está mi pedido?',
    '¿cuándo sale?',
  ])('“%s” is answered with the orders, not with the first question of a new one', (words) =>
    told(async (story) => {
      await ordered(story);
      await story.buyer.says(ADDRESS);
      await story.buyer.says(words);
      expect(story.buyer.sees()).toMatch(/K-1001/);
      expect(story.desk().drafts[201]).toBeUndefined();
    }),
  );

  test('a second order takes the address of the first with one tap', () =>
    told(async (story) => {
      const { buyer, desk } = story;
      await ordered(story);
      expect(buyer.buttons()).not.toContain('Same address as before');
      await buyer.says(ADDRESS);
      await ordered(story);
      await buyer.taps('Same address as before');
      expect(desk().orders['K-1002']?.address).toBe(ADDRESS);
    }));

  test('a packed order that missed its post is said to leave with the next one', () =>
    told(async ({ buyer, maker, desk, until, later }) => {
      await buyer.says('10 1/8 ball unpainted, size 1, no guard, no skirt, lead, to Ohio');
      await buyer.taps('Order this');
      for (const work of ['Pour', 'Trim', 'Pack']) {
        await maker.says('bench');
        await maker.taps(work);
        await later(5);
        await maker.taps('Done, all good');
      }
      expect(desk().orders['K-1001']).toMatchObject({ state: 'packed', promise: { ships: '2026-12-01' } });
      expect(await buyer.says('my orders')).toContain('Ships Tuesday, December 1.');
      await until('19:00', 1);
      expect(await buyer.says('my orders')).toContain('Wednesday, December 2');
    }));

  test('“when will it ship?” of heads being put together is still about those', () =>
    told(async (story) => {
      const { buyer } = story;
      await ordered(story);
      await buyer.says(ADDRESS);
      await buyer.says('30 quarter ounce football black, 3/0, brown guard, no skirt');
      expect(await buyer.says('when will it ship?')).not.toMatch(/Your orders/);
    }));

  test('the maker sees that a cancelling was refused and what is paid already', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await ordered(story);
      await buyer.says(ADDRESS);
      await maker.says('bench');
      await maker.taps('Pour');
      await buyer.says('my orders');
      await buyer.taps('Order K-1001');
      await buyer.taps('Cancel this order');
      await buyer.taps('Yes, cancel it');
      expect(await maker.taps('Keep making it')).toMatch(/K-1001 goes on/);
      expect(await maker.says('refund K-1001 5')).toMatch(/you hold \$0\.00/);
      expect(await maker.says('paid K-1001')).toMatch(/Nothing is open/);
      expect(await maker.says('paid K-1001')).toMatch(/Nothing is due on K-1001/);
    }));

  test('“same address” is that of the other order, and asked for where there is none', () =>
    told(async (story) => {
      const { buyer, desk } = story;
      await ordered(story);
      expect(await buyer.says('same address')).toMatch(/name and address/);
      await buyer.says(ADDRESS);
      await ordered(story);
      await buyer.says('Same address as before');
      expect(desk().orders['K-1002']?.address).toBe(ADDRESS);
    }));

  test('what was paid after the parcel went has a receipt all the same', () =>
    told(async (story) => {
      const { buyer, maker, rehearsal } = story;
      await shipping(story);
      await maker.taps('No tracking number');
      await maker.says('paid K-1001');
      const papers = () => rehearsal.chats.messagesOf(201).filter(({ document }) => document !== undefined).length;
      const before = papers();
      await buyer.taps('Receipt');
      expect(papers()).toBe(before + 1);
    }));

  test('words to nobody are no tracking number', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await shipping(story);
      expect(await maker.says('hello there')).toMatch(/^Type the tracking number/);
      expect(desk().orders['K-1001']?.state).toBe('packed');
      await maker.says('LX 123 456 789 US');
      expect(buyer.chat().join('\n')).toContain('LX 123 456 789 US');
    }));
});

/** An order that is made and handed in. */
async function shipping(story: Story): Promise<void> {
  const { buyer, maker } = story;
  await buyer.says('10 quarter ounce ball, unpainted, 1/0, no guard, to Ohio');
  await buyer.taps('Order this');
  await buyer.says(ADDRESS);
  for (const work of ['Pour', 'Trim', 'Pack']) {
    await maker.says('bench');
    await maker.taps(work);
    await story.later(5);
    await maker.taps('Done, all good');
  }
  await maker.taps('Handed in');
}
