import { leadShare } from '../craft/metals.ts';
import type { Day } from '../craft/time.ts';
import { finding } from '../order/check.ts';
import { choicesFor } from '../order/choices.ts';
import type { Finding, Remark, WayOut } from '../order/finding.ts';
import { massOf, metalOf } from '../order/head.ts';
import { cavityFor } from '../order/rules.ts';
import type { Line, Spec } from '../order/spec.ts';
import type { Shop } from '../shop/shop.ts';
import type { Place } from './place.ts';
import type { LawRow } from './row.ts';
import { lawFor, type Made, type Ruling } from './rule.ts';

/** What the rules on lead of the place it goes to say of a line, by the head as made; the ways out are metals without lead that can be cast. */
export function checkLaw(shop: Shop, rows: readonly LawRow[], line: Line, parcel: Parcel): readonly Finding[] {
  const { at, place, day } = parcel;
  const rulings = lawFor(rows, place, madeOf(shop, line.spec), day).filter(concernsBuyer);
  return rulings.map((ruling) =>
    finding(at, remarkOf(ruling, place), ruling.act === 'notice' ? [] : leadFree(shop, line.spec)),
  );
}

/** Which line of an order, where the parcel goes, and the day it is asked for. */
export type Parcel = Readonly<{ at: number; place: Place; day: Day }>;

/** A bill that is not law yet is the maker's to watch; a buyer would only be alarmed by it. */
const concernsBuyer = ({ act, why }: Ruling): boolean => act !== 'notice' || why !== 'not-yet-law';

/** A head as the law looks at it: its total weight in its own metal, and its length where the maker measured it. */
export function madeOf(shop: Shop, spec: Spec): Made {
  const mass = massOf(shop, spec);
  return {
    grams: mass.totalGrams,
    metalGrams: mass.metalGrams,
    lengthInches: cavityFor(shop, spec)?.cavity.lengthInches ?? null,
    leadShare: leadShare(metalOf(shop, spec).composition),
  };
}

const CODE = { refuse: 'law-refuses', hold: 'law-holds', notice: 'law-notice' } as const;

function remarkOf({ act, why, row }: Ruling, place: Place): Remark {
  const { fact, citation, asOf, since, tag } = row;
  return { code: CODE[act], slots: ['metal'], place, why, row: row.id, fact, citation, asOf, since, tag };
}

/** Metals without lead that go with everything else stated; a metal that the oven would melt comes with a bare head. */
function leadFree(shop: Shop, spec: Spec): readonly WayOut[] {
  const isFree = (metal: string): boolean => leadShare(metalOf(shop, { metal }).composition) === 0;
  const free = choicesFor(shop, { ...spec, metal: undefined }, 'metal').filter(isFree);
  const bare = choicesFor(shop, { ...spec, metal: undefined, paint: 'bare' }, 'metal').filter(
    (metal) => isFree(metal) && !free.includes(metal),
  );
  return [...free.map((metal) => ({ put: { metal } })), ...bare.map((metal) => ({ put: { metal, paint: 'bare' } }))];
}
