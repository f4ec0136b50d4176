import type { Instant } from '../craft/time.ts';
import type { Reader } from '../order/reader/read.ts';
import type { Around } from './around.ts';
import type { Card, Saying } from './card.ts';
import type { Order } from './order.ts';
import type { Person, PersonId } from './person.ts';
import type { Trade } from './quoting.ts';
import type { Desk } from './state.ts';

/** What does not change from command to command: the shop and the law, how its buyers' words are read, who the makers are,
 *  and whether buyers can pay in the chat. */
export type World = Trade & Readonly<{ reader: Reader; makers: readonly PersonId[]; pays?: 'in-chat' }>;

/** One command being decided: who sent it, when, and the state it meets. */
export type Turn = Readonly<{ world: World; desk: Desk; now: Instant; by: Person; around: Around }>;

/** A short answer shown on the tapped button itself. */
export const TOASTS = ['done', 'stale', 'saved', 'not-yours', 'unreadable', 'already', 'not-payable'] as const;
export type Toast = (typeof TOASTS)[number];

/** What a command comes to: the next state, what is said, and the orders that left the bench for the archive. */
export type Decision = Readonly<{
  desk: Desk;
  cards: readonly Card[];
  toast: Toast | null;
  closed: readonly Order[];
  /** People of whom nothing is to be kept any more, here or in the archive, but what the maker must keep. */
  forgotten?: readonly PersonId[];
}>;

export const nothing = (desk: Desk): Decision => ({ desk, cards: [], toast: null, closed: [] });

/** A decision that says something and maybe changes the state. */
export const says = (desk: Desk, ...cards: readonly Card[]): Decision => ({ ...nothing(desk), cards });

/** A card with the usual settings: an answer, below what was said before, with no buttons. */
export const card = (to: PersonId, say: Saying, more: Partial<Omit<Card, 'to' | 'say'>> = {}): Card => ({
  to,
  say,
  rows: [],
  kind: 'answer',
  slot: null,
  place: 'below',
  picture: null,
  key: null,
  ...more,
});

export const isMaker = ({ makers }: World, id: PersonId): boolean => makers.includes(id);

/** The same card for each maker. */
export const toMakers = (
  { makers }: World,
  say: Saying,
  more: Partial<Omit<Card, 'to' | 'say'>> = {},
): readonly Card[] => makers.map((maker) => card(maker, say, { kind: 'news', ...more }));

/** The desk with one person changed. */
export const withPerson = (desk: Desk, person: Person): Desk => ({
  ...desk,
  people: { ...desk.people, [person.id]: person },
});

/** A record without one of its keys. */
export const without = <T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> =>
  Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
