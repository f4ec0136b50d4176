import type { Rate } from '../craft/money.ts';
import { HOUR, localDay, type Instant } from '../craft/time.ts';
import { checkLaw } from '../law/check.ts';
import type { LawRow } from '../law/row.ts';
import { checkLine, finding } from '../order/check.ts';
import type { Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import { wholeLine } from '../order/next.ts';
import type { Line } from '../order/spec.ts';
import { passKey } from '../order/wish.ts';
import type { Impossible } from '../plan/plan.ts';
import { moneyFor } from '../quote/quote.ts';
import { rushFor } from '../quote/rush.ts';
import type { Shop } from '../shop/shop.ts';
import type { Shelf } from '../stock/availability.ts';
import { checkStock, setAside } from '../stock/check.ts';
import { addAmounts, type Amounts } from '../stock/needs.ts';
import { partNeeds, partsOf, type Part } from './extras.ts';
import { askedShips, type Prospect } from './planning.ts';
import type { Quote } from './quoted.ts';
import { shelfOf } from './shelves.ts';
import type { Desk } from './state.ts';

/** The shop and the rules on lead that its heads may meet. */
export type Trade = Readonly<{ shop: Shop; law: readonly LawRow[] }>;

/** A quote, or what stands against one. */
export type Quoted =
  | Readonly<{ ok: true; quote: Quote; notes: readonly Finding[]; prospect: Prospect }>
  | Readonly<{ ok: false; findings: readonly Finding[]; impossible: Impossible['impossible'] }>;

/** Prices whole lines to a place and finds their ship day behind everything accepted.
 *  Nothing is reserved by it: the quote only holds for the state it met, until `goodUntil`. */
export function quoteLines({ shop, law }: Trade, desk: Desk, asked: Asked, now: Instant): Quoted {
  const findings = findingsOf({ shop, law }, desk, shelfOf(shop, desk, now), asked);
  const against = findings.filter((one) => one.kind !== 'note' && !asked.passed.includes(passKey(one)));
  const money = moneyFor(shop, asked.lines, asked.shipTo, asked.rush ? rushOf(shop, asked, now) : 0);
  if (against.length > 0 || money === undefined) return { ok: false, findings: against, impossible: [] };
  const ships = askedShips(shop, desk, now, asked.lines, asked.rush ? 'rush' : 'turn');
  if ('impossible' in ships) return { ok: false, findings: [], impossible: ships.impossible };
  const quote: Quote = {
    draft: asked.draft,
    version: asked.version,
    lines: [...asked.lines],
    shipTo: asked.shipTo,
    money,
    promise: { ships: ships.ships, confidence: ships.confidence },
    because: becauseOf(ships),
    goodUntil: now + shop.orders.quoteHours * HOUR,
  };
  return { ok: true, quote, notes: findings, prospect: ships };
}

/** What the shop adds for the haste of the day asked for; nothing where it sells none. */
export const rushOf = (shop: Shop, { needBy }: Asked, now: Instant): Rate =>
  rushFor(shop, needBy ?? null, localDay(now, shop.zone));

/** The chain of the plan, and the days kept in hand on top of it. */
function becauseOf({ because, ships, planned }: Prospect): Quote['because'] {
  const chain = because.map((one) => (one.code === 'hands' ? { ...one, with: [...one.with] } : one));
  return ships > planned ? [...chain, { code: 'spare', day: ships }] : chain;
}

/** Lines to be quoted, for a draft at a version. */
export type Asked = Readonly<{
  draft: string;
  version: number;
  lines: readonly Line[];
  shipTo: string;
  needBy?: string | null;
  /** Ahead of others, for the shop's charge. */
  rush?: boolean;
  /** Findings that the maker let pass. */
  passed: readonly string[];
}>;

/** The draft as it would be quoted; undefined while something is still to be asked. */
export function askedOf(shop: Shop, draft: Draft): Asked | undefined {
  const lines = draft.lines.map((line) => wholeLine(shop, line));
  if (draft.shipTo === null || lines.length === 0) return undefined;
  const whole = lines.filter((line) => line !== undefined);
  if (whole.length < lines.length) return undefined;
  return {
    draft: draft.id,
    version: draft.version,
    lines: whole,
    shipTo: draft.shipTo,
    needBy: draft.needBy,
    rush: draft.rush,
    passed: draft.passed,
  };
}

/** Molds, numbers, stock and postage of all lines, each line's stock counted after the lines before it. */
function findingsOf({ shop, law }: Trade, desk: Desk, full: Shelf, { lines, shipTo }: Asked): readonly Finding[] {
  const parts = partsOf(desk.shelf, lines);
  let shelf = full;
  const perLine = lines.flatMap((line, at) => {
    const found = [
      ...checkLine(shop, line.spec, line.quantity, at),
      ...checkStock(shop, shelf, line, at, needsAt(shop, parts, at)),
      ...checkLaw(shop, law, line, { at, place: shipTo, day: full.today }),
    ];
    shelf = setAside(shelf, needsAt(shop, parts, at));
    return found;
  });
  const posted = moneyFor(shop, lines, shipTo) !== undefined;
  return posted ? perLine : [...perLine, finding(0, { code: 'no-postage', slots: [], place: shipTo })];
}

/** What a line uses up, its heads off the shelf wanting only packing. */
const needsAt = (shop: Shop, parts: readonly Part[], at: number): Amounts =>
  addAmounts(parts.filter((part) => part.at === at).map((part) => partNeeds(shop, part)));
