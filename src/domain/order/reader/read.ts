import { Temporal } from 'temporal-polyfill';
import { addDays, instantOf, localDay, type Instant } from '../../craft/time.ts';
import type { Shop } from '../../shop/shop.ts';
import type { Language } from '../../shop/words.ts';
import { clausesOf } from './clauses.ts';
import { ENGLISH } from './language/english.ts';
import { languageOf } from './language/choice.ts';
import { SPANISH } from './language/spanish.ts';
import { lexiconOf } from './lexicon.ts';
import { linesOf } from './lines.ts';
import { listed } from './lists.ts';
import { neededBy } from './needby.ts';
import { partedOf } from './parts.ts';
import { plainAnswer } from './plainAnswer.ts';
import { codeAlone } from './postal.ts';
import { quantified, type Asked } from './quantities.ts';
import type { Reading } from './reading.ts';
import { referenceOf } from './reference.ts';
import { respelled } from './respell.ts';
import { withoutRowNumbers } from './rowNumbers.ts';
import { shippedTo } from './shipto.ts';
import { lightOf, spansOf, type Light } from './spans.ts';
import { ordered } from './told.ts';
import { tokensOf } from './tokens.ts';
import { written } from './written.ts';

export type Reader = Readonly<{
  /** What a message says; `now` is the instant it came, which a day is counted from. Where its words are of no one language it is of the one that the buyer speaks. */
  read: (said: string, now: Instant, speaks?: Language) => Reading;
  /** The same, where a bare word answers what was asked: `20` a quantity, `black` a paint or a guard, `no` what is left out. */
  answer: (said: string, asked: Asked, now: Instant, speaks?: Language) => Reading;
}>;

type Ready = ReturnType<typeof lightOf>;

const NOTHING: Reading = { lines: [], needBy: null, shipTo: null, unclear: [], refers: null };

/** The reader of each shop that is still about: its lexicon takes a while to build, and is the same each time. */
const READERS = new WeakMap<Shop, Reader>();

/** A reader that knows the words of one shop; its lexicon is built once.
 *  @example readerFor(shop).read('20 1/4 ball, black', now).lines //=> [{ quantity: 20, style: 'ball', weight: '1/4', paint: 'black' }] */
export function readerFor(shop: Shop): Reader {
  const reader = READERS.get(shop) ?? readerOf(shop);
  READERS.set(shop, reader);
  return reader;
}

function readerOf(shop: Shop): Reader {
  const [english, spanish] = [ENGLISH, SPANISH].map((language) => lightOf(lexiconOf(shop, language), shop)) as [
    Ready,
    Ready,
  ];
  const lights: Readonly<Record<Language, readonly [Ready, Ready]>> = {
    en: [english, spanish],
    es: [spanish, english],
  };
  const dayAt = daysIn(shop.zone);
  const reading = (said: string, now: Instant, speaks: Language = 'en', asked?: Asked): Reading => {
    const tokens = said.includes('#') ? withoutRowNumbers(tokensOf(said)) : tokensOf(said);
    const light = languageOf(tokens, lights[speaks]);
    return readIn({ ...light, today: () => dayAt(now) }, said, respelled(tokens, light.lexicon.spelling), asked);
  };
  const answer: Reader['answer'] = (said, asked, now, speaks) => {
    const code = asked === 'shipTo' ? codeAlone(said) : undefined;
    if (code) return { ...NOTHING, shipTo: code };
    const plain = plainAnswer(said, asked);
    return plain === undefined ? reading(said, now, speaks, asked) : { ...NOTHING, lines: [plain] };
  };
  return { read: (said, now, speaks) => reading(said, now, speaks), answer };
}

/** The steps of reading, in order: spans, quantities, parts of a head, what is only told, lists, clauses, lines. */
function readIn(light: Light, said: string, tokens: ReturnType<typeof tokensOf>, asked: Asked | undefined): Reading {
  const spans = quantified(spansOf(said, tokens, light), asked);
  const items = partedOf(spans, {
    tokens,
    lexicon: light.lexicon,
    collar: light.collar,
    asked,
    hasColon: tokens.some(({ stem }) => stem === ':'),
  });
  const clauses = clausesOf(listed(ordered(items)));
  const lines = linesOf(clauses);
  const needBy = neededBy(items, asked === 'needBy');
  const shipTo = shippedTo(items, said, light.lexicon.spelling.known, asked === 'shipTo');
  return written(said, { lines, needBy, shipTo, refers: referenceOf(items, clauses, light.lexicon) });
}

/** The shop's local day at an instant. The last one is kept until its midnight: the zone is slow to ask and the day is mostly the same. */
function daysIn(zone: string): (now: Instant) => Temporal.PlainDate {
  let from = 0;
  let until = 0;
  let day = Temporal.PlainDate.from('1970-01-01');
  return (now) => {
    if (now >= from && now < until) return day;
    const name = localDay(now, zone);
    day = Temporal.PlainDate.from(name);
    [from, until] = [instantOf(name, '00:00', zone), instantOf(addDays(name, 1), '00:00', zone)];
    return day;
  };
}
