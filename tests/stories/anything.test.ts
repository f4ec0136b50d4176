import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instantOf } from '../../src/domain/craft/time.ts';
import type { Card } from '../../src/domain/desk/card.ts';
import type { Command } from '../../src/domain/desk/command.ts';
import { decide } from '../../src/domain/desk/decide.ts';
import { deskSchema, emptyDesk, type Desk } from '../../src/domain/desk/state.ts';
import type { Tap } from '../../src/domain/desk/tap.ts';
import { readerFor } from '../../src/domain/order/reader/read.ts';
import { parseTap, writeTap } from '../../src/wording/buttons.ts';
import { write } from '../../src/wording/write.ts';
import { LAW, SHOP } from '../demoShop.ts';

const MAKER = { id: 101, name: 'Kettle Bay', language: 'en' } as const;
const BUYERS = [
  { id: 201, name: 'Sam', language: 'en' },
  { id: 202, name: 'Álex', language: 'es' },
] as const;
const begin = instantOf('2026-11-30', '18:00', SHOP.zone);
const rules = decide({ shop: SHOP, law: LAW, reader: readerFor(SHOP), makers: [MAKER.id] });

const SAID = [
  '25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio',
  '40 1/8 ball heads white size 2 to Minnesota',
  '20 1/4 football in pink glitter',
  'same but white',
  'another 20',
  'make that 600',
  '30 bismuth swim 3/8 black',
  'to New Hampshire',
  'cancel',
  'back',
  'help',
  'yes',
  'Sam Fisher, 12 Shore Road, Duluth MN 55800',
];
const MADE = [
  'bench',
  'digest',
  'week',
  'queue',
  'timers',
  'stock',
  'undo',
  'garage 40',
  'reckon 25 3/8 football',
  'K-1001',
  'TRACK-1',
];

/** One thing that happens: somebody says something known or anything at all, taps one of their buttons, or the clock goes on. */
const happening = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('said' as const), who: fc.nat(1), text: fc.constantFrom(...SAID) }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('said' as const),
      who: fc.nat(2),
      text: fc.string({ unit: 'binary', maxLength: 200 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('said' as const), who: fc.constant(2), text: fc.constantFrom(...MADE) }),
  },
  { weight: 9, arbitrary: fc.record({ kind: fc.constant('tap' as const), who: fc.nat(2), which: fc.nat(400) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('later' as const), minutes: fc.nat(900) }) },
);

test('whatever is said and tapped, nothing throws, every card can be worded, and nothing goes below nothing', () => {
  fc.assert(
    fc.property(fc.array(happening, { minLength: 20, maxLength: 60 }), (happenings) => {
      let desk: Desk = emptyDesk;
      let now = begin;
      const shown: Record<number, Tap[]> = { 201: [], 202: [], 101: [] };
      for (const one of happenings) {
        const by = one.kind === 'later' ? MAKER : ([...BUYERS, MAKER][one.who] ?? MAKER);
        if (one.kind === 'later') now += one.minutes * 60_000;
        const taps = shown[by.id] ?? [];
        const command: Command =
          one.kind === 'later'
            ? { type: 'tick' }
            : one.kind === 'said'
              ? { type: 'said', by, text: one.text }
              : {
                  type: 'tapped',
                  by,
                  tap: taps[taps.length - 1 - (one.which % Math.max(1, taps.length))] ?? null,
                  message: 1,
                };
        const decision = rules(desk, command, now);
        for (const card of decision.cards) shown[card.to]?.push(...worded(card));
        desk = decision.desk;
        sound(desk);
      }
      expect(deskSchema.safeParse(JSON.parse(JSON.stringify(desk))).error?.issues ?? []).toEqual([]);
    }),
    { numRuns: 60 },
  );
}, 60_000);

/** A card in both languages; the taps of its buttons, each of which comes back whole from its 64 bytes. */
function worded(card: Card): readonly Tap[] {
  for (const language of ['en', 'es'] as const) {
    const letter = write(SHOP, language, card);
    expect(letter.text).not.toMatch(/undefined|NaN|\[object/);
    for (const { data } of letter.rows.flat()) expect(Buffer.byteLength(data)).toBeLessThanOrEqual(64);
  }
  const taps = card.rows.flat().map(({ tap }) => tap);
  for (const tap of taps) expect(parseTap(writeTap(tap))).toEqual(tap);
  return taps;
}

function sound({ lots, shelf, orders, timers, sessions }: Desk): void {
  for (const lot of Object.values(lots)) {
    expect(orders[lot.order], `${lot.id} has an order`).toBeDefined();
    expect(Math.min(lot.good, lot.scrap, ...Object.values(lot.reserved))).toBeGreaterThanOrEqual(0);
  }
  for (const count of Object.values(shelf)) expect(count).toBeGreaterThanOrEqual(0);
  for (const session of Object.values(sessions))
    if (session.step === 'bake')
      expect(Object.values(timers).some((timer) => timer.session === session.id && timer.kind === 'bake')).toBe(true);
}
