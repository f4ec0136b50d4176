import { fahrenheitOf, type Celsius } from '../domain/craft/temperature.ts';
import { instantOf, type Day, type Instant, type Minutes } from '../domain/craft/time.ts';
import type { Cents } from '../domain/craft/money.ts';
import { inLanguage, type OwnWords } from '../domain/shop/ownWords.ts';
import type { Shop } from '../domain/shop/shop.ts';
import type { Language } from '../domain/shop/words.ts';
import { EN_TERMS } from './en/terms.ts';
import { ES_TERMS } from './es/terms.ts';
import { pluralOf, type Plural } from './plural.ts';
import { placeName } from './places.ts';
import type { Terms } from './terms.ts';

/** How numbers, money, days and names are said in one language for one shop, in its zone, currency and units. */
export type Voice = Readonly<{
  shop: Shop;
  language: Language;
  terms: Terms;
  money: (cents: Cents) => string;
  number: (value: number) => string;
  /** A share of one, to no or one digit after the point: "20%". */
  percent: (share: number, digits: 0 | 1) => string;
  /** "24 heads". */
  count: (value: number, words: Plural) => string;
  /** "Monday, November 30". */
  day: (day: Day) => string;
  /** "Mon, Nov 30". */
  shortDay: (day: Day) => string;
  /** "Mon, Nov 30, 8:10 PM". */
  time: (at: Instant) => string;
  /** "Mon 8:10 PM", for the days to come. */
  clock: (at: Instant) => string;
  /** "8:10 PM". */
  hour: (at: Instant) => string;
  /** "Mon". */
  weekday: (day: Day) => string;
  /** "1 hour 40 minutes". */
  duration: (minutes: Minutes) => string;
  /** A day, a month or a year as the law file writes it: "July 2026". */
  date: (iso: string) => string;
  grams: (grams: number) => string;
  temperature: (celsius: Celsius) => string;
  /** "a, b and c". */
  list: (items: readonly string[]) => string;
  place: (code: string) => string;
  /** A text of the shop's own. */
  own: (words: OwnWords) => string;
}>;

const TERMS: Readonly<Record<Language, Terms>> = { en: EN_TERMS, es: ES_TERMS };
const KNOWN = new WeakMap<Shop, Map<Language, Voice>>();

/** The voice of a shop in a language. Formatters are slow to build, so each shop has one voice a language, made once. */
export function voiceOf(shop: Shop, language: Language): Voice {
  const known = KNOWN.get(shop) ?? new Map<Language, Voice>();
  const voice = known.get(language) ?? newVoice(shop, language);
  KNOWN.set(shop, known.set(language, voice));
  return voice;
}

function newVoice(shop: Shop, language: Language): Voice {
  const locale = `${language}-${shop.place.slice(0, 2)}`;
  const numbers = new Intl.NumberFormat(locale);
  const percents = [0, 1].map(
    (maximumFractionDigits) => new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits }),
  ) as [Intl.NumberFormat, Intl.NumberFormat];
  return {
    shop,
    language,
    terms: TERMS[language],
    ...times(shop, locale),
    ...amounts(shop, locale),
    number: (value) => plain(numbers.format(value)),
    percent: (share, digits) => plain(percents[digits].format(share)),
    count: (value, words) => `${plain(numbers.format(value))} ${pluralOf(language, value, words)}`,
    list: lister(locale),
    place: (code) => placeName(code, language),
    own: (words) => inLanguage(words, language, shop.language),
  };
}

const WEEKDAY = { weekday: 'short' } as const;
const DATE = { ...WEEKDAY, month: 'short', day: 'numeric' } as const;
type Times = Pick<Voice, 'day' | 'shortDay' | 'time' | 'clock' | 'hour' | 'weekday' | 'date'>;
const HOUR_MINUTE = { hour: 'numeric', minute: '2-digit' } as const;

function times({ zone }: Shop, locale: string): Times {
  const format = (options: Intl.DateTimeFormatOptions): ((at: Instant) => string) => {
    const formatter = new Intl.DateTimeFormat(locale, { timeZone: zone, ...options });
    return (at) => plain(formatter.format(at));
  };
  const day = format({ weekday: 'long', month: 'long', day: 'numeric' });
  const shortDay = format(DATE);
  const weekday = format(WEEKDAY);
  const month = format({ month: 'long', year: 'numeric' });
  const date = format({ month: 'long', day: 'numeric', year: 'numeric' });
  const noon = (of: Day): Instant => instantOf(of, '12:00', zone);
  return {
    day: (of) => day(noon(of)),
    shortDay: (of) => shortDay(noon(of)),
    time: format({ ...DATE, ...HOUR_MINUTE }),
    clock: format({ ...WEEKDAY, ...HOUR_MINUTE }),
    hour: format(HOUR_MINUTE),
    weekday: (of) => weekday(noon(of)),
    date: (iso) => (iso.length === 4 ? iso : iso.length === 7 ? month(noon(`${iso}-15`)) : date(noon(iso))),
  };
}

function amounts(shop: Shop, locale: string): Pick<Voice, 'money' | 'duration' | 'grams' | 'temperature'> {
  const money = new Intl.NumberFormat(locale, { style: 'currency', currency: shop.currency });
  const minor = 10 ** (money.resolvedOptions().maximumFractionDigits ?? 2);
  const unit = (name: string, unitDisplay: 'long' | 'short'): ((value: number) => string) => {
    const formatter = new Intl.NumberFormat(locale, {
      style: 'unit',
      unit: name,
      unitDisplay,
      maximumFractionDigits: 0,
    });
    return (value) => plain(formatter.format(value));
  };
  const warmth = unit(shop.temperature === 'F' ? 'fahrenheit' : 'celsius', 'short');
  const spans = { days: unit('day', 'long'), hours: unit('hour', 'long'), minutes: unit('minute', 'long') };
  return {
    money: (cents) => plain(money.format(cents / minor)),
    duration: (minutes) => duration(Math.round(minutes), spans),
    grams: unit('gram', 'short'),
    temperature: (celsius) => warmth(shop.temperature === 'F' ? shownFahrenheit(celsius) : celsius),
  };
}

/** Ovens and pots are set by fives: 177 °C is 350 °F on every dial. */
const shownFahrenheit = (celsius: Celsius): number =>
  celsius < 100 ? fahrenheitOf(celsius) : Math.round(fahrenheitOf(celsius) / 5) * 5;

type Spans = Readonly<Record<'days' | 'hours' | 'minutes', (value: number) => string>>;

/** Hours are counted on until two days are full, as a cure is spoken of; from then on minutes no longer matter. */
function duration(minutes: Minutes, spans: Spans): string {
  const days = minutes < 2880 ? 0 : Math.floor(minutes / 1440);
  const hours = Math.floor((minutes - days * 1440) / 60);
  const rest = minutes % 60;
  const said = [
    ...(days > 0 ? [spans.days(days)] : []),
    ...(hours > 0 ? [spans.hours(hours)] : []),
    ...(days === 0 && (rest > 0 || minutes === 0) ? [spans.minutes(rest)] : []),
  ];
  return said.join(' ');
}

function lister(locale: string): Voice['list'] {
  const formatter = new Intl.ListFormat(locale);
  return (items) => formatter.format(items);
}

/** With common spaces for the narrow and unbreakable ones, so that people can search for what they read. */
const plain = (text: string): string => text.replaceAll(/[\u00A0\u202F]/g, ' ');
