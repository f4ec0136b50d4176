import { capital, lines, paragraphs } from '../clip.ts';
import { valueName } from '../names.ts';
import { percent } from '../percent.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';

/** How a month went; sections only where there is something to say. */
export function month({ facts }: SayingOf<'month'>, voice: Voice, { business }: Phrases): string {
  const { month: words, orderCount } = business;
  const style = (id: string): string => valueName(voice, 'style', id);
  const heads = (count: number): string => voice.count(count, voice.terms.heads);
  return paragraphs(
    capital(words.heading(voice.date(facts.month))),
    lines(
      words.orders(orderCount(facts.accepted, voice), orderCount(facts.shipped, voice), facts.cancelled, voice),
      facts.received === 0 ? null : words.received(voice.money(facts.received)),
      facts.shipped === 0 ? words.noneShipped : sold(facts, voice, words, heads),
    ),
    facts.styles.length === 0
      ? null
      : lines(
          words.styles,
          ...facts.styles.map(
            (one) => `- ${words.styleRow(style(one.style), heads(one.heads), voice.money(one.marginAnHour))}`,
          ),
        ),
    facts.scrap.length === 0
      ? null
      : lines(
          words.scrap,
          ...facts.scrap.map(({ mold, heads: good, scrap }) => {
            const cast = good + scrap;
            return `- ${words.scrapRow(mold, percent(shareOf(scrap, cast), voice), scrap, cast)}`;
          }),
        ),
  );
}

const sold = (
  facts: SayingOf<'month'>['facts'],
  voice: Voice,
  words: Phrases['business']['month'],
  heads: (count: number) => string,
): string =>
  lines(
    words.revenue(voice.money(facts.revenue), heads(facts.heads)),
    facts.material === 0 ? null : words.material(voice.money(facts.material)),
    words.margin(voice.money(facts.margin), voice.number(hoursOf(facts))),
    words.onTime(percent(shareOf(facts.onTime, facts.shipped), voice), facts.onTime, facts.shipped),
  );

/** Hours at the bench, to a tenth. */
export const hoursOf = ({ minutes }: Pick<SayingOf<'month'>['facts'], 'minutes'>): number =>
  Math.round(minutes / 6) / 10;

/** In hundred-thousandths. */
export const shareOf = (part: number, whole: number): number => Math.round((part / Math.max(1, whole)) * 100_000);
