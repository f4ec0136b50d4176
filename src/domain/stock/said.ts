import type { Day } from '../craft/time.ts';
import type { ItemId, Shop } from '../shop/shop.ts';
import { itemsMeant } from './find.ts';
import { laterDay } from './laterDay.ts';
import { wordsIn } from './tokens.ts';
import { namedItems } from './words.ts';

/** What can be said of the stock: goods came, were counted, were ordered, were lost or found again. */
export const STOCK_VERBS = ['got', 'count', 'ordered', 'lost', 'found'] as const;
export type StockVerb = (typeof STOCK_VERBS)[number];

/** A change of the stock as the maker said it; several items when the words fit more than one, none when they fit nothing. */
export type StockSaid = Readonly<{
  verb: StockVerb;
  /** In the item's unit; pieces as they were said, be they whole or not. */
  count: number;
  items: readonly ItemId[];
  /** The words that should name an item. */
  named: string;
  /** The day an ordered delivery is expected, if one was said. */
  day: Day | null;
}>;

/** What a message says about the stock; undefined when it is not about that: no such verb in front, or no number.
 *  @example stockSaid(shop, 'got 200 4/0 60 degree hooks', '2026-11-30')?.items //=> ['hook:60-flat-heavy:4/0']
 *  @example stockSaid(shop, 'ordered 500 bags for 2026-12-09', '2026-11-30')?.day //=> '2026-12-09' */
export function stockSaid(shop: Shop, text: string, today: Day): StockSaid | undefined {
  const spoken = /^\s*\/?(\p{L}+)\s+(.+?)[.!]*\s*$/su.exec(withoutReason(text));
  const verb = VERBS.get(spoken?.[1]?.toLowerCase() ?? '');
  if (spoken === null || verb === undefined) return undefined;
  const { day, rest } = laterDay(spoken[2] ?? '', today);
  const readings = [...amountsIn(rest)];
  const items = namedItems(shop);
  const read = readings.map(({ amount, before, after, name }) => {
    const meant = itemsMeant(items, wordsIn(name)).filter((item) => isCountedIn(shop, item, amount.unit));
    return { verb, items: meant, count: counted(shop, meant, amount), named: name.trim(), day, before, after };
  });
  const best = read.find((one) => one.items.length === 1) ?? read.find((one) => one.items.length > 1) ?? read[0];
  if (best === undefined) return undefined;
  return { verb, count: best.count, items: best.items, named: best.named, day: verb === 'ordered' ? day : null };
}

/** A message without the reason at its end; the journal keeps the whole of it. @example withoutReason('lost 10 bags because they tore') //=> 'lost 10 bags' */
const withoutReason = (text: string): string => text.replace(/[,;]?\s+(?:because|porque)\s.*$/isu, '');

/** A verb with no number after it, alone or before an item: the count is still to be asked. Undefined for other words.
 *  @example stockBegun(shop, 'ordered bags') //=> { verb: 'ordered', item: 'bag' } */
export function stockBegun(shop: Shop, text: string): Readonly<{ verb: StockVerb; item: ItemId | null }> | undefined {
  const [, said = '', rest = ''] = /^\s*\/?(\p{L}+)(?:\s+(.+?))?[.!?]*\s*$/su.exec(text) ?? [];
  const verb = VERBS.get(said.toLowerCase());
  if (verb === undefined) return undefined;
  if (rest === '') return { verb, item: null };
  const [item] = itemsMeant(namedItems(shop), wordsIn(rest));
  return item === undefined ? undefined : { verb, item };
}

const VERBS: ReadonlyMap<string, StockVerb> = new Map<string, StockVerb>([
  ...['got', 'received', 'restock', 'restocked', 'llegaron', 'llego', 'recibi', 'recibí'].map(
    (word) => [word, 'got'] as const,
  ),
  ...['count', 'counted', 'cuenta', 'conte', 'conté'].map((word) => [word, 'count'] as const),
  ...['ordered', 'pedi', 'pedí', 'encargue', 'encargué'].map((word) => [word, 'ordered'] as const),
  ...['lost', 'broke', 'spilled', 'used', 'perdi', 'perdí', 'gaste', 'gasté'].map((word) => [word, 'lost'] as const),
  ...['found', 'encontre', 'encontré'].map((word) => [word, 'found'] as const),
]);

/** A number with the unit it may have, and what is left when it is taken out. */
type Amount = Readonly<{ number: number; unit: string }>;
type Reading = Readonly<{ amount: Amount; before: string; after: string; name: string }>;

const NUMBER =
  /(?<![\d/.,#-])(\d{1,3}(?:,\d{3})+|\d+(?:\.\d+)?)(?![\d/°]|-\d|\s*degree)\s*(lbs?|pounds?|libras?|kg|kilos?|oz|ounces?|onzas?|grams?|gramos?|g|packs?|packets?|boxes|box|paquetes?|cajas?)?(?![\p{L}\d])/giu;

/** Every number of the text taken for the amount, in order: a pattern's degrees and a hook's size may be numbers too. */
function* amountsIn(text: string): Generator<Reading> {
  for (const { 0: whole, 1: digits = '', 2: unit = '', index } of text.matchAll(NUMBER)) {
    const before = text.slice(0, index);
    const after = text.slice(index + whole.length);
    const amount = { number: Number(digits.replaceAll(',', '')), unit: unit.toLowerCase() };
    yield { amount, before, after, name: `${before} ${after}` };
  }
}

/** Grams in each unit; packs are the item's own. An avoirdupois ounce, NIST Handbook 44, Appendix C. */
const GRAMS: readonly (readonly [RegExp, number])[] = [
  [/^(lb|pound|libra)/, 453.59237],
  [/^(kg|kilo)/, 1000],
  [/^(oz|ounce|onza)/, 28.349523125],
];

/** A unit of mass is for what is counted by weight. */
const isCountedIn = (shop: Shop, item: ItemId, unit: string): boolean =>
  unit === '' || /^(pack|box|paquete|caja)/.test(unit) || shop.stock.find((row) => row.item === item)?.unit === 'gram';

/** The amount in the item's own unit, whole grams. A pack of an item that names none is one piece; half a piece is not rounded away. */
function counted(shop: Shop, items: readonly ItemId[], { number, unit }: Amount): number {
  const grams = GRAMS.find(([pattern]) => pattern.test(unit))?.[1];
  if (grams !== undefined) return Math.round(number * grams);
  const packed = /^(pack|box|paquete|caja)/.test(unit);
  const packOf = packed ? shop.stock.find(({ item }) => item === items[0])?.packOf : undefined;
  const isWeighed = shop.stock.find(({ item }) => item === items[0])?.unit === 'gram';
  return isWeighed ? Math.round(number * (packOf ?? 1)) : number * (packOf ?? 1);
}
