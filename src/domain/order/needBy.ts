import { addDays, type Day, type Instant } from '../craft/time.ts';
import type { Draft } from './draft.ts';
import type { Reader } from './reader/read.ts';

/** What a buyer says who wants it early and names no day; the earliest day is what everybody is promised. English and Spanish. */
const SOONEST =
  /^(?:asap|a\.s\.a\.p\.?|soon(?:est)?|as (?:soon|fast|quick(?:ly)?) as (?:possible|you can)|right away|lo antes posible|cuanto antes|lo más pronto posible|pronto)$/;

/** @example isSoonest('ASAP') //=> true */
export const isSoonest = (said: string): boolean => SOONEST.test(said.trim().toLowerCase());

/** No day in particular, as an answer to the question for one. English and Spanish. */
const ANY =
  /^(?:no (?:fixed |set |particular )?(?:day|date|deadline|rush|hurry)|any ?(?:day|time|date)|whenever|doesn'?t matter|none|no|no matter|sin (?:fecha|prisa|apuro)|cualquier (?:d[ií]a|fecha)|cuando (?:sea|puedas)|no importa)$/;

/** @example isAnyDay('No date.') //=> true */
export const isAnyDay = (said: string): boolean =>
  ANY.test(
    said
      .trim()
      .toLowerCase()
      .replace(/[.!]+$/, ''),
  );

/** The words about a day by which the heads are wanted that still have to be asked about; undefined when there are none. */
export const openDay = ({ unclear }: Draft): string | undefined =>
  unclear.find(({ slot, said }) => slot === 'needBy' && !isSoonest(said))?.said;

/** The days that unclear words may mean: of `next friday` the coming Friday and the one after it; none where no word names a day. */
export function daysMeant(said: string, reader: Reader, now: Instant): readonly Day[] {
  const named = said.split(/\s+/).flatMap((word) => reader.answer(word, 'needBy', now).needBy ?? []);
  const today = reader.answer('today', 'needBy', now).needBy ?? '';
  return named
    .slice(0, 1)
    .flatMap((day) => [day, addDays(day, 7)])
    .filter((day) => day >= today);
}
