/** The moments at which the work can hurt. */
export const MOMENTS = [
  'first-start',
  'pour',
  'melt-added',
  'trim',
  'dip',
  'eyes',
  'bake',
  'pin-pull',
  'epoxy-mix',
  'close-down',
  'ship',
] as const;
export type Moment = (typeof MOMENTS)[number];

/** The cautions of the trade, by code; their sentences are wording. */
export const CAUTIONS = [
  'official-advice',
  'keep-away',
  'blood-test',
  'codes-first',
  'dry-metal',
  'dry-tools',
  'cover-up',
  'fan-on',
  'pot-limit',
  'no-food',
  'same-bin',
  'wet-wipe',
  'no-dry-sweep',
  'hot-head',
  'no-flame',
  'sieve-powder',
  'clear-eye',
  'own-oven',
  'vent-oven',
  'set-timer',
  'check-alloy',
  'stay-by-oven',
  'use-pliers',
  'nitrile-gloves',
  'small-mix',
  'stay-by-cup',
  'watch-pot-life',
  'wash',
  'change-clothes',
  'wipe-bench',
  'bag-dross',
  'lead-label',
  'age-label',
  'local-rules',
] as const;
export type Caution = (typeof CAUTIONS)[number];

/** All cautions of a moment, and the few that are repeated every time after the first in a session. */
type Care = Readonly<{ full: readonly Caution[]; short: readonly Caution[] }>;

/** Nothing with molten lead, lead dust, the oven or a parcel is ever without a caution. */
const CARE: Readonly<Record<Moment, Care>> = {
  'first-start': { full: ['official-advice', 'keep-away', 'blood-test', 'codes-first'], short: ['keep-away'] },
  pour: {
    full: ['dry-metal', 'dry-tools', 'cover-up', 'fan-on', 'pot-limit', 'no-food', 'keep-away'],
    short: ['dry-metal', 'cover-up', 'fan-on'],
  },
  'melt-added': { full: ['dry-metal', 'same-bin'], short: ['dry-metal', 'same-bin'] },
  trim: { full: ['wet-wipe', 'no-dry-sweep', 'no-food'], short: ['wet-wipe'] },
  dip: { full: ['hot-head', 'no-flame', 'sieve-powder', 'clear-eye'], short: ['hot-head', 'no-flame'] },
  eyes: { full: ['hot-head'], short: ['hot-head'] },
  bake: {
    full: ['own-oven', 'vent-oven', 'set-timer', 'check-alloy', 'stay-by-oven'],
    short: ['check-alloy', 'stay-by-oven'],
  },
  'pin-pull': { full: ['hot-head', 'use-pliers'], short: ['use-pliers'] },
  'epoxy-mix': {
    full: ['nitrile-gloves', 'small-mix', 'stay-by-cup', 'watch-pot-life'],
    short: ['nitrile-gloves', 'watch-pot-life'],
  },
  'close-down': { full: ['wash', 'change-clothes', 'wipe-bench', 'bag-dross'], short: ['wash', 'change-clothes'] },
  ship: { full: ['lead-label', 'age-label', 'local-rules'], short: ['lead-label', 'age-label', 'local-rules'] },
};

/** The cautions to show as a moment comes: all of them the first time in a session, the short list when it is among those already seen.
 *  Parcels always get the whole label.
 *  @example cautionsAt('pin-pull', ['pin-pull']) //=> ['use-pliers'] */
export const cautionsAt = (moment: Moment, seen: readonly Moment[]): readonly Caution[] =>
  seen.includes(moment) ? CARE[moment].short : CARE[moment].full;

/** Of these cautions, the ones that hold for metal without lead too. @example withoutLead(['lead-label', 'hot-head']) //=> ['hot-head'] */
export const withoutLead = (cautions: readonly Caution[]): readonly Caution[] =>
  cautions.filter((caution) => !ABOUT_LEAD.includes(caution));

const ABOUT_LEAD: readonly Caution[] = ['official-advice', 'blood-test', 'lead-label', 'local-rules'];
