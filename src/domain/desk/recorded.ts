import { localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import { journaled, lessOf, type Cause } from '../stock/journal.ts';
import { addAmounts, type Amounts } from '../stock/needs.ts';
import { STOCK_VERBS } from '../stock/said.ts';
import { withUse, type Usage } from '../stock/usage.ts';
import type { Command } from './command.ts';
import { onHandOf } from './shelves.ts';
import type { Desk } from './state.ts';
import type { Decision } from './turn.ts';

/** The decision with every change of the shelf written into the journal, whichever act it came from, and what the bench used counted by week. */
export function recorded(shop: Shop, before: Desk, command: Command, decision: Decision, now: Instant): Decision {
  const after = decision.desk;
  if (after.onHand === before.onHand) return decision;
  const [had, has] = [onHandOf(shop, before), onHandOf(shop, after)];
  const cause = causeOf(before, decision, command, now);
  const isWork = cause.why === 'used' || cause.why === 'taken-back';
  const day = localDay(now, shop.zone);
  const used = isWork ? lessOf(usedIn(after, decision.closed), usedIn(before)) : lessOf(had, has);
  const usage: Usage = isWork
    ? Object.entries(used).reduce<Usage>((sum, [item, amount]) => withUse(sum, item, amount, day), after.usage)
    : after.usage;
  const journal = [...journaled(after.journal, had, has, cause, used)];
  return { ...decision, desk: { ...after, journal, usage: plain(usage) } };
}

/** What the lots on the bench have used, and those of orders that left it just now. */
const usedIn = ({ lots }: Desk, closed: Decision['closed'] = []): Amounts =>
  addAmounts([...Object.values(lots), ...closed].map(({ used }) => used));

function causeOf(before: Desk, { desk: after, closed }: Decision, command: Command, now: Instant): Cause {
  const by = command.type === 'tick' ? null : command.by.id;
  const cancelled = closed.find(({ state }) => state === 'cancelled');
  if (cancelled !== undefined) return { at: now, by, why: 'used', ref: cancelled.id };
  // An act at the bench remembers its own lots; a count only shifts what is remembered.
  if (after.undo !== null && after.undo.lots !== before.undo?.lots)
    return { at: now, by, why: 'used', ref: after.undo.what };
  if (before.undo !== null && after.undo === null) return { at: now, by, why: 'taken-back', ref: before.undo.what };
  return { at: now, by, ...saidOf(command) };
}

/** Why the shelf changed by itself: a delivery, or what somebody said of it. */
function saidOf(command: Command): Pick<Cause, 'why' | 'ref'> {
  if (command.type === 'said') return { why: 'said', ref: command.text.trim() };
  if (command.type !== 'tapped' || command.tap === null) return { why: 'said', ref: '-' };
  const { act, arg } = command.tap;
  if (act === 'arrived') return { why: 'arrived', ref: arg };
  return { why: 'said', ref: act === 'stock-is' ? chosen(arg) : arg };
}

/** What was said of the stock, of a button that chose the item for it. */
const chosen = (arg: string): string => {
  const [verb = '', count = ''] = arg.split('=');
  return `${STOCK_VERBS[Number(verb)] ?? verb} ${count}`;
};

const plain = (usage: Usage): Desk['usage'] =>
  Object.fromEntries(Object.entries(usage).map(([item, rows]) => [item, [...rows]]));
