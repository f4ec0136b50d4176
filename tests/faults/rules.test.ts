import { chmodSync, cpSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { inspect } from 'node:util';
import pino from 'pino';
import { expect, test } from 'vitest';
import { pinoLog } from '../../src/adapters/log/pinoLog.ts';
import { openLowdb } from '../../src/adapters/lowdb/open.ts';
import { connect } from '../../src/adapters/telegram/connect.ts';
import { decode } from '../../src/adapters/telegram/decode.ts';
import { FloodGate } from '../../src/adapters/telegram/flood.ts';
import { outcomeOf } from '../../src/adapters/telegram/outcome.ts';
import { emptyBook } from '../../src/app/book.ts';
import { safely } from '../../src/app/log.ts';
import { BOOK_VERSIONS } from '../../src/bookVersions.ts';
import { HOUR } from '../../src/domain/craft/time.ts';
import { emptyDesk, type Desk } from '../../src/domain/desk/state.ts';
import { sweep } from '../../src/domain/desk/sweep.ts';
import { ACTS } from '../../src/domain/desk/tap.ts';
import { readerFor } from '../../src/domain/order/reader/read.ts';
import { parseTap, writeTap } from '../../src/wording/buttons.ts';
import { newFolder } from '../adapters/lowdb/folder.ts';
import { LAW, SHOP } from '../demoShop.ts';
import { BUYER, MAKER, OTHER, openStory, type Story, type StoryParts } from '../stories/story.ts';
import { openProgram } from '../../src/program.ts';
import { hostilePlatform } from './hostilePlatform.ts';
import { exportsAndForgets } from './forgetting.ts';
import { ALLOWED, shippedPackages } from './packages.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const WHOLE = '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio';
const ADDRESS = 'Pat Shore\n12 Shore Road\nColumbus, OH 43004';
/** Whatever a buyer typed, and the token. */
const SECRETS = /Shore Road|Pat Shore|quarter ounce|rehearsal-on-this-computer/;

async function inStory(tell: (story: Story) => Promise<void>, parts: StoryParts = {}): Promise<void> {
  const opened = await openStory(parts, Infinity);
  try {
    await tell(opened.story);
  } finally {
    await opened.close();
  }
}

async function ordered({ buyer }: Story): Promise<void> {
  await buyer.says(WHOLE);
  await buyer.taps('Order this');
  await buyer.says(ADDRESS);
}

/** What may change only at the hands of the maker or the buyer of K-1001. */
const guarded = ({ orders, lots, onHand, sessions, garageCelsius, daysOff, undo }: Desk) =>
  structuredClone({ orders, lots, onHand, sessions, garageCelsius, daysOff, undo });

const REFUSED = { status: 400, body: { ok: false, error_code: 400, description: 'Bad Request: forced' } };

const textsOf = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => readFileSync(join(folder, name), 'latin1'))
    .join('\n');

const logInto = (lines: string[]) => pinoLog({ write: (line) => void lines.push(line) } as pino.DestinationStream);

const message = (more: object) => ({
  update_id: 1,
  message: {
    message_id: 1,
    from: { id: 7, is_bot: false, first_name: 'S' },
    chat: { id: 7, type: 'private' },
    ...more,
  },
});

/** The rules of a bot that strangers may write to, each with what proves it. */
const RULES: readonly (readonly [number, string, () => Promise<void> | void])[] = [
  [
    1,
    'the maker is known by number, at every command and every tap, and never by a name or in a group',
    () =>
      inStory(async (story) => {
        await ordered(story);
        const before = guarded(story.desk());
        story.rehearsal.chats.addGroup({ id: -77, title: 'g', members: [MAKER, OTHER] } as never);
        for (const words of ['bench', 'queue', 'stock', 'digest', 'undo', 'health', 'garage 20']) {
          expect(await story.other.says(words)).not.toMatch(SECRETS);
          expect(guarded(story.desk())).toEqual(before);
        }
        for (const act of ACTS) {
          expect(await story.other.forges(writeTap({ act, on: 'K-1001', version: 0, arg: '-' }))).not.toMatch(SECRETS);
          expect(guarded(story.desk()), act).toEqual(before);
        }
      }),
  ],
  [
    2,
    'what a button carries is a claim: only what the program itself writes is read',
    () => {
      for (const data of ['', 'x', 'order|K-1001|0', '|||', `order|K-1001|0|${'x'.repeat(60)}`, 'order|<b>|0|-'])
        expect(parseTap(data)).toBeNull();
      expect(parseTap('order|K-1001|0|-')).toEqual({ act: 'order', on: 'K-1001', version: 0, arg: '-' });
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
        await buyer.says(WHOLE);
        await buyer.taps('Order this');
        await buyer.says('<b>Pat</b> & _*[`\u202EShore\n1 Elm Street\nColumbus OH');
        expect(maker.chat().join('\n')).toContain('<b>Pat</b> & _*[`Shore');
        for (const { payload } of rehearsal.calls)
          expect(Object.keys(payload).filter((name) => /parse_mode|entities/.test(name))).toEqual([]);
      }),
  ],
  [
    5,
    'the token is in no log line, no error, no file and no message, whatever fails',
    async () => {
      const lines: string[] = [];
      let calls = 0;
      await inStory(
        async (story) => {
          await ordered(story);
          expect(textsOf(join(story.home, 'book'))).not.toMatch(SECRETS);
        },
        {
          log: logInto(lines),
          fault: (method) => (method === 'sendMessage' && (calls += 1) % 3 === 1 ? REFUSED : undefined),
        },
      );
      expect(calls).toBeGreaterThan(3);
      expect(lines.join('')).not.toMatch(SECRETS);
      const token = '42:AAFakeTokenThatIsLongEnoughToBeOne_00';
      const error: unknown = await connect(token, 'http://127.0.0.1:1')
        .api.getMe()
        .catch((caught: unknown) => caught);
      expect(inspect(error, { depth: 5 })).toContain('AAFake');
      expect(`${safely(error)} ${JSON.stringify(outcomeOf(error))}`).not.toContain('AAFake');
      logInto(lines)('failed', { code: inspect(error), kind: token });
      expect(lines.join('')).not.toContain('AAFake');
    },
  ],
  [
    6,
    'a log line holds numbers and codes, never what was typed',
    async () => {
      const lines: string[] = [];
      await inStory(ordered, { log: logInto(lines) });
      expect(lines.length).toBeGreaterThan(5);
      expect(lines.join('')).not.toMatch(/Pat|Shore|Columbus|football|pumpkin|Sam/);
      for (const line of lines)
        for (const value of Object.values(JSON.parse(line) as object))
          expect(String(value)).toMatch(/^(-?\d+(\.\d+)?|[A-Za-z][\w-]{0,40})$/);
    },
  ],
  [
    7,
    'a key or a folder that others can read is refused at the start',
    async () => {
      const home = newFolder();
      const open = () => openLowdb({ ...BOOK, folder: join(home, 'book'), key: { file: join(home, 'key') } });
      await (await open()).close();
      chmodSync(join(home, 'key'), 0o644);
      await expect(open()).rejects.toThrow(/chmod 600/);
      chmodSync(join(home, 'key'), 0o600);
      chmodSync(join(home, 'book'), 0o755);
      await expect(open()).rejects.toThrow(/chmod 700/);
    },
  ],
  [
    8,
    'nothing in the book can be read without the key, and with a wrong one nothing is changed',
    () =>
      inStory(async (story) => {
        await ordered(story);
        const folder = join(story.home, 'book');
        expect(textsOf(folder)).not.toMatch(/Shore|football|K-1001|Sam/);
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
    () =>
      inStory(async (story) => {
        await story.buyer.says('30 swim heads in white');
        const world = { shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [MAKER] };
        const month = 31 * 24 * HOUR;
        expect(sweep(world, story.desk(), story.now()).drafts[BUYER]).toBeDefined();
        const later = sweep(world, story.desk(), story.now() + month);
        expect(later.drafts).toEqual({});
        const swept = sweep(world, later, story.now() + month);
        expect(Object.keys(swept.people)).toEqual([String(MAKER)]);
      }),
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
    13,
    'nobody can call the program: it polls, and opens no address but the rehearsal’s own on this computer',
    () => {
      const sources = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' })
        .filter((name) => name.endsWith('.ts'))
        .map((name) => [name, readFileSync(join(ROOT, 'src', name), 'utf8')] as const);
      const listening = sources.filter(([, text]) => /createServer|webhookCallback|setWebhook\(/.test(text));
      expect(listening.map(([name]) => name)).toEqual(['adapters/rehearsal/httpBridge.ts']);
      expect(listening[0]?.[1]).toContain("'127.0.0.1'");
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
  [
    16,
    'what the program is made of is on a list: nothing comes in unseen, and no package runs a script when it is installed',
    () => {
      expect(shippedPackages()).toEqual(ALLOWED);
      expect(readFileSync(join(ROOT, '.ci', 'run'), 'utf8')).toContain('npm ci --ignore-scripts');
    },
  ],
  [
    17,
    'every act leaves a line that says who, when and what',
    async () => {
      const lines: string[] = [];
      await inStory(
        async (story) => {
          await ordered(story);
          await story.maker.says('bench');
          await story.maker.taps('Pour');
          await story.maker.taps('Undo');
        },
        { log: logInto(lines) },
      );
      const trail = lines
        .map((line) => JSON.parse(line) as Record<string, unknown>)
        .filter(({ msg }) => msg === 'turn');
      expect(trail.slice(-6).map(({ person, kind }) => [person, kind])).toEqual([
        [BUYER, 'said'],
        [BUYER, 'accept'],
        [BUYER, 'said'],
        [MAKER, 'said'],
        [MAKER, 'start'],
        [MAKER, 'undo'],
      ]);
      expect(trail.every(({ time, update }) => Number(time) > 0 && Number(update) > 0)).toBe(true);
    },
  ],
  [
    18,
    'a new token works on the old book: nothing that is kept depends on it',
    () =>
      inStory(async (story) => {
        await ordered(story);
        const home = newFolder();
        cpSync(join(story.home, 'book'), join(home, 'book'), {
          recursive: true,
          filter: (path) => !path.endsWith('lock'),
        });
        cpSync(join(story.home, 'key'), join(home, 'key'));
        const platform = await hostilePlatform(
          () => null,
          () => {},
        );
        const paths = { apiRoot: platform.url, dataDir: join(home, 'book'), key: { file: join(home, 'key') } };
        const parts = { shop: SHOP, law: LAW, makers: [MAKER], clock: story.now, log: () => {}, say: () => {} };
        const program = await openProgram({ ...parts, ...paths, token: '77:AnotherTokenOfTheSamePerson_000' });
        const listening = program.listen(() => void program.stop());
        await listening;
        expect(program.desk()).toEqual(story.desk());
        await program.close();
        await platform.close();
      }),
  ],
];

test.each(RULES)('rule %i: %s', { timeout: 20_000 }, (_number, _says, prove) => prove());

test('there are eighteen rules', () =>
  expect(RULES.map(([number]) => number)).toEqual(Array.from({ length: 18 }, (_, n) => n + 1)));

const BOOK = { versions: BOOK_VERSIONS, empty: emptyBook(emptyDesk), clock: Date.now, say: () => {} };
