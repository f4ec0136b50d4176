import { z } from 'zod';
import { parseHook } from '../craft/hook.ts';
import { parseWeight } from '../craft/weight.ts';
import { nearestOf } from './nearest.ts';

/** The text in the writing that `allowed` asks for; undefined when it cannot be told.
 *  @example mended('an exact fraction of an ounce in lowest terms', '2/16') //=> '1/8' */
export function mended(allowed: string, said: string): string | undefined {
  const mend = MENDS.find(([asked]) => allowed.startsWith(asked))?.[1];
  const better = mend?.(said.trim());
  return better === said ? undefined : better;
}

function asId(said: string): string | undefined {
  const id = said
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return id === '' ? undefined : id;
}

/** Hours and minutes of the 24-hour day, such as `6:30` or `6.30`. */
function asClock(said: string): string | undefined {
  const [, hour = '', minute = ''] = /^(\d{1,2})[:.h ]?(\d{2})$/.exec(said) ?? [];
  return hour === '' || Number(hour) > 23 || Number(minute) > 59 ? undefined : `${hour.padStart(2, '0')}:${minute}`;
}

function asColour(said: string): string | undefined {
  const [, digits = ''] = /^#?([0-9a-f]{6}|[0-9a-f]{3})$/.exec(said.toLowerCase()) ?? [];
  if (digits === '') return undefined;
  return `#${digits.length === 3 ? digits.replace(/./g, '$&$&') : digits}`;
}

const asPlace = (said: string): string | undefined =>
  /^[a-z]{2}([-_ ][a-z0-9]{1,3})?$/i.test(said) ? said.toUpperCase().replace(/[_ ]/, '-') : undefined;

const asCurrency = (said: string): string | undefined => (/^[a-z]{3}$/i.test(said) ? said.toUpperCase() : undefined);

const asZone = (said: string): string | undefined =>
  nearestOf(said.replaceAll(' ', '_'), Intl.supportedValuesOf('timeZone'));

function asDay(said: string): string | undefined {
  const [, year = '', month = '', date = ''] = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(said) ?? [];
  return z.iso.date().safeParse(`${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`).data;
}

/** How the words of a rule begin, and how a text that breaks the rule may be put right. */
const MENDS: readonly (readonly [asked: string, mend: (said: string) => string | undefined])[] = [
  ['an exact fraction of an ounce', parseWeight],
  ['a hook size', parseHook],
  ['a lower-case word', asId],
  ['a time as HH:MM', asClock],
  ['a colour as #rrggbb', asColour],
  ['a place as ISO 3166', asPlace],
  ['an ISO 4217 code', asCurrency],
  ['an IANA time zone', asZone],
  ['a day of the calendar', asDay],
];
