import { speaksOfOwn } from '../../order/afterwards.ts';
import { isBlank, MOST_PHOTOS } from '../../order/draft.ts';
import { onLine, orderButton, passOnButton } from '../orderButtons.ts';
import type { Line } from '../../order/spec.ts';
import type { Order } from '../order.ts';
import type { Loose } from '../person.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, withPerson, type Decision, type Turn } from '../turn.ts';
import { askedEnough, hasAskedEnough, relay } from './asks.ts';
import { draftOf, newButton } from './draft.ts';

/** Buttons that ask which order or head is meant. */
const OFFERED = 12;

/** What asks which order is meant gives way to the next such question, and to its answer. */
const SLOT = 'loose';

/** Longest words that are kept, in characters. */
const LONGEST = 1000;

const NOTHING_LOOSE: Loose = { said: '', photos: [] };

/** A line of an order, with its place in it. */
type Place = Readonly<{ order: Order; line: Line; at: number }>;

/** A photo that came after the order: kept with the head that it is of and shown to the maker, with the words under it.
 *  Where it may be of several, asks which. Undefined where nothing is being made for the sender. */
export function photoAfter(turn: Turn, photo: string, said: string): Decision | undefined {
  const places = placesOf(turn);
  const before = turn.by.loose?.photos.length ? turn.by.loose : NOTHING_LOOSE;
  const loose = {
    said: [before.said, said.trim()]
      .filter((words) => words !== '')
      .join(' ')
      .slice(0, LONGEST),
    photos: [...before.photos, photo].slice(-MOST_PHOTOS),
  };
  const [only, ...others] = places;
  if (only === undefined) return undefined;
  if (others.length === 0) return kept(turn, only, loose);
  const rows = places.slice(0, OFFERED).map(({ order, line, at }) => [onLine(order.id, line, at)]);
  return says(withLoose(turn, loose), card(turn.by.id, { code: 'photo-of-which' }, { rows, slot: SLOT }));
}

/** Words of a buyer about what they have ordered, which only the maker can answer: offered to be passed on.
 *  Undefined for someone without an order, and in the middle of a new one. */
export function wordsAfter(turn: Turn, text: string): Decision | undefined {
  const orders = ordersOf(turn);
  const draft = draftOf(turn);
  if (orders.length === 0 || (draft !== undefined && !isBlank(draft))) return undefined;
  const said = text.trim().slice(0, LONGEST);
  const rows = [...orders.slice(0, OFFERED).map(({ id }) => [passOnButton(id)]), [newButton()]];
  const say = { code: 'pass-on', said, orders: orders.length } as const;
  return says(withLoose(turn, { said, photos: [] }), card(turn.by.id, say, { rows, slot: SLOT }));
}

/** The same, of words that say themselves that they are about an order placed before. */
export const wordsOfOwn = (turn: Turn, text: string): Decision | undefined =>
  speaksOfOwn(text) ? wordsAfter(turn, text) : undefined;

/** What was sent goes with the order that was tapped: photos to its line, words to the maker. A second tap finds nothing to send. */
export function toOrder(turn: Turn, { on, arg }: Tap): Decision {
  const { desk, by } = turn;
  const order = desk.orders[on];
  if (order?.buyer !== by.id) return { ...nothing(desk), toast: 'not-yours' };
  if (by.loose === null) return { ...nothing(desk), toast: 'already' };
  if (by.loose.photos.length === 0)
    return hasAskedEnough(turn) ? askedEnough(turn) : inPlace(turn, relay(without(turn), by.loose.said, on));
  const place = placesOf(turn).find((one) => one.order.id === on && one.at === Number(arg));
  return place === undefined ? { ...nothing(desk), toast: 'stale' } : inPlace(turn, kept(turn, place, by.loose));
}

/** The answer stands where the question was. */
const inPlace = ({ by }: Turn, decision: Decision): Decision => ({
  ...decision,
  cards: decision.cards.map((one) => (one.to === by.id ? { ...one, slot: SLOT, place: 'over' } : one)),
});

function kept(turn: Turn, { order, line, at: place }: Place, { said, photos }: Loose): Decision {
  const { world, by } = turn;
  const before = order.photos[place] ?? [];
  const fresh = photos.filter((photo) => !before.includes(photo)).slice(0, MOST_PHOTOS - before.length);
  if (fresh.length === 0) return says(without(turn).desk, card(by.id, { code: 'photos-full', most: MOST_PHOTOS }));
  const next: Order = {
    ...order,
    photos: order.lines.map((_, at) => (at === place ? [...before, ...fresh] : (order.photos[at] ?? []))),
    said: order.lines.map((_, at) => [...(order.said[at] ?? []), ...(at === place && said !== '' ? [said] : [])]),
  };
  const { desk } = without(turn);
  return says(
    { ...desk, orders: { ...desk.orders, [order.id]: next } },
    card(by.id, { code: 'photo-kept', order: order.id, line, photos: fresh.length }),
    ...fresh.flatMap((photo) =>
      toMakers(
        world,
        { code: 'order-photo', order: order.id, buyer: by.name, line, said },
        { rows: [[orderButton(order.id)]], picture: { photo } },
      ),
    ),
  );
}

const ordersOf = ({ desk, by }: Turn): readonly Order[] =>
  Object.values(desk.orders).filter(({ buyer }) => buyer === by.id);

/** Heads that are still being made: a photo of how they should be can help. */
const placesOf = (turn: Turn): readonly Place[] =>
  ordersOf(turn)
    .filter(({ state }) => state !== 'packed')
    .flatMap((order) => order.lines.map((line, at) => ({ order, line, at })));

const withLoose = ({ desk, by }: Turn, loose: Loose): Turn['desk'] => withPerson(desk, { ...by, loose });

function without(turn: Turn): Turn {
  const by = { ...turn.by, loose: null };
  return { ...turn, by, desk: withPerson(turn.desk, by) };
}
