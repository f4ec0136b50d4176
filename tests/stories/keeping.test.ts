import { expect, test } from 'vitest';
import { unbundled } from '../../src/adapters/lowdb/backup.ts';
import { readKey } from '../../src/adapters/lowdb/key.ts';
import { BOOK_VERSIONS } from '../../src/bookVersions.ts';
import { join } from 'node:path';
import { BUYER, MAKER, openStory, told } from './story.ts';

const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';

test('the maker sees how the program does, and nobody else', () =>
  told(async ({ buyer, maker }) => {
    expect(await maker.says('health')).toMatch(/All is well[\s\S]*Version \d[\s\S]*Letters that wait: 0/);
    expect(await buyer.says('health')).not.toMatch(/Version/);
  }));

test('once a day a sealed backup comes into the maker’s chat, and what is in it can be restored', async () => {
  const { story, close } = await openStory({ backupToChat: true }, Infinity);
  const sent = () => story.rehearsal.room.read().files.filter(({ name }) => name.endsWith('.backup'));
  try {
    await story.buyer.says(WHOLE);
    await story.buyer.taps('Order this');
    await story.until('07:00', 1);
    for (let tries = 0; sent().length < 2 && tries < 2_000; tries += 1)
      await new Promise((resolve) => setTimeout(resolve, 10));
    await story.later(5);
    const key = readKey({ from: { file: join(story.home, 'key') }, inUse: 'book', say: () => {} });
    const { book } = unbundled(Buffer.from(sent().at(-1)?.base64 ?? '', 'base64'), key, BOOK_VERSIONS);
    expect(book.desk.orders['K-1001']).toMatchObject({ buyer: BUYER });
    expect(sent().map(({ name }) => name)).toEqual(['jigwright-2026-11-30.backup', 'jigwright-2026-12-01.backup']);
    expect(story.rehearsal.chats.messagesOf(MAKER).filter(({ document }) => document !== undefined)).toHaveLength(2);
  } finally {
    await close();
  }
});

test('five questions of one person may wait for the maker; a sixth is not passed on, until one is answered', () =>
  told(async ({ buyer, maker, desk }) => {
    for (let question = 1; question <= 5; question += 1) {
      await buyer.says('ask the maker');
      expect(await buyer.says(`Can you do pink number ${question}?`)).toMatch(/passed it on/);
    }
    expect(await buyer.says('ask the maker')).toMatch(/Five|5 questions/);
    expect(Object.keys(desk().questions)).toHaveLength(5);
    await maker.taps('Reply');
    await maker.says('Pink is fine.');
    await buyer.says('ask the maker');
    expect(await buyer.says('And a sixth?')).toMatch(/passed it on/);
  }));
