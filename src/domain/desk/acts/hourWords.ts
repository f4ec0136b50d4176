import { localDay, type Clock, type Day } from '../../craft/time.ts';
import { DAY_BEGIN, DAY_END, parseChange, type Change } from '../change.ts';
import { clocksOn, type Span } from '../hours.ts';
import type { Turn } from '../turn.ts';

/** A day in the maker's words, as a buyer's need-by day is read. @example 'friday', '2026-12-05' */
export function dayIn({ world, now }: Turn, words: string): Day | undefined {
  if (TODAY.test(words)) return localDay(now, world.shop.zone);
  const said = ['by', 'para el', 'para'].map((by) => world.reader.read(`${by} ${words}`, now).needBy);
  return words === '' ? undefined : (said.find((day) => day !== null) ?? undefined);
}

const TODAY = /^(?:today|tonight|this evening|hoy|esta noche)[.!]*$/i;

/** Hours of a day. @example 'saturday 9:00-11:00', 'friday from 5 to 8 pm', 'domingo de 16 a 18' */
export const hoursIn =
  (what: 'extra' | 'hours') =>
  (turn: Turn, rest: string): Change | undefined => {
    const found = BETWEEN.exec(rest);
    const day = found ? dayIn(turn, rest.slice(0, found.index).trim()) : undefined;
    return found === null || day === undefined
      ? undefined
      : parseChange(`${what} ${day} ${clocks(found, []).join(' ')}`);
  };

/** A day off, or a part of one. @example 'friday', 'tonight', 'friday after 8pm', 'viernes por la tarde' */
export function offIn(turn: Turn, rest: string): Change | undefined {
  const part = PARTS.map(({ words, span }) => ({ found: words.exec(rest), span })).find(({ found }) => found !== null);
  if (!part?.found) {
    const day = dayIn(turn, rest);
    return day === undefined ? undefined : { do: 'off', day };
  }
  const left = rest
    .replace(part.found[0], ' ')
    .replace(/^\s*(?:on|el)\b/i, '')
    .trim();
  const day = dayIn(turn, left === '' ? 'today' : left);
  if (day === undefined) return undefined;
  const { from, to } = part.span(part.found, clocksOn(turn.world.shop, turn.desk, day));
  return parseChange(`away ${day} ${from} ${to}`);
}

const CLOCK = String.raw`(\d{1,2}(?:[:.]\d{2})?(?:\s*[ap]\.?m\b\.?)?|noon|midnight|mediod[ií]a|medianoche)`;
const BETWEEN = new RegExp(
  String.raw`(?:\s|^)(?:from |between |de |desde |entre )?(?:las? )?${CLOCK}\s*(?:-|–|\bto\b|\band\b|\buntil\b|\ba\b|\by\b|\bhasta\b)\s*(?:las? )?${CLOCK}\s*$`,
  'i',
);

type Part = Readonly<{ words: RegExp; span: (found: RegExpExecArray, hours: readonly Span[]) => Span }>;

const always =
  (from: Clock, to: Clock): Part['span'] =>
  () => ({ from, to });

/** Parts of a day, the longest words first: a time is more than the name of a part. */
const PARTS: readonly Part[] = [
  {
    words: BETWEEN,
    span: (found, hours) => {
      const [from = '', to = ''] = clocks(found, hours);
      return { from, to };
    },
  },
  {
    words: new RegExp(
      String.raw`(?:\s|^)(?:after|from|since|desde|a partir de|despu[eé]s de) (?:las? )?${CLOCK}(?: on(?:wards?)?)?\s*$`,
      'i',
    ),
    span: (found, hours) => ({ from: clocks(found, hours)[0] ?? '', to: DAY_END }),
  },
  {
    words: new RegExp(String.raw`(?:\s|^)(?:before|until|till|antes de|hasta) (?:las? )?${CLOCK}\s*$`, 'i'),
    span: (found, hours) => ({ from: DAY_BEGIN, to: clocks(found, hours)[0] ?? '' }),
  },
  { words: /(?:in the |\bthis )?\bmorning\b|por la mañana|\besta mañana\b/i, span: always(DAY_BEGIN, '12:00') },
  { words: /(?:in the |\bthis )?\bafternoon\b/i, span: always('12:00', '17:00') },
  { words: /por la tarde|\besta tarde\b/i, span: always('12:00', '20:00') },
  {
    words: /\btonight\b|(?:in the |at |\bthis )?\b(?:evening|night)\b|por la noche|\besta noche\b/i,
    span: always('17:00', DAY_END),
  },
];

/** The clocks that words name. An hour without am or pm that lies outside the day's hours, and twelve hours later in them, is meant so. */
const clocks = (found: RegExpExecArray, hours: readonly Span[]): readonly Clock[] =>
  found.slice(1).map((said) => {
    const clock = clockOf(said);
    const later = clockOf(`${said}pm`);
    const isBare = !/[a-z]/i.test(said);
    return isBare && !isIn(hours, clock) && isIn(hours, later) ? later : clock;
  });

const isIn = (hours: readonly Span[], clock: Clock): boolean =>
  hours.some(({ from, to }) => from <= clock && clock <= to);

/** @example clockOf('9') //=> '09:00' @example clockOf('8:30 pm') //=> '20:30' */
function clockOf(said: string): Clock {
  if (/^(?:noon|mediod)/i.test(said)) return '12:00';
  if (/^(?:midnight|medianoche)/i.test(said)) return DAY_END;
  const [hour = '', minutes = '00'] = said.match(/\d+/g) ?? [];
  const half = /[ap](?=\.?m)/i.exec(said)?.[0].toLowerCase();
  const on = half === undefined ? Number(hour) : (Number(hour) % 12) + (half === 'p' ? 12 : 0);
  return `${on}`.padStart(2, '0') + `:${minutes}`;
}
