import { HOUR, localDay, type Instant } from '../craft/time.ts';
import type { Card } from './card.ts';
import { draftTap, wordButton } from './draftButtons.ts';
import { isQuiet } from './quiet.ts';
import type { Quote } from './quoted.ts';
import type { Desk } from './state.ts';
import { card, type World } from './turn.ts';

/** How long before a quote ends its buyer is told; our own choice. A quote that holds no longer than this is not told of. */
const BEFORE_HOURS = 6;

/** Quotes that end soon and are still open, each told once, not in quiet hours. */
export function quoteEnds(world: World, desk: Desk, now: Instant): Readonly<{ desk: Desk; cards: readonly Card[] }> {
  if (isQuiet(world.shop, now) || world.shop.orders.quoteHours <= BEFORE_HOURS) return { desk, cards: [] };
  const ending = Object.entries(desk.drafts).flatMap(([buyer, draft]) => {
    const quote = desk.quotes[draft.id];
    return quote?.version === draft.version && isEnding(desk, quote, now)
      ? [{ buyer: Number(buyer), draft, quote }]
      : [];
  });
  const day = localDay(now, world.shop.zone);
  return {
    desk: { ...desk, daily: { ...desk.daily, ...Object.fromEntries(ending.map(({ quote }) => [nameOf(quote), day])) } },
    cards: ending.map(({ buyer, draft, quote }) =>
      card(
        buyer,
        { code: 'quote-ends', until: quote.goodUntil },
        {
          kind: 'reminder',
          key: nameOf(quote),
          rows: [[wordButton('keep-on', draftTap(draft, 'keep-on'))]],
        },
      ),
    ),
  };
}

const isEnding = (desk: Desk, quote: Quote, now: Instant): boolean =>
  now >= quote.goodUntil - BEFORE_HOURS * HOUR && now < quote.goodUntil && desk.daily[nameOf(quote)] === undefined;

const nameOf = ({ draft, version }: Quote): string => `quote/${draft}/${version}`;
