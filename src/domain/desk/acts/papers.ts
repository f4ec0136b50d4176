import { localDay } from '../../craft/time.ts';
import { receiptIn } from '../../order/afterwards.ts';
import { PAPERS, type PaperKind } from '../business.ts';
import { benchTap } from '../benchButtons.ts';
import type { CardButton, Saying } from '../card.ts';
import { allOrders, anyOrder } from '../finished.ts';
import type { Order } from '../order.ts';
import type { PersonId } from '../person.ts';
import type { Desk } from '../state.ts';
import type { Tap } from '../tap.ts';
import { draftOf } from './draft.ts';
import { card, nothing, says, type Decision, type Turn } from '../turn.ts';

/** A paper on an order, by its word and number: `slip K-1001`. */
export const paperFor =
  (kind: Exclude<PaperKind, 'price-list'>, word: string) =>
  (turn: Turn, rest: string): Decision => {
    const digits = /^(?:k[\s-]?)?(\d{3,7})\s*$/i.exec(rest)?.[1];
    if (digits === undefined) return says(turn.desk, card(turn.by.id, { code: 'which-order', word }));
    return paperOn(turn, kind, `K-${digits}`);
  };

/** The price list as the shop file has it. */
export const priceList = ({ world, desk, by, now }: Turn): Decision => {
  const day = localDay(now, world.shop.zone);
  return shown(desk, by.id, { code: 'paper', kind: 'price-list', order: null, buyer: null, day });
};

/** A paper that anybody may have by its name. */
export const paperAsked = (turn: Turn, text: string): Decision | undefined =>
  priceListAsked(turn, text) ?? receiptAsked(turn, text);

/** The same for whoever asks for it by name; in the middle of an order its own price is meant. */
const priceListAsked = (turn: Turn, text: string): Decision | undefined =>
  PRICE_LIST.test(text.trim()) && draftOf(turn) === undefined ? priceList(turn) : undefined;

const PRICE_LIST = /^\/?(?:price ?list|prices|lista de precios|precios)[?.!]*$/i;

/** A paper by its button. */
export function paper(turn: Turn, { on, arg }: Tap): Decision {
  const kind = PAPERS.find((one) => one === arg);
  if (kind === undefined) return { ...nothing(turn.desk), toast: 'stale' };
  return kind === 'price-list' ? priceList(turn) : paperOn(turn, kind, on);
}

/** The receipt of the sender's own order, once something was paid of it. */
export function receipt(turn: Turn, { on }: Tap): Decision {
  const order = anyOrder(turn, on);
  return order?.buyer === turn.by.id && order.ledger.length > 0
    ? paperOn(turn, 'receipt', on)
    : { ...nothing(turn.desk), toast: 'not-yours' };
}

/** The same for a buyer who types it, with its number or without: of their newest order that something was paid of. */
function receiptAsked(turn: Turn, text: string): Decision | undefined {
  const asked = receiptIn(text);
  if (asked === undefined) return undefined;
  const { desk, by, around } = turn;
  const number = asked.order;
  const found = allOrders(desk, around.archived).findLast(
    ({ id, buyer, ledger }) => buyer === by.id && ledger.length > 0 && (number === null || id === number),
  );
  return found === undefined
    ? says(desk, card(by.id, { code: 'no-receipt', order: number }))
    : paperOn(turn, 'receipt', found.id);
}

/** Nothing while there is nothing to show. */
export const receiptRows = ({ id, ledger }: Order): readonly (readonly CardButton[])[] =>
  ledger.length === 0 ? [] : [[{ label: { code: 'paper', kind: 'receipt' }, tap: benchTap('receipt', id) }]];

/** The papers that there are of an order: nothing is posted of a cancelled one. */
export const paperButtons = ({ id, state }: Order): readonly CardButton[] =>
  PAPERS_OF_ORDER.filter((kind) => kind !== 'packing-slip' || state !== 'cancelled').map((kind) =>
    paperButton(kind, id),
  );

const PAPERS_OF_ORDER = ['order-sheet', 'packing-slip', 'receipt'] as const;

const paperButton = (kind: PaperKind, order: string): CardButton => ({
  label: { code: 'paper', kind },
  tap: benchTap('paper', order, kind),
});

function paperOn(turn: Turn, kind: PaperKind, id: string): Decision {
  const { world, desk, by, now } = turn;
  const order = anyOrder(turn, id);
  if (order === undefined) return says(desk, card(by.id, { code: 'no-such-order', said: id }));
  if (kind === 'packing-slip' && order.state === 'cancelled')
    return says(desk, card(by.id, { code: 'no-slip', order: id }));
  const buyer = desk.people[order.buyer]?.name ?? null;
  return shown(desk, by.id, { code: 'paper', kind, order, buyer, day: localDay(now, world.shop.zone) });
}

/** To look at in the chat, and as a file to print. */
const shown = (desk: Desk, to: PersonId, say: Extract<Saying, { code: 'paper' }>): Decision =>
  says(desk, card(to, say, { picture: 'paper' }), card(to, say));
