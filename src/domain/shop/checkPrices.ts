import { PROGRESSES } from './business.ts';
import type { Check } from './check.ts';
import { faultAt, repeated, unknownName, type Fault, type Path } from './fault.ts';
import { entries, idsOf, type SoundParts } from './sound.ts';

/** What must hold for prices, postage and tax. */
export const PRICE_CHECKS: readonly Check[] = [
  headsPriced,
  metalsPriced,
  dressingsPriced,
  pricesNameSomething,
  breaksRise,
  bandsRise,
  placesOnce,
  taxedOnce,
  depositNamed,
  creditFalls,
];

/** Every style and weight that a mold can cast has its price. */
function headsPriced(shop: SoundParts): Fault[] {
  if (byMargin(shop)) return [];
  const cast = entries(shop.molds).flatMap(([, { style, cavities }]) =>
    entries(cavities).flatMap(([, { weight }]) =>
      style === undefined || weight === undefined ? [] : { style, weight },
    ),
  );
  return [...new Map(cast.map((head) => [`${head.style} ${head.weight}`, head])).values()]
    .filter(({ style, weight }) => shop.prices?.heads?.[style]?.[weight] === undefined)
    .map(({ style, weight }) =>
      unpriced(['prices', 'heads', style, weight], `a ${style} head of ${weight} oz, which a mold casts`),
    );
}

/** Every metal has its price on top of lead's, be it nothing. */
function metalsPriced(shop: SoundParts): Fault[] {
  if (byMargin(shop)) return [];
  return (idsOf(shop.metals) ?? [])
    .filter((metal) => shop.prices?.metals?.[metal] === undefined)
    .map((metal) => unpriced(['prices', 'metals', metal], `a head of ${metal}`));
}

/** Every dressing has its price. */
function dressingsPriced(shop: SoundParts): Fault[] {
  if (byMargin(shop)) return [];
  return (idsOf(shop.dressings) ?? [])
    .filter((dressing) => shop.prices?.dressings?.[dressing] === undefined)
    .map((dressing) => unpriced(['prices', 'dressings', dressing], dressing));
}

/** A price stands for a style, metal or dressing of the shop. */
function pricesNameSomething(shop: SoundParts): Fault[] {
  const lists = [
    ['heads', idsOf(shop.styles)],
    ['metals', idsOf(shop.metals)],
    ['dressings', idsOf(shop.dressings)],
  ] as const;
  return lists.flatMap(([list, ids]) =>
    Object.keys(shop.prices?.[list] ?? {}).flatMap((name) => unknownName(['prices', list, name], name, ids)),
  );
}

/** A longer line is never dearer by the head: from break to break the count rises and the reduction does not fall. */
function breaksRise(shop: SoundParts): Fault[] {
  return entries(shop.prices?.breaks).flatMap(([at, { from, off }]) => {
    const before = shop.prices?.breaks?.[at - 1];
    const path = ['prices', 'breaks', at];
    return [
      ...notAbove([...path, 'from'], from, before?.from),
      ...notAbove([...path, 'off'], off, oneLess(before?.off)),
    ];
  });
}

/** A heavier parcel stands in a later band. */
function bandsRise(shop: SoundParts): Fault[] {
  return entries(shop.postage?.regions).flatMap(([region, { bands }]) =>
    entries(bands).flatMap(([at, { upToGrams }]) =>
      notAbove(['postage', 'regions', region, 'bands', at, 'upToGrams'], upToGrams, bands?.[at - 1]?.upToGrams),
    ),
  );
}

/** A place belongs to one region. */
function placesOnce(shop: SoundParts): Fault[] {
  const places = entries(shop.postage?.regions).flatMap(([region, { places }]) =>
    entries(places).map(([at, place]) => [['postage', 'regions', region, 'places', at], place] as const),
  );
  return repeated(places, 'a place');
}

/** A place has one tax rate. */
function taxedOnce(shop: SoundParts): Fault[] {
  return repeated(
    entries(shop.salesTax).map(([at, { place }]) => [['salesTax', at, 'place'], place]),
    'a place',
  );
}

/** A bench that waits for a deposit waits for some money. */
function depositNamed({ payment }: SoundParts): Fault[] {
  if (payment?.startsWhen !== 'deposit' || payment.deposit === undefined || payment.deposit > 0) return [];
  return [faultAt(['payment', 'deposit'], payment.deposit, 'more than 0, for the bench waits for it (startsWhen)')];
}

/** The further the work is, the less is paid back. */
function creditFalls({ payment }: SoundParts): Fault[] {
  const credit = payment?.credit;
  return PROGRESSES.flatMap((stage, at) => {
    const [found, before] = [credit?.[stage], credit?.[PROGRESSES[at - 1] ?? stage]];
    if (found === undefined || before === undefined || found <= before) return [];
    return [faultAt(['payment', 'credit', stage], found, `at most the ${before} of the stage before it`)];
  });
}

/** Then the list is not asked. */
const byMargin = ({ prices }: SoundParts): boolean => prices?.rule === 'margin';

const unpriced = (path: Path, what: string): Fault => faultAt(path, undefined, `the price in cents of ${what}`);

const notAbove = (path: Path, found: number | undefined, before: number | undefined): Fault[] =>
  found === undefined || before === undefined || found > before
    ? []
    : [faultAt(path, found, `more than the ${before} before it`)];

const oneLess = (count: number | undefined): number | undefined => (count === undefined ? undefined : count - 1);
