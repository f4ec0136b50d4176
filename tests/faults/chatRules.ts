import { expect } from 'vitest';
import { decode } from '../../src/adapters/telegram/decode.ts';
import { FloodGate } from '../../src/adapters/telegram/flood.ts';
import { HOUR } from '../../src/domain/craft/time.ts';
import { type Desk } from '../../src/domain/desk/state.ts';
import { sweep } from '../../src/domain/desk/sweep.ts';
import { ACTS } from '../../src/domain/desk/tap.ts';
import { readerFor } from '../../src/domain/order/reader/read.ts';
import { parseTap, writeTap } from '../../src/wording/buttons.ts';
import { LAW, SHOP } from '../demoShop.ts';
import { BUYER, MAKER, OTHER } from '../stories/story.ts';
import { addressesGo, exportsAndForgets } from './forgetting.ts';
import { refusals, replaysTheMaker, unhurried } from './replay.ts';
import { ADDRESS, SECRETS, inStory, ordered, type Rule } from './rule.ts';

/** What may change only at the hands of the maker or the buyer of K-1001. */
const guarded = ({ orders, lots, onHand, sessions, garageCelsius, daysOff, undo }: Desk) =>
  structuredClone({ orders, lots, onHand, sessions, garageCelsius, daysOff, undo });

/** What only the maker, or the buyer of K-1001, is shown. */
const MAKERS_OWN = /Pat Shore|Shore Road|Pour|Ships|TOTAL|on hand|Version/;
/** What a buyer may press; all else is the maker's. */
const ANYONES: readonly string[] = (
  'answer offered change take sooner line add-line drop-line usual each back start-over keep-on show accept ask-maker help new ' +
  'orders order cancel cancel-yes readdress reship wait again to-order reworded export forget forget-yes'
).split(' ');
const GROUP = -77;
/** Someone who calls themselves what the maker is called. */
const NAMESAKE = 301;

const message = (more: object) => ({
  update_id: 1,
  message: {
    message_id: 1,
    from: { id: 7, is_bot: false, first_name: 'S' },
    chat: { id: 7, type: 'private' },
    ...more,
  },
});

/** What strangers, buyers and the maker can do in the chat. */
export const CHAT_RULES: readonly Rule[] = [
  [
    1,
    'the maker is known by number, at every command and every tap, and never by a name or in a group',
    () =>
      inStory(async (story) => {
        await ordered(story);
        const before = guarded(story.desk());
        const isRefused = (): void => {
          expect(story.other.sees()).not.toMatch(MAKERS_OWN);
          expect(guarded(story.desk())).toEqual(before);
        };
        for (const words of ['bench', 'queue', 'stock', 'digest', 'undo', 'health', 'garage 20']) {
          await unhurried(story, () => story.other.says(words));
          isRefused();
        }
        for (const act of ACTS) {
          const before = refusals(story);
          const data = writeTap({ act, on: 'K-1001', version: 0, arg: '-' });
          await unhurried(story, () => story.other.forges(data));
          isRefused();
          if (!ANYONES.includes(act)) await expect.poll(() => refusals(story), { message: act }).toBe(before + 1);
        }
        const { chats } = story.rehearsal;
        chats.addGroup({ id: GROUP, title: 'g', members: [MAKER, OTHER] });
        chats.addPerson({ id: NAMESAKE, firstName: 'Kettle Bay', languageCode: 'en' });
        for (const [who, where] of [
          [MAKER, GROUP],
          [NAMESAKE, NAMESAKE],
        ] as const) {
          chats.say(who, 'bench', { chatId: where });
          await story.settle();
          const heard = chats.messagesOf(where).filter(({ from }) => from.is_bot);
          expect(JSON.stringify(heard)).not.toMatch(MAKERS_OWN);
          expect(guarded(story.desk())).toEqual(before);
        }
        await replaysTheMaker(story, guarded);
      }),
  ],
  [
    2,
    'what a button carries is a claim: only what the program itself writes is read',
    () => {
      for (const data of ['', 'x', 'order|K-1001|0', '|||', `order|K-1001|0|${'x'.repeat(60)}`, 'order|<b>|0|-'])
        expect(parseTap(data)).toBeNull();
      expect(parseTap('order|K-1001|0|-')).toEqual({ act: 'order', on: 'K-1001', version: 0, arg: '-' });
      return inStory(async (story) => {
        await ordered(story);
        const before = guarded(story.desk());
        const forged = [
          '',
          '\u0000',
          '|||',
          'x'.repeat(64),
          '👍'.repeat(16),
          'order|__proto__|0|-',
          'cancel-yes|K-1001|zz|-',
        ];
        for (const data of forged) {
          expect(await story.other.forges(data)).not.toMatch(SECRETS);
          expect(guarded(story.desk()), data).toEqual(before);
        }
        const answers = story.rehearsal.calls.filter(({ method }) => method === 'answerCallbackQuery');
        // One of the buyer's own, for the order.
        expect(answers).toHaveLength(forged.length + 1);
      });
    },
  ],
  [
    3,
    'a link that brings someone in carries a claim as well',
    () =>
      inStory(async (story) => {
        await ordered(story);
        for (const payload of ['K-1001', 'again-K-1001', '__proto__', 'A'.repeat(64), '..%2f', 'football'])
          expect(await story.other.says(`/start ${payload}`)).not.toMatch(SECRETS);
        expect(Object.keys(story.desk().orders)).toEqual(['K-1001']);
      }),
  ],
  [
    4,
    'what people type is never read as markup, and says what it said',
    () =>
      inStory(async ({ buyer, maker, rehearsal }) => {
        await buyer.says('25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio');
        await buyer.taps('Order this');
        await buyer.says('<b>Pat</b> & _*[`\u202EShore\n1 Elm Street\nColumbus OH');
        expect(maker.chat().join('\n')).toContain('<b>Pat</b> & _*[`Shore');
        for (const { payload } of rehearsal.calls)
          expect(Object.keys(payload).filter((name) => /parse_mode|entities/.test(name))).toEqual([]);
      }),
  ],
  [
    9,
    'people get a copy of what is kept about them, and can have it deleted everywhere but in the tax books',
    () =>
      inStory(async (story) => {
        await ordered(story);
        await exportsAndForgets(story, ADDRESS);
      }),
  ],
  [
    10,
    'drafts, strangers and addresses are not kept for ever',
    async () => {
      await inStory((story) => addressesGo(story, ADDRESS));
      await inStory(async (story) => {
        await story.buyer.says('30 swim heads in white');
        const world = { shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [MAKER] };
        const month = 31 * 24 * HOUR;
        expect(sweep(world, story.desk(), story.now()).drafts[BUYER]).toBeDefined();
        const later = sweep(world, story.desk(), story.now() + month);
        expect(later.drafts).toEqual({});
        const swept = sweep(world, later, story.now() + month);
        expect(Object.keys(swept.people)).toEqual([String(MAKER)]);
      });
    },
  ],
  [
    11,
    'a photo is a number of the platform, up to ten a head; a file is not looked at',
    () =>
      inStory(async ({ buyer, desk, rehearsal }) => {
        await buyer.says('30 swim heads in white');
        for (let photo = 0; photo < 15; photo += 1) {
          await buyer.sends('photo');
          await buyer.says('back');
        }
        const photos = desk().drafts[BUYER]?.lines[0]?.photos ?? [];
        expect(photos.length).toBeLessThanOrEqual(10);
        expect(rehearsal.calls.map(({ method }) => method)).not.toContain('getFile');
        expect(decode(message({ document: { file_id: 'f', file_name: '../../x', file_size: 2 ** 31 } }))).toMatchObject(
          {
            command: { type: 'sent', thing: 'file', file: null },
          },
        );
      }),
  ],
  [
    12,
    'a thousand messages of one person are twenty, one notice, and hold up nobody',
    () => {
      const gate = new FloodGate();
      const all = Array.from({ length: 1000 }, () => gate.admit(7, 0));
      expect([all.filter((one) => one === 'in').length, all.filter((one) => one === 'notice').length]).toEqual([20, 1]);
      expect(gate.admit(8, 0)).toBe('in');
    },
  ],
  [
    14,
    'odd numbers and names of persons do not reach into the program',
    () => {
      for (const id of ['__proto__', -1, 0, 1.5, 2 ** 60, null])
        expect(
          decode(message({ from: { id, is_bot: false, first_name: 'S' }, text: 'x' }))?.command ?? null,
        ).toBeNull();
      expect(decode(JSON.parse('{"update_id":1,"__proto__":{"message":{}}}'))?.command).toBeNull();
      expect(parseTap('constructor|__proto__|0|-')).toBeNull();
    },
  ],
  [
    15,
    'groups, channels, other bots and those who speak as a channel are not heard',
    () => {
      for (const more of [
        { chat: { id: -5, type: 'group' } },
        { chat: { id: -6, type: 'channel' } },
        { chat: { id: 8, type: 'private' } },
        { sender_chat: { id: -6, type: 'channel' } },
        { from: { id: 7, is_bot: true, first_name: 'S' } },
      ])
        expect(decode(message({ text: 'bench', ...more }))?.command).toBeNull();
    },
  ],
];
