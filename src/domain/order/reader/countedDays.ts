import { isOne, OF, stem, type Found, type Look } from './dayLook.ts';
import { near, weekdayAt } from './namedDays.ts';
import { countAt } from './numbers.ts';
import type { Token } from './tokens.ts';

/** Days counted from another: in two weeks, a week from friday. */

/** 10 days from now: most numbers count heads, so the word behind is looked at before anything is counted. */
export function daysFromNow(look: Look): Found | undefined {
  const { spans } = look.words;
  return (spans[stem(look, 1)] ?? spans[stem(look, 2)] ?? spans[stem(look, 3)]) ? fromNow(look) : undefined;
}

/** In 2 weeks, within ten days, two weeks from now, a week from friday. */
export function fromNow(look: Look): Found | undefined {
  const isWithin = isOne(look.words.within, stem(look));
  const at =
    look.at +
    Number(isWithin) +
    Number(stem(look, 1) === 'about' || stem(look, 1) === 'the' || stem(look, 1) === 'like');
  const counted = countAt(look.tokens, at, look.lexicon.language) ?? article(look.tokens, at);
  if (!counted || counted.sure) return undefined;
  const place = counted.until + Number(OF.has(look.tokens[counted.until]?.stem ?? ''));
  const span = look.words.spans[look.tokens[place]?.stem ?? ''];
  if (!span) return undefined;
  const fromAt = isOne(look.words.from, look.tokens[place + 1]?.stem ?? '') ? place + 2 : undefined;
  const amount = span === 'month' ? { months: counted.count } : { days: counted.count * (span === 'week' ? 7 : 1) };
  if (fromAt !== undefined) return later(look, fromAt, amount);
  return isWithin ? { day: look.today().add(amount), until: place + 1 } : undefined;
}

function later(
  look: Look,
  at: number,
  amount: Readonly<{ months: number }> | Readonly<{ days: number }>,
): Found | undefined {
  const said = look.tokens[at]?.stem ?? '';
  if (said === 'now' || said === 'today') return { day: look.today().add(amount), until: at + 1 };
  const base = weekdayAt({ ...look, at }) ?? near({ ...look, at });
  return base?.day ? { day: base.day.add(amount), until: base.until } : undefined;
}

const article = (tokens: readonly Token[], at: number) =>
  /^(a|an|one|un|una|couple)$/.test(tokens[at]?.stem ?? '')
    ? tokens[at + 1]?.stem === 'couple'
      ? { count: 2, until: at + 2, sure: false }
      : { count: tokens[at]?.stem === 'couple' ? 2 : 1, until: at + 1, sure: false }
    : undefined;
