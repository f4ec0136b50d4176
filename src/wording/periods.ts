import type { Day } from '../domain/craft/time.ts';
import { quarterOf } from '../domain/quote/excise.ts';

/** Examples of what may be typed after a word that wants a period: a month, a quarter, a year or two days, as far as it takes them. */
export function periodsFor(word: string, today: Day): readonly string[] {
  const [month, quarter] = [today.slice(0, 7), quarterOf(today)];
  const periods: readonly string[] = /^(?:month|mes)$/.test(word)
    ? [month]
    : /^(?:tax|impuesto)$/.test(word)
      ? [quarter]
      : [month, quarter, today.slice(0, 4), `${month}-01 ${month}-15`];
  return periods.map((period) => `${word} ${period}`);
}
