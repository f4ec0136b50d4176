import { HOUR } from '../../domain/craft/time.ts';
import { grams, GRAMS_PER_OUNCE } from '../../domain/craft/weight.ts';
import type { HeadsOfLots } from '../../domain/desk/card.ts';
import type { Quote } from '../../domain/desk/quoted.ts';
import type { Line, Spec } from '../../domain/order/spec.ts';
import { balanceOf, mayBegin } from '../../domain/quote/payment.ts';
import { sameFor } from '../../domain/quote/price.ts';
import type { Money } from '../../domain/quote/quote.ts';
import { capital, clipped, lengthOf, lines, paragraphs } from '../clip.ts';
import { headName, valueName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, QuoteWords, SayingOf } from '../words.ts';
import { findingLines, unclear } from './draft.ts';
import { fittingNames, specName } from './spec.ts';

/** Everything that would be ordered, with its price and its day, before anything is. */
export function summary(say: SayingOf<'summary'>, voice: Voice, phrases: Phrases): string {
  const { draft, quote, notes, missed } = say;
  const { quote: words } = phrases;
  return paragraphs(
    missed === null ? null : words.missed(voice.day(missed), voice.day(quote.promise.ships)),
    words.notYet,
    orderLines(say, voice, phrases),
    moneyLines(quote.money, quote.shipTo, voice, words),
    shipLines(say, voice, words),
    notes.length === 0 ? null : clipped(findingLines(notes, quote.lines.length, voice, phrases), NOTES_MOST),
    unclear(draft, voice, words.unclear),
    lines(words.goodUntil(voice.time(quote.goodUntil)), words.howToAccept),
  );
}

/** Room for the lines and the notes of a long order, so that its total, its day and the word that nothing is ordered yet always stand there. */
const LINES_MOST = 2200;
const NOTES_MOST = 700;

/** Every line with its price; of a long order without the parts of each price. */
function orderLines(say: SayingOf<'summary'>, voice: Voice, phrases: Phrases): string {
  const blocks = (price: typeof priceLine): string =>
    paragraphs(
      ...say.quote.lines.map((line, at) =>
        lines(
          orderLine(line, at, say, voice, phrases),
          price(say.quote.money.lines[at], voice, phrases.quote),
          sameSaid(line, voice, phrases.quote),
        ),
      ),
    );
  const full = blocks(partedPrice);
  return lengthOf(full) <= LINES_MOST ? full : clipped(blocks(priceLine), LINES_MOST);
}

/** Just below a number that costs less a head, more heads are free. */
function sameSaid(line: Line, voice: Voice, words: QuoteWords): string | null {
  const count = sameFor(voice.shop, line);
  return count === undefined ? null : words.same(count, count - line.quantity, voice);
}

/** What was said of a line, and what stands as usual. */
function orderLine(
  line: Line,
  at: number,
  say: SayingOf<'summary'>,
  voice: Voice,
  { quote: words, draft: draftWords }: Phrases,
): string {
  const { quote, draft } = say;
  const usual = say.usual[at] ?? [];
  const number = quote.lines.length > 1 ? `${at + 1}. ` : '';
  const taken = fittingNames(voice, line.spec, (slot) => usual.includes(slot));
  const photos = draft.lines[at]?.photos.length ?? 0;
  return lines(
    `${number}${voice.number(line.quantity)} × ${specName(voice, line.spec, usual) ?? ''}`,
    taken.length === 0 ? null : words.usual(voice.list(taken)),
    madeWeight(line, say.madeGrams[at], voice, words),
    photos === 0 ? null : capital(draftWords.photos(photos, voice)),
  );
}

/** What a head weighs that is not of the metal its mold is marked for; nothing when that makes no odds. */
function madeWeight({ spec }: Line, made: number | undefined, voice: Voice, words: QuoteWords): string | null {
  if (made === undefined || Math.abs(made / grams(spec.weight) - 1) < 0.02) return null;
  return words.made(
    valueName(voice, 'metal', spec.metal),
    voice.number(Math.round((made / GRAMS_PER_OUNCE) * 100) / 100),
  );
}

/** What a head is made of in money, then the price of the line. */
function partedPrice(price: Money['lines'][number] | undefined, voice: Voice, words: QuoteWords): string | null {
  if (price === undefined) return null;
  const { parts, each } = price;
  const { prices } = voice.terms;
  const sum =
    parts.length < 2 ? null : parts.map(({ part, cents }) => `${prices[part]} ${voice.money(cents)}`).join(' + ');
  return lines(sum === null ? null : words.each(sum, voice.money(each)), priceLine(price, voice, words));
}

/** The price of a head times the number, less what the number saves. */
function priceLine(price: Money['lines'][number] | undefined, voice: Voice, words: QuoteWords): string | null {
  if (price === undefined) return null;
  const { each, quantity, off, total } = price;
  const saving = off === 0 ? '' : `, ${words.off(voice.money(off), quantity, voice)}`;
  return `${voice.number(quantity)} × ${voice.money(each)}${saving} = ${voice.money(total)}`;
}

/** What is added to the lines, and the sum. */
export function moneyLines(money: Money, shipTo: string, voice: Voice, words: QuoteWords): string {
  const { topUp, postage, tax, total } = money;
  return lines(
    topUp === 0 ? null : words.topUp(voice.money(topUp), voice.money(voice.shop.prices.minimumOrder)),
    money.rush === 0 ? null : words.rush(voice.money(money.rush)),
    words.postage(voice.place(shipTo), voice.money(postage.cents), postage.parcels, voice),
    tax === 0 ? null : words.tax(voice.money(tax)),
    words.total(voice.money(total)),
  );
}

function shipLines({ quote, draft, missed }: SayingOf<'summary'>, voice: Voice, words: QuoteWords): string {
  const { clock } = spansWeek(quote) ? { clock: voice.time } : voice;
  const reasons = inShort(quote.because).map((reason) => {
    const write: (facts: never, voice: Voice) => string = words.because[reason.code];
    return write(reason as never, { ...voice, clock });
  });
  return lines(
    (mayBegin(voice.shop, balanceOf(quote.money.total, [])) ? words.ships : words.shipsOncePaid)(
      voice.day(quote.promise.ships),
    ),
    draft.needBy === null || missed !== null ? null : words.neededBy(voice.day(draft.needBy)),
    reasons.length === 0 ? null : words.why(reasons.join('; ')),
  );
}

/** Of waits of one kind in a row only the last: until then it waits. */
const inShort = (because: Quote['because']): Quote['because'] =>
  because.filter(({ code }, at) => code === 'lag' || code === 'work' || because[at + 1]?.code !== code);

/** Past a week a weekday alone does not say which one. */
function spansWeek({ because }: Quote): boolean {
  const ends = because.flatMap((reason) => ('by' in reason ? reason.by : 'until' in reason ? reason.until : []));
  return Math.max(...ends) - Math.min(...ends) > 6 * 24 * HOUR;
}

/** A line of an order with all its slots. */
export const fullLine = (line: Line, voice: Voice): string =>
  `${voice.number(line.quantity)} × ${specName(voice, line.spec) ?? ''}`;

/** The words that stand in a picture: the head big, then what is on it, two parts a line so that the picture stays small. */
export function captionOf(spec: Spec, voice: Voice): string[] {
  const parts = fittingNames(voice, spec, () => true);
  const pairs = Array.from({ length: Math.ceil(parts.length / 2) }, (_, at) => parts.slice(at * 2, at * 2 + 2));
  return [capital(headName(voice, spec)), ...pairs.map((pair) => pair.join(' · '))];
}

/** The same for the lots of a session: whose heads these are stands first. */
export const captionOfLots = ({ spec, lots }: HeadsOfLots['each'][number], voice: Voice): string[] => [
  lots.map(({ lot, heads }) => `${lot}: ${voice.count(heads, voice.terms.heads)}`).join(' · '),
  ...captionOf(spec, voice),
];
