import { z } from 'zod';
import { parseHook } from '../craft/hook.ts';
import { epoxySettings } from '../craft/epoxy.ts';
import { heatSettings } from '../craft/heat.ts';
import { castingSettings } from '../craft/melt.ts';
import { ovenSettings } from '../craft/oven.ts';
import { powderSettings } from '../craft/powder.ts';
import { WEEKDAYS } from '../craft/time.ts';
import { parseWeight } from '../craft/weight.ts';
import { buyingSettings, costingSettings, exciseSettings, paymentSettings, rushSettings } from './business.ts';
import { ownWords } from './ownWords.ts';
import { KEEPERS, LANGUAGES, SHAPES } from './words.ts';

/** The shop file: what the maker owns, stocks, charges and when they work. Everything about one shop is here and nothing of it in code. */

const id = z.string().regex(/^[a-z0-9][a-z0-9-]*$/, 'a lower-case word; a dash joins its parts');
const text = z.string().trim().min(1).max(1000);
const count = z.number().int().min(0);
const cents = z.number().int().min(0);
const minutes = z.number().min(0).max(10_000);
const share = z.number().min(0).max(1);
const day = z.iso.date();
const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time as HH:MM, 24 hours');
const span = z.tuple([clock, clock]).refine(([from, to]) => from < to, 'a span that ends after it begins');
const weekday = z.enum(WEEKDAYS);
const colour = z.string().regex(/^#[0-9a-f]{6}$/, 'a colour as #rrggbb');
/** ISO 3166-1 alpha-2, or ISO 3166-2. */
const place = z.string().regex(/^[A-Z]{2}(-[A-Z0-9]{1,3})?$/, 'a place as ISO 3166 writes it, such as US or US-MN');
const weight = z.string().refine((said) => parseWeight(said) === said, 'an exact fraction of an ounce in lowest terms');
const hook = z.string().refine((said) => parseHook(said) === said, 'a hook size such as 2 or 3/0');
const zone = z.string().refine(isZone, 'an IANA time zone such as America/Chicago');
/** A rate in hundred-thousandths: 6.875 % is 6875. */
const rate = z.number().int().min(0).max(100_000);

/** Something with an id, a name, and the other words people say for it. */
const named = {
  id,
  name: text,
  nameIn: z.partialRecord(z.enum(LANGUAGES), text).default({}),
  aliases: z.array(text).default([]),
};

const cavity = z.strictObject({
  weight,
  count: z.number().int().min(1),
  /** Sizes that fit, the usual one first. */
  hooks: z.array(hook).min(1),
  /** The maker's own weighing of a finished head, by hook size and metal; it wins over arithmetic. */
  measured: z.array(z.strictObject({ hook, metal: id, grams: z.number().positive() })).default([]),
  lengthInches: z.number().positive().optional(),
});

const mold = z.strictObject({
  id,
  style: id,
  pattern: id,
  cavities: z.array(cavity).min(1),
  /** Which keepers the mold can cast with, the usual one first. */
  keepers: z.array(z.enum(KEEPERS)).min(1),
  /** The base-hole pin's diameter in inches; null where the mold has no guard hole. */
  pin: weight.nullable(),
  /** Whether the head has a collar behind it that takes a dressing. */
  dressing: z.boolean(),
});

const composition = z
  .partialRecord(z.enum(['Pb', 'Sb', 'Sn', 'Bi', 'Zn']), share)
  .refine((shares) => Math.abs(Object.values(shares).reduce((sum, part) => sum + part, 0) - 1) < 1e-6, {
    message: 'shares of the mass that add up to 1',
  });

const restock = z.strictObject({ day, count });

const stockItem = z.strictObject({
  /** `metal:lead`, `hook:90-round:2`, `paint:black`, `guard:black`, `keeper:wire`, `dressing:collar`, `epoxy`, `bag`, `label`. */
  item: z.string().regex(/^[a-z0-9-]+(:[a-z0-9/-]+)*$/),
  unit: z.enum(['piece', 'gram']),
  onHand: count,
  restock: z.array(restock).default([]),
  supplier: text.optional(),
  /** Cents for a thousand units, so that a gram or a hook can cost less than a cent. */
  costPerThousand: cents.optional(),
  leadDays: count.optional(),
  packOf: z.number().int().min(1).optional(),
});

const handsTime = z.strictObject({ setup: minutes, each: minutes });

const steps = z.strictObject({
  pour: handsTime,
  trim: handsTime,
  paint: handsTime,
  'clear-eyes': handsTime,
  bake: z.strictObject({ load: minutes, unload: minutes }),
  cool: z.strictObject({ wait: minutes }),
  guard: handsTime,
  dress: handsTime,
  pack: handsTime,
});

const hours = z.strictObject({
  weekly: z.partialRecord(weekday, z.array(span)),
  daysOff: z.array(day).default([]),
  extra: z.array(z.strictObject({ date: day, from: clock, to: clock })).default([]),
});

const prices = z.strictObject({
  /** `list`: what stands here, head and extras. `margin`: what a line costs to make, so that `margin` of its price is left over. */
  rule: z.enum(['list', 'margin']).default('list'),
  margin: rate.max(90_000).default(40_000),
  /** Cents a bare lead head, by style, then by weight. */
  heads: z.record(id, z.record(weight, cents)),
  paint: cents,
  guard: cents,
  keeper: cents,
  metals: z.record(id, cents),
  dressings: z.record(id, cents),
  /** From so many heads of one line on, so much off; rates in hundred-thousandths. */
  breaks: z.array(z.strictObject({ from: z.number().int().min(2), off: rate })).default([]),
  minimumOrder: cents.default(0),
});

const postage = z.strictObject({
  packagingGrams: count,
  regions: z
    .array(
      z.strictObject({
        id,
        name: text,
        places: z.array(place).min(1),
        bands: z.array(z.strictObject({ upToGrams: z.number().int().min(1), cents })).min(1),
      }),
    )
    .min(1),
});

export const shopSchema = z.strictObject({
  version: z.literal(1),
  name: text,
  about: ownWords,
  place,
  zone,
  currency: z.string().regex(/^[A-Z]{3}$/, 'an ISO 4217 code such as USD'),
  temperature: z.enum(['F', 'C']),
  language: z.enum(LANGUAGES),
  styles: z.array(z.strictObject({ ...named, shape: z.enum(SHAPES) })).min(1),
  patterns: z
    .array(
      z.strictObject({
        ...named,
        eyeDegrees: z.number().int().min(0).max(90),
        grams: z.record(hook, z.number().positive()).default({}),
      }),
    )
    .min(1),
  molds: z.array(mold).min(1),
  metals: z.array(z.strictObject({ ...named, composition })).min(1),
  paints: z.array(z.strictObject({ ...named, colour, heat: z.number().positive().default(1) })),
  guards: z.array(z.strictObject({ ...named, colour, diameter: weight })),
  dressings: z.array(z.strictObject({ ...named, kind: z.enum(['collar', 'skirt']), colours: z.array(colour).min(1) })),
  stock: z.array(stockItem),
  steps,
  casting: castingSettings,
  heat: heatSettings,
  oven: ovenSettings,
  powder: powderSettings,
  epoxy: epoxySettings,
  /** How sure a promised ship day is to hold: the share of likely courses of the bench that keep it. */
  promise: z.strictObject({ confidence: z.number().min(0.5).max(0.99) }),
  /** What the garage is kept at until the maker says otherwise, °C. */
  garageCelsius: z.number().min(-30).max(50),
  hours,
  post: z.strictObject({ days: z.array(weekday).min(1), by: clock, closed: z.array(day).default([]) }),
  digestAt: clock,
  quiet: z.strictObject({ from: clock, to: clock }),
  orders: z.strictObject({
    least: z.number().int().min(1),
    most: z.number().int().min(1).max(100_000),
    lines: z.number().int().min(1).max(50),
    openEach: z.number().int().min(1),
    quoteHours: z.number().min(1),
  }),
  prices,
  postage,
  salesTax: z.array(z.strictObject({ place, rate })).default([]),
  payment: z.strictObject({ words: ownWords, dueDays: count, ...paymentSettings }),
  costing: costingSettings.prefault({}),
  buying: buyingSettings.prefault({}),
  excise: exciseSettings.default(null),
  rush: rushSettings.default(null),
  texts: z.strictObject({ greeting: ownWords, thanks: ownWords, shipped: ownWords }),
});

export type Shop = z.infer<typeof shopSchema>;
export type Mold = Shop['molds'][number];
export type Cavity = Mold['cavities'][number];
export type Metal = Shop['metals'][number];
export type Paint = Shop['paints'][number];
export type Guard = Shop['guards'][number];
export type Dressing = Shop['dressings'][number];
export type StockItem = Shop['stock'][number];
export type ItemId = StockItem['item'];

function isZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone.length > 0;
  } catch {
    return false;
  }
}
