import type { Check } from './check.ts';
import { COST_CHECKS } from './checkCosts.ts';
import { HOUR_CHECKS } from './checkHours.ts';
import { MOLD_CHECKS } from './checkMolds.ts';
import { NAME_CHECKS } from './checkNames.ts';
import { PRICE_CHECKS } from './checkPrices.ts';
import { STOCK_CHECKS } from './checkStock.ts';
import { TEXT_CHECKS } from './checkTexts.ts';
import type { Fault } from './fault.ts';
import { textFault } from './jsonText.ts';
import { allowedWords, faultyPaths, schemaFaults } from './schemaFaults.ts';
import { shopSchema, type Shop } from './shop.ts';
import { soundParts } from './sound.ts';

export type ShopRead = Readonly<{ ok: true; shop: Shop }> | Readonly<{ ok: false; faults: readonly Fault[] }>;

/** The shop that a text of JSON states, or everything that is wrong with it; a fault of the text itself has line and column as its path. */
export function readShopText(text: string): ShopRead {
  const bare = text.replace(/^\uFEFF/, '');
  const fault = textFault(bare);
  return fault === undefined ? parseShop(JSON.parse(bare)) : { ok: false, faults: [fault] };
}

/** The shop that a JSON value states, or everything that is wrong with it, in one go. */
export function parseShop(json: unknown): ShopRead {
  const parsed = shopSchema.safeParse(json, { error: allowedWords });
  const issues = parsed.error?.issues ?? [];
  const ofSchema = schemaFaults(shopSchema, json, issues);
  const sound = soundParts(json, issues.flatMap(faultyPaths));
  const faults = [...ofSchema, ...CHECKS.flatMap((check) => check(sound)).filter((fault) => !isEcho(fault, ofSchema))];
  return parsed.success && faults.length === 0 ? { ok: true, shop: parsed.data } : { ok: false, faults };
}

const CHECKS: readonly Check[] = [
  ...NAME_CHECKS,
  ...MOLD_CHECKS,
  ...STOCK_CHECKS,
  ...PRICE_CHECKS,
  ...COST_CHECKS,
  ...HOUR_CHECKS,
  ...TEXT_CHECKS,
];

/** What is missing only because it was cut out as faulty has been told already. */
const isEcho = ({ path }: Fault, told: readonly Fault[]): boolean =>
  told.some(
    (fault) => path === fault.path || (path.startsWith(fault.path) && /^[.[]/.test(path.slice(fault.path.length))),
  );
