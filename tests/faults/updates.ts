import * as fc from 'fast-check';
import { ACTS } from '../../src/domain/desk/tap.ts';

/** People who are neither the maker nor the buyer whose order is watched. */
export const STRANGERS: readonly number[] = Array.from({ length: 20 }, (_, index) => 5000 + index);
const MAKER = 101;

const junk: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(null, undefined, true, -1, 0, 1e308, '', '__proto__', 'constructor', [], {}, [[]], 'x'.repeat(5000)),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.integer(),
);

const hostile = fc.constantFrom(
  '0 heads',
  '-5 ball heads',
  '1000000000 ball heads 1/4',
  '🎣'.repeat(4096),
  'a'.repeat(4096),
  '\u202E25 heads\u202C',
  'שלום 25 כדורים',
  '<b>25</b> & _*[`',
  '{"__proto__":{"maker":true}}',
  '\n\n\n',
  '   ',
  '/start K-1001',
  '/start '.padEnd(70, 'A'),
  '1/0 oz ball',
  '999999999999999999999999',
  '25 ball heads by 31.02.2026',
);
/** What the maker may say and the buyer of K-1001 may, said by others. */
const forbidden = fc.constantFrom(
  'bench',
  'queue',
  'stock',
  'timers',
  'digest',
  'health',
  'undo',
  'K-1001',
  'cancel K-1001',
  'look K-1001',
  'ship K-1001',
  'done',
  'start K-1001-1',
  'day off 2026-12-24',
  'garage 8',
  'stock lead 0',
  'reply Q-1 yes',
  'tracking 1234',
);
const ordinary = fc.constantFrom(
  '/start',
  '/help',
  '/cancel',
  '/back',
  '/orders',
  '/privacy',
  '/export',
  '/forget',
  'help',
  'back',
  'start over',
  'order it',
  'ask the maker',
  '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio',
  '50 ball 1/8 white',
  'Minnesota',
  '3/8',
  '4/0',
  'green pumpkin',
  'by friday',
  '12',
  'no guard',
  'another 25 in black',
  'Ann\n1 Elm St\nDuluth MN',
);
const words = fc.oneof(ordinary, ordinary, hostile, forbidden, fc.string({ unit: 'grapheme', maxLength: 200 }));

const someone = fc.constantFrom(...STRANGERS);
const user = (id: number): object => ({
  id,
  is_bot: false,
  first_name: `S${id}`,
  language_code: id % 2 === 0 ? 'en' : 'es',
});
const odd = fc.constantFrom(
  { is_bot: true },
  { id: 2 ** 52 },
  { id: -1 },
  { first_name: 'Kettle Bay', username: 'maker' },
  { language_code: 'x' },
);
const from = fc.oneof(
  { weight: 9, arbitrary: someone.map(user) },
  { weight: 1, arbitrary: fc.tuple(someone, odd).map(([id, more]) => ({ ...user(id), ...more })) },
);

const group = fc.constantFrom(
  { id: -100, type: 'supergroup', title: 'g' },
  { id: MAKER, type: 'private' },
  { id: -5, type: 'channel' },
);
const content = fc.oneof(
  { weight: 8, arbitrary: words.map((text) => ({ text })) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      { sticker: {} },
      { voice: {} },
      { poll: {} },
      { contact: {} },
      { dice: {} },
      { pinned_message: {} },
    ),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      photo: fc.array(
        fc.record({ file_id: fc.string({ minLength: 1, maxLength: 40 }), width: fc.nat(9000), height: fc.nat(9000) }),
        { maxLength: 4 },
      ),
      caption: words,
      media_group_id: fc.constantFrom('m1', 'm2'),
    }),
  },
);
const message = fc
  .tuple(from, content, fc.oneof({ weight: 9, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: group }))
  .map(([by, what, where]) => ({
    message_id: 7,
    date: 1_700_000_000,
    from: by,
    chat: where ?? { id: (by as { id: number }).id, type: 'private' },
    ...what,
  }));

const target = fc.constantFrom(
  '-',
  'K-1001',
  'K-1001-1',
  'D-1',
  'd1',
  'S-1',
  'T-1',
  'Q-1',
  'K-9999',
  '__proto__',
  'constructor',
);
const arg = fc.constantFrom('', '1', '25', 'football', '1/4', 'yes', 'style', 'MN', '999999999', 'toString');
const ours = fc
  .tuple(fc.constantFrom(...ACTS), target, fc.nat(40), arg)
  .map(([act, on, version, more]) => `${act}|${on}|${version.toString(36)}|${more}`.slice(0, 64));
const data = fc.oneof(
  { weight: 6, arbitrary: ours },
  { weight: 1, arbitrary: fc.string({ maxLength: 64 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 16 }) },
);
const press = fc.tuple(from, data, fc.nat(200)).map(([by, pressed, id]) => ({
  id: String(id + 1),
  from: by,
  chat_instance: 'c',
  data: pressed,
  message: { message_id: id, date: 0, chat: { id: (by as { id: number }).id, type: 'private' } },
}));

const reach = fc.tuple(from, fc.constantFrom('kicked', 'member', 'left', 'administrator')).map(([by, status]) => ({
  chat: { id: (by as { id: number }).id, type: 'private' },
  from: by,
  date: 1,
  old_chat_member: { status: 'member' },
  new_chat_member: { status },
}));

const valid = fc.oneof(
  { weight: 10, arbitrary: message.map((one) => ({ message: one })) },
  { weight: 2, arbitrary: message.map((one) => ({ edited_message: one })) },
  { weight: 8, arbitrary: press.map((one) => ({ callback_query: one })) },
  { weight: 1, arbitrary: reach.map((one) => ({ my_chat_member: one })) },
);

/** Something in the update, however deep, is taken out or is something else. */
const mutated = fc
  .tuple(valid, fc.array(fc.nat(30), { minLength: 1, maxLength: 5 }), junk)
  .map(([update, way, bad]) => changed(update, way, bad));

function changed(value: unknown, [step = 0, ...rest]: readonly number[], bad: unknown): unknown {
  if (typeof value !== 'object' || value === null) return bad;
  const keys = Object.keys(value);
  const key = keys[step % Math.max(1, keys.length)];
  if (key === undefined) return bad;
  const inner = (value as Record<string, unknown>)[key];
  return { ...value, [key]: rest.length === 0 ? bad : changed(inner, rest, bad) };
}

/** The bodies of updates as they may come: valid, mutated, hostile, or no update at all. */
export const updateBodies: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 12, arbitrary: valid },
  { weight: 5, arbitrary: mutated },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      {},
      { poll: {} },
      { message: null },
      { callback_query: [] },
      { channel_post: { chat: { id: -5, type: 'channel' }, text: 'bench' } },
    ),
  },
);
