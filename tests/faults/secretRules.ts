import { chmodSync, cpSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { inspect } from 'node:util';
import pino from 'pino';
import { expect } from 'vitest';
import { pinoLog } from '../../src/adapters/log/pinoLog.ts';
import { openLowdb } from '../../src/adapters/lowdb/open.ts';
import { connect } from '../../src/adapters/telegram/connect.ts';
import { outcomeOf } from '../../src/adapters/telegram/outcome.ts';
import { emptyBook } from '../../src/app/book.ts';
import { safely } from '../../src/app/log.ts';
import { BOOK_VERSIONS } from '../../src/bookVersions.ts';
import { emptyDesk } from '../../src/domain/desk/state.ts';
import { newFolder } from '../adapters/lowdb/folder.ts';
import { LAW, SHOP } from '../demoShop.ts';
import { BUYER, MAKER } from '../stories/story.ts';
import { openProgram } from '../../src/program.ts';
import { hostilePlatform } from './hostilePlatform.ts';
import { ALLOWED, shippedPackages } from './packages.ts';
import { SECRETS, inStory, ordered, type Rule } from './rule.ts';

const ROOT = join(import.meta.dirname, '..', '..');

const REFUSED = { status: 400, body: { ok: false, error_code: 400, description: 'Bad Request: forced' } };

const textsOf = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => readFileSync(join(folder, name), 'latin1'))
    .join('\n');

const logInto = (lines: string[]) => pinoLog({ write: (line) => void lines.push(line) } as pino.DestinationStream);
const BOOK = { versions: BOOK_VERSIONS, empty: emptyBook(emptyDesk), clock: Date.now, say: () => {} };

/** What must not get out, and what the program is made of. */
export const SECRET_RULES: readonly Rule[] = [
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
      expect(lines.join('')).not.toMatch(/\bPat\b|Shore|Columbus|football|pumpkin|\bSam\b/);
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
        expect(textsOf(folder)).not.toMatch(/Shore Road|football|K-1001|Columbus/);
        const copy = join(newFolder(), 'book');
        cpSync(folder, copy, { recursive: true, filter: (path) => !path.endsWith('lock') });
        const before = textsOf(copy);
        const opening = openLowdb({ ...BOOK, folder: copy, key: { hex: 'ab'.repeat(32) } });
        await expect(opening).rejects.toThrow(/key is not the one/);
        expect(textsOf(copy)).toBe(before);
      }),
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
