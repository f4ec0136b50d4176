import type { BarsPicture } from '../../app/letter.ts';
import type { MonthFacts } from '../../domain/desk/month.ts';
import type { BusinessWords } from '../businessWords.ts';
import { capital } from '../clip.ts';
import { valueName } from '../names.ts';
import { percent } from '../percent.ts';
import type { Voice } from '../voice.ts';
import { hoursOf, shareOf } from './month.ts';

/** How a month went as it is drawn: what it came to, then what was sold, what an hour left over and what was scrapped, as bars in words. */
export function monthPicture(facts: MonthFacts, voice: Voice, { month: words }: BusinessWords): BarsPicture {
  return {
    kind: 'bars',
    title: capital(words.heading(voice.date(facts.month))),
    figures: figuresOf(facts, voice, words.figures),
    groups: [
      group(words.soldBy, soldRows(facts, voice)),
      group(
        words.styles,
        facts.styles.map(({ style, marginAnHour }) => ({
          label: named(style, voice),
          amount: marginAnHour,
          value: voice.money(marginAnHour),
        })),
      ),
      group(words.scrap, scrapRows(facts, voice)),
    ],
  };
}

const figuresOf = (
  facts: MonthFacts,
  voice: Voice,
  names: BusinessWords['month']['figures'],
): BarsPicture['figures'] => [
  { name: names.shipped, value: voice.number(facts.shipped) },
  { name: names.heads, value: voice.number(facts.heads) },
  { name: names.sold, value: voice.money(facts.revenue) },
  { name: names.hours, value: voice.number(hoursOf(facts)) },
  { name: names.onTime, value: percent(shareOf(facts.onTime, facts.shipped), voice) },
];

const soldRows = ({ styles }: MonthFacts, voice: Voice): readonly Row[] =>
  [...styles]
    .sort((a, b) => b.revenue - a.revenue)
    .map(({ style, revenue, heads }) => ({
      label: named(style, voice),
      amount: revenue,
      value: `${voice.money(revenue)} · ${voice.count(heads, voice.terms.heads)}`,
    }));

const scrapRows = ({ scrap }: MonthFacts, voice: Voice): readonly Row[] =>
  scrap.map((one) => {
    const cast = one.heads + one.scrap;
    const amount = shareOf(one.scrap, cast);
    return { label: capital(one.mold), amount, value: `${percent(amount, voice)} (${one.scrap}/${cast})` };
  });

const named = (style: string, voice: Voice): string => capital(valueName(voice, 'style', style));

type Row = Readonly<{ label: string; amount: number; value: string }>;

/** Bars against the longest; a loss has none. */
function group(title: string, rows: readonly Row[]): BarsPicture['groups'][number] {
  const most = Math.max(1, ...rows.map(({ amount }) => amount));
  return {
    title,
    bars: rows.map(({ label, amount, value }) => ({ label, value, share: Math.max(0, amount) / most })),
  };
}
