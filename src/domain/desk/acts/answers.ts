import { addressIn, bareAddress } from '../../order/address.ts';
import { asksAfter } from '../../order/afterwards.ts';
import { isBlank } from '../../order/draft.ts';
import type { Card } from '../card.ts';
import { onOrder } from '../orderButtons.ts';
import type { Tap } from '../tap.ts';
import { card, nothing, says, toMakers, withPerson, type Decision, type Turn } from '../turn.ts';
import { answerQuestion, relay } from './asks.ts';
import { addressCard } from './reship.ts';
import { tracked, TRACKING_MOST, trackingSaid } from './ship.ts';

/** What was asked of this person, if anything was, answered by what they typed. */
export function answerAsked(turn: Turn, text: string): Decision | undefined {
  const { by, desk } = turn;
  if (by.asked === null || text === '') return undefined;
  switch (by.asked.for) {
    case 'question':
      return relay(turn, text, by.asked.order);
    case 'reply':
      return answerQuestion(turn, by.asked.question, text);
    case 'tracking':
      return hasDigits(text)
        ? tracked(turn, by.asked.order, text.slice(0, TRACKING_MOST))
        : trackingSaid(turn, by.asked.order);
    case 'address': {
      const found = desk.orders[by.asked.order];
      return found?.buyer === by.id && !isNoAddress(turn, text) ? keepAddress(turn, found.id, text) : undefined;
    }
  }
}

/** A tracking number has figures in it (UPU S10: nine of them); words alone were for something else, and a parcel cannot be called back. */
const hasDigits = (text: string): boolean => /\d/.test(text);

/** What names no street, box or place is no address, and neither is a question or an order. */
const isNoAddress = (turn: Turn, text: string): boolean =>
  !(addressIn(text) !== null || SAME.test(text)) ||
  (addressIn(text) !== 'whole' && (text.endsWith('?') || asksAfter(text) !== undefined || asksForHeads(turn, text)));

/** A whole address that nobody asked for takes the place of the one that the newest order goes to, while that can still be; not in the middle of another order. */
export function readdressed(turn: Turn, text: string): Decision | undefined {
  const draft = turn.desk.drafts[turn.by.id];
  const order = Object.values(turn.desk.orders).findLast(
    ({ buyer, state }) => buyer === turn.by.id && state !== 'packed',
  );
  const isFree = draft === undefined || isBlank(draft) || order?.address === null;
  return order && isFree && addressIn(text) === 'whole' ? keepAddress(turn, order.id, text) : undefined;
}

/** Whether words are an order of their own rather than an address: they name a head and one thing more about it. */
export const asksForHeads = ({ world, now, by }: Turn, text: string): boolean =>
  world.reader
    .read(text, now, by.language)
    .lines.some((line) => line.style !== undefined && Object.keys(line).length > 1);

/** Less than this is no name and address. */
const SHORTEST_ADDRESS = 10;

/** "Same address": that of the newest other order on the bench. */
const SAME =
  /^(?:the |to the )?same(?: address| one| place)?(?: as (?:before|last time|the other(?: one)?))?[.!]*$|^(?:a )?la misma(?: direcci[oó]n)?(?: de antes)?[.!]*$/i;

const addressMeant = (turn: Turn, text: string): string => (SAME.test(text) ? (addressBefore(turn) ?? '') : text);

const addressBefore = ({ desk, by }: Turn): string | null =>
  Object.values(desk.orders)
    .filter(({ buyer, address }) => buyer === by.id && address !== null)
    .at(-1)?.address ?? null;

/** A button for the address of an order before, where there is one. */
export const sameAddressRows = (turn: Turn, id: string): Card['rows'] =>
  addressBefore(turn) === null ? [] : [[onOrder('same-address', 'same-address', id)]];

/** Sends the sender's own order to the address of the one before. */
export function sameAddress(turn: Turn, { on }: Tap): Decision {
  const address = addressBefore(turn);
  if (turn.desk.orders[on]?.buyer !== turn.by.id) return { ...nothing(turn.desk), toast: 'not-yours' };
  return address === null ? { ...nothing(turn.desk), toast: 'stale' } : keepAddress(turn, on, address);
}

function keepAddress(turn: Turn, id: string, said: string): Decision {
  const { world, by } = turn;
  const address = bareAddress(addressMeant(turn, said));
  if (address.length < SHORTEST_ADDRESS)
    return says(
      turn.desk,
      card(by.id, { code: 'ask-address', order: id, before: turn.desk.orders[id]?.address ?? null }),
    );
  const desk = withPerson(turn.desk, { ...by, asked: null });
  const found = desk.orders[id];
  if (found === undefined) return says(desk);
  const kept = { ...found, address };
  const say = { code: 'order-address', order: kept, buyer: by.name } as const;
  return says(
    { ...desk, orders: { ...desk.orders, [id]: kept } },
    addressCard({ ...turn, desk }, kept),
    ...toMakers(world, say),
  );
}
