import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pushedClock } from './adapters/rehearsal/pushedClock.ts';
import { Halt } from './app/exit.ts';
import { instantOf, localClock, localDay } from './domain/craft/time.ts';
import { nextDue } from './domain/desk/due.ts';
import type { Shop } from './domain/shop/shop.ts';
import { BUYER, MAKER, openStage, type Stage } from './rehearse.ts';
import { readSettings } from './settings.ts';
import { openShopFile } from './shopFile.ts';
import { print, runAsProgram } from './terminal.ts';

/** A Monday evening with bench hours ahead. */
const BEGINS = { day: '2026-11-30', clock: '18:25' } as const;

type Act =
  | Readonly<{ who: 'buyer' | 'maker'; says: string; until: RegExp }>
  | Readonly<{ who: 'buyer' | 'maker'; taps: RegExp; until: RegExp }>
  | Readonly<{ who: 'maker'; waits: 'for what is due next'; until: RegExp }>;

const buyer = (says: string, until: RegExp): Act => ({ who: 'buyer', says, until });
const maker = (taps: RegExp, until: RegExp): Act => ({ who: 'maker', taps, until });
const step = (name: RegExp, next: RegExp): readonly Act[] => [
  maker(name, /TAKE CARE|HEADS/),
  maker(/^Done, all good/, next),
];

/** One order from the first word to the parcel. Each act names what must be seen after it. */
const ACTS: readonly Act[] = [
  buyer('25 quarter ounce football green pumpkin, 3/0, black guard, no skirt, to Ohio', /Nothing is ordered yet/),
  { who: 'buyer', taps: /^Order this/, until: /K-1001/ },
  buyer('Sam Fisher\n12 Shore Road\nColumbus, OH 43004', /12 Shore Road/),
  { who: 'maker', says: 'bench', until: /Pour/ },
  ...step(/^Pour/, /Pour: done/),
  ...step(/^Trim/, /Trim: done/),
  ...step(/^Paint/, /Paint: done/),
  ...step(/^Clear eyes/, /Clear eyes: done/),
  maker(/^Bake/, /up to heat/),
  { who: 'maker', waits: 'for what is due next', until: /heat/i },
  { who: 'maker', waits: 'for what is due next', until: /BAKE|oven/i },
  maker(/^Done/, /Bake: done/),
  { who: 'maker', waits: 'for what is due next', until: /COOL/i },
  { who: 'maker', says: 'bench', until: /guard/i },
  ...step(/^(Glue|Guard|Set)/i, /done/),
  { who: 'maker', waits: 'for what is due next', until: /Closing down/ },
  { who: 'maker', waits: 'for what is due next', until: /Good morning|handl/i },
  { who: 'maker', waits: 'for what is due next', until: /./ },
  { who: 'maker', waits: 'for what is due next', until: /Closing down/ },
  { who: 'maker', waits: 'for what is due next', until: /CURE/i },
  { who: 'maker', says: 'bench', until: /Pack/ },
  ...step(/^Pack/, /packed/),
  maker(/^Handed in/, /tracking/i),
  { who: 'maker', says: 'TRACK-0001', until: /K-1001/ },
];

async function main(): Promise<void> {
  const home = mkdtempSync(join(tmpdir(), 'jigwright-demo-'));
  try {
    await play(home);
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

async function play(home: string): Promise<void> {
  const read = readSettings({
    SHOP_FILE: process.env['SHOP_FILE'],
    DATA_DIR: join(home, 'book'),
    KEY_FILE: join(home, 'key'),
    PORT: '0',
  });
  if (!read.ok) throw new Halt('settings', read.faults.join('\n'));
  const shop = openShopFile(read.settings.shopFile);
  // The clock stands still between pushes, so that a slow computer plays the same evening.
  const clock = pushedClock({ real: () => instantOf(BEGINS.day, BEGINS.clock, shop.zone) });
  const stage = await openStage({
    settings: read.settings,
    shop,
    clock,
    saved: undefined,
    log: () => {},
    say: () => {},
  });
  const listening = stage.program.listen(() => {});
  try {
    await acted(stage, shop);
  } finally {
    await stage.program.stop();
    await listening;
    await stage.close();
  }
}

async function acted(stage: Stage, shop: Shop): Promise<void> {
  const tell = narrator(stage, shop);
  stage.rehearsal.chats.start(MAKER.id);
  await settled(stage);
  tell();
  for (const [index, act] of ACTS.entries()) {
    await perform(stage, shop, act, index + 1);
    await settled(stage);
    tell();
    if (!act.until.test(lastSeen(stage, act.who)))
      throw new Halt('failed', `Step ${index + 1} (${describe(act)}) did not show ${act.until}.`);
  }
  if (!/TRACK-0001/.test(lastSeen(stage, 'buyer')))
    throw new Halt('failed', 'The buyer did not hear that the parcel is under way.');
}

async function perform({ rehearsal, program, clock }: Stage, shop: Shop, act: Act, index: number): Promise<void> {
  const person = idOf(act.who);
  if ('says' in act) return void rehearsal.chats.say(person, act.says);
  if ('waits' in act) {
    clock.pushTo(nextDue(shop, program.desk(), clock.now()));
    return program.tick();
  }
  const label = buttonsOf(rehearsal, person).find((text) => act.taps.test(text));
  if (label === undefined) throw new Halt('failed', `Step ${index} (${describe(act)}) found no such button.`);
  rehearsal.chats.press(person, label);
}

const describe = (act: Act): string =>
  'says' in act
    ? `the ${act.who} says “${act.says}”`
    : 'taps' in act
      ? `the ${act.who} taps ${act.taps}`
      : `the maker waits ${act.waits}`;

const idOf = (who: Act['who']): number => (who === 'buyer' ? BUYER.id : MAKER.id);

/** Labels on all buttons of a chat, the newest message's first. */
const buttonsOf = ({ chats }: Stage['rehearsal'], person: number): readonly string[] =>
  chats
    .messagesOf(person)
    .toReversed()
    .flatMap(({ reply_markup }) => (reply_markup?.inline_keyboard ?? []).flat().map(({ text }) => text));

const lastSeen = ({ rehearsal }: Stage, who: Act['who']): string =>
  rehearsal.chats
    .messagesOf(idOf(who))
    .filter(({ from }) => from.is_bot)
    .map(({ text, caption }) => text ?? caption ?? '')
    .slice(-3)
    .join('\n');

/** Prints each message once, and again when it was written over. */
function narrator({ rehearsal, clock }: Stage, shop: Shop): () => void {
  const shown = new Map<number, string>();
  return () => {
    for (const [who, id] of [
      ['BUYER', BUYER.id],
      ['MAKER', MAKER.id],
    ] as const)
      for (const message of rehearsal.chats.messagesOf(id)) {
        const text = message.text ?? message.caption ?? '';
        if (shown.get(message.message_id) === text) continue;
        shown.set(message.message_id, text);
        const from = message.from.is_bot ? 'jigwright' : message.from.first_name;
        const at = `${localDay(clock.now(), shop.zone)} ${localClock(clock.now(), shop.zone)}`;
        print(
          `── ${who}'S CHAT · ${at} · ${from}${message.photo ? ' · [picture]' : ''}\n${text.replaceAll(/^/gm, '   ')}\n`,
        );
      }
  };
}

/** Waits until everything said was answered and everything answered was delivered. */
async function settled({ rehearsal, program }: Stage): Promise<void> {
  for (let tries = 0; tries < 4_000; tries += 1) {
    if (rehearsal.room.read().updates.length === 0 && program.waiting() === 0) return;
    await new Promise((resolve) => setTimeout(resolve, 3));
  }
  throw new Halt('failed', 'The program did not come to rest.');
}

runAsProgram(main);
