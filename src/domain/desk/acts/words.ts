import { currentLine, emptyLine, isBlank, type Draft } from '../../order/draft.ts';
import { wholeLine } from '../../order/next.ts';
import { answered } from '../../order/talk.ts';
import type { Universal } from '../../order/universal.ts';
import { proceed } from '../ask.ts';
import { card, isMaker, says, withPerson, type Decision, type Turn } from '../turn.ts';
import { acceptTyped } from './accept.ts';
import { again } from './again.ts';
import { askMaker } from './asks.ts';
import { bench, undo } from './bench.ts';
import { addLine, back, change, draftOf, newDraft, opened, startOver, usual } from './draft.ts';
import { askToDrop, help, makerHelp, makerWelcome, otherLanguage, welcome } from './greet.ts';
import { digest, queue, stock, timers, week } from './maker.ts';
import { hasOrders, orders } from './orders.ts';
import { exportOwn, forget, privacy } from './privacy.ts';
import { agreed, talk } from './talk.ts';

/** A word that works in any state. It takes back whatever the program was waiting for, except that words to the maker may follow,
 *  and that an address is still awaited after words that only look or are kind. */
export function universal(turn: Turn, word: Universal, text: string): Decision {
  const { asked } = turn.by;
  const awaited = asked?.for === 'address' && AFTER_ADDRESS.some((kind) => kind === word) ? asked : null;
  if (awaited && word === 'yes')
    return says(
      turn.desk,
      card(turn.by.id, {
        code: 'ask-address',
        order: awaited.order,
        before: turn.desk.orders[awaited.order]?.address ?? null,
      }),
    );
  const by = { ...turn.by, asked: awaited };
  const free: Turn = { ...turn, by, desk: withPerson(turn.desk, by) };
  const maker = isMaker(turn.world, by.id);
  if (MAKER_ONLY.some((own) => own === word) && !maker) return says(free.desk, card(by.id, { code: 'for-maker-only' }));
  return (maker ? { ...WORDS, ...MAKER_WORDS } : WORDS)[word](free, text);
}

/** Words between the order and its address that leave the address to come. */
const AFTER_ADDRESS = ['thanks', 'yes', 'help', 'orders', 'privacy', 'language'] as const;

const MAKER_ONLY = ['bench', 'queue', 'timers', 'stock', 'digest', 'week', 'undo', 'health'] as const;

/** What to do with a word when there is a draft, and when there is none. */
const onOpen =
  (withDraft: (turn: Turn, draft: Draft) => Decision, withoutDraft: (turn: Turn) => Decision) =>
  (turn: Turn): Decision => {
    const draft = draftOf(turn);
    return draft === undefined ? withoutDraft(turn) : withDraft(turn, draft);
  };

const WORDS: Readonly<Record<Universal, (turn: Turn, text: string) => Decision>> = {
  start: startAt,
  help,
  back: onOpen((turn, draft) => back(turn, draft, '-'), welcome),
  cancel: onOpen((turn, draft) => (isBlank(draft) && hasOrders(turn) ? orders(turn) : askToDrop(turn, draft)), orders),
  'start-over': onOpen((turn, draft) => startOver(turn, draft, '-'), welcome),
  'ask-maker': (turn) => askMaker(turn),
  orders,
  privacy,
  export: exportOwn,
  forget,
  new: (turn) => newDraft(turn, 'below'),
  accept: (turn) => acceptTyped(turn) ?? onOpen((at, draft) => proceed(at, draft, 'below'), welcome)(turn),
  'add-line': onOpen((turn, draft) => addLine(turn, draft, '-'), welcome),
  change: onOpen((turn, draft) => change(turn, draft, '-'), welcome),
  usual: (turn, text) =>
    onOpen(
      (at, draft) => usual(at, draft, '-'),
      (at) => talk(at, text),
    )(turn),
  yes: (turn, text) => agreed(turn) ?? talk(turn, text),
  thanks: ({ desk, by }) => says(desk, card(by.id, { code: 'you-are-welcome' })),
  language: otherLanguage,
  bench,
  queue,
  timers,
  stock,
  digest,
  week,
  undo: (turn) => undo(turn),
  health: ({ desk, by, around }) => says(desk, card(by.id, { code: 'health', around: around.health })),
};

/** Words with a payload behind `/start`, as a link carries it: a style of the shop, or `again-K-1042`. Anything else only greets. */
function startAt(turn: Turn, text: string): Decision {
  const payload = /^\/start\s+([\w-]{1,64})\s*$/.exec(text)?.[1] ?? '';
  const order = /^again-(K-\d+)$/i.exec(payload)?.[1];
  if (order !== undefined) return again(turn, { act: 'again', on: order, version: 0, arg: '-' });
  const style = turn.world.shop.styles.find(({ id }) => id === payload)?.id;
  if (style === undefined) return welcome(turn);
  const open = draftOf(turn);
  const [at, draft] = open === undefined ? opened(turn) : [turn, withRoom(turn, open)];
  return draft === undefined ? welcome(turn) : proceed(at, answered(draft, 'style', style, turn.now), 'below');
}

/** An open draft with a line that has no style yet: the one at hand, or another after it. Undefined in the middle of a line, and where there is no room. */
function withRoom({ world: { shop } }: Turn, draft: Draft): Draft | undefined {
  const line = currentLine(draft);
  if (line.spec.style === undefined) return draft;
  if (wholeLine(shop, line) === undefined || draft.lines.length >= shop.orders.lines) return undefined;
  return { ...draft, lines: [...draft.lines, emptyLine], current: draft.lines.length };
}

/** Words that mean something else to the maker. */
const MAKER_WORDS: Readonly<Partial<typeof WORDS>> = { start: makerWelcome, help: makerHelp };
