import { describe, expect, test } from 'vitest';
import { BUYER, DOT, MAKER, told, type Story } from './story.ts';

const GREEN = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const BALLS = '10 quarter ounce ball, unpainted, 1/0, no guard, to Ohio';
const ADDRESS = 'Sam Fisher, 12 Shore Road, Columbus, OH 43004';

async function ordered({ buyer }: Story, heads = GREEN): Promise<void> {
  await buyer.says(heads);
  await buyer.taps('Order this');
  await buyer.says(ADDRESS);
}

/** Photos shown to the maker. */
const shown = ({ rehearsal }: Story): number =>
  rehearsal.chats.messagesOf(MAKER).filter(({ photo, caption }) => photo && caption?.startsWith('Photo from Sam'))
    .length;

/** Photos sent together, with words under the first. */
const together = ({ rehearsal, settle }: Story, from: number, photos: number, words: string): Promise<void> => {
  const pictures = Array.from({ length: photos }, (_, at) => ({
    name: `p${at}.png`,
    mediaType: 'image/png',
    bytes: Buffer.from(DOT, 'base64'),
  }));
  rehearsal.chats.sendAlbum(from, pictures, words);
  return settle();
};

describe('a photo that comes after the order', () => {
  test('is kept with it, and the maker sees it under the order’s heading', () =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(story);
      expect(await buyer.sends('photo')).toMatch(/Photo kept with K-1001: 25 × 1\/4 oz football head/);
      expect(maker.sees()).toBe('Photo from Sam for K-1001: 25 × 1/4 oz football head');
      expect(desk().orders['K-1001']?.photos[0]).toHaveLength(1);
      await maker.says('bench');
      await maker.taps('Pour');
      expect(maker.buttons()).toContain('Photos of K-1001, line 1 (1)');
    }));

  test('goes with the heads that the buyer taps, where there are several', () =>
    told(async (story) => {
      const { buyer, desk } = story;
      await ordered(story);
      await ordered(story, BALLS);
      await buyer.sends('photo');
      expect(await buyer.sends('photo')).toMatch(/Which heads is the photo for/);
      expect(shown(story)).toBe(0);
      expect(await buyer.taps('K-1002: 10 × 1/4 oz ball head')).toMatch(/2 photos kept with K-1002/);
      expect(shown(story)).toBe(2);
      expect(desk().orders['K-1002']?.photos[0]).toHaveLength(2);
      expect(desk().orders['K-1001']?.photos.flat()).toEqual([]);
      expect(buyer.buttons()).not.toContain('K-1002: 10 × 1/4 oz ball head');
    }));

  test('is not kept with heads that are packed', () =>
    told(async (story) => {
      const { buyer, maker, later, desk } = story;
      await ordered(story, BALLS);
      for (const work of ['Pour', 'Trim', 'Pack']) {
        await maker.says('bench');
        await maker.taps(work);
        await later(5);
        await maker.taps('Done, all good');
      }
      await buyer.sends('photo');
      expect(desk().orders['K-1001']?.photos.flat()).toEqual([]);
      expect(desk().drafts[BUYER]?.lines[0]?.photos).toHaveLength(1);
    }));

  test('brings the words under it to the maker, now and at the bench', () =>
    told(async (story) => {
      const { maker } = story;
      await ordered(story);
      await together(story, BUYER, 2, 'eyes like this please');
      expect(maker.chat().filter((text) => text.startsWith('Photo from Sam for K-1001'))).toHaveLength(2);
      expect(maker.chat().join('\n')).toContain('“eyes like this please”');
      expect(await maker.says('K-1001')).toContain('“eyes like this please”');
    }));

  test('begins a new order where the words under it are one', () =>
    told(async (story) => {
      await ordered(story);
      await together(story, BUYER, 2, '20 white 1/8 oz ball heads like this');
      expect(story.desk().drafts[BUYER]?.lines[0]).toMatchObject({
        quantity: 20,
        photos: [expect.any(String), expect.any(String)],
      });
      expect(story.desk().orders['K-1001']?.photos.flat()).toEqual([]);
    }));
});

test('a buyer who begins with a photo does not have to send it again', () =>
  told(async ({ buyer, desk }) => {
    expect(await buyer.sends('photo')).toMatch(/Which style/);
    await buyer.says(GREEN);
    await buyer.taps('Order this');
    expect(desk().orders['K-1001']?.photos[0]).toHaveLength(1);
  }));

test('the maker answers with photos, and each reaches the buyer', () =>
  told(async (story) => {
    const { buyer, maker, rehearsal } = story;
    await ordered(story);
    await buyer.says('can you send a photo?');
    await buyer.taps('Tell the maker: K-1001');
    await maker.taps('Reply');
    await together(story, MAKER, 2, 'here they are');
    const photos = rehearsal.chats
      .messagesOf(BUYER)
      .filter(({ photo, caption }) => photo && /answers/.test(caption ?? ''));
    expect(photos).toHaveLength(2);
    expect(photos[0]?.caption).toContain('here they are');
  }));

describe('words about an order that was placed', () => {
  test.each([
    'can you make the hooks sharper on mine?',
    'could you sharpen the points a bit',
    'can i add 10 more to my order',
    'change the color to black please',
    '¿puede afilar los anzuelos de los míos?',
  ])('“%s” goes to the maker with one tap, under the order’s heading', (words) =>
    told(async (story) => {
      const { buyer, maker, desk } = story;
      await ordered(story);
      expect(await buyer.says(words)).toContain(words);
      expect(desk().questions).toEqual({});
      await buyer.taps('Tell the maker: K-1001');
      expect(maker.sees()).toBe(`Sam asks, order K-1001:\n\n“${words}”`);
      expect(buyer.buttons()).not.toContain('Tell the maker: K-1001');
      expect(desk().drafts[BUYER]).toBeUndefined();
    }),
  );

  test('go under the order that is tapped, where there are several', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await ordered(story);
      await ordered(story, BALLS);
      await buyer.says('a bit more shine on the heads would be nice');
      await buyer.taps('Tell the maker: K-1001');
      expect(maker.sees()).toMatch(/^Sam asks, order K-1001:/);
    }));

  test('asked from the card of an older order go under that one', () =>
    told(async (story) => {
      const { buyer, maker } = story;
      await ordered(story);
      await ordered(story, BALLS);
      await buyer.says('K-1001');
      await buyer.taps('Ask the maker');
      await buyer.says('are the eyes open?');
      expect(maker.sees()).toMatch(/^Sam asks, order K-1001:/);
    }));

  test('of a new order are that order', () =>
    told(async (story) => {
      await ordered(story);
      expect(await story.buyer.says('i need 20 more football heads, quarter ounce')).not.toMatch(/Tell the maker/);
      expect(story.desk().drafts[BUYER]?.lines[0]).toMatchObject({ quantity: 20 });
    }));

  test('“I moved” asks for the new address', () =>
    told(async (story) => {
      await ordered(story);
      expect(await story.buyer.says('I moved, new address')).toMatch(/name and address for K-1001/);
    }));
});

test('a cancelling that came to something leaves no button behind', () =>
  told(async (story) => {
    const { buyer, maker, rehearsal } = story;
    const labels = () =>
      rehearsal.chats
        .messagesOf(BUYER)
        .flatMap(({ reply_markup }) => (reply_markup?.inline_keyboard ?? []).flat().map(({ text }) => text));
    await ordered(story);
    await buyer.says('K-1001');
    await buyer.taps('Cancel this order');
    await buyer.taps('Keep the order');
    await expect.poll(labels).not.toContain('Yes, cancel it');
    await maker.says('bench');
    await maker.taps('Pour');
    await buyer.taps('Cancel this order');
    await buyer.taps('Yes, cancel it');
    await maker.taps('Keep making it');
    await expect.poll(labels).not.toContain('Yes, cancel it');
    await expect.poll(maker.buttons).not.toContain('Let it be cancelled');
  }));
