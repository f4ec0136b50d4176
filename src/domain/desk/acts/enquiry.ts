import { checkDraftLine } from '../../order/check.ts';
import { choicesFor, usualSpec } from '../../order/choices.ts';
import { currentLine, emptyLine, putWords, type Draft, type DraftLine } from '../../order/draft.ts';
import type { Enquiry } from '../../order/enquiry.ts';
import { nextAsk } from '../../order/next.ts';
import { regionOf } from '../../quote/postage.ts';
import { priceLine, type LinePrice } from '../../quote/price.ts';
import type { Shop } from '../../shop/shop.ts';
import type { SpecSlot } from '../../shop/words.ts';
import { proceed } from '../ask.ts';
import { benchTap } from '../benchButtons.ts';
import type { Card } from '../card.ts';
import { draftTap, wordButton } from '../draftButtons.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { draftOf, isQuoted, newButton, newDraft } from './draft.ts';
import { priceList } from './papers.ts';

type On<K extends Enquiry['on']> = Extract<Enquiry, { on: K }>;

/** A question before the order is answered; the draft stays as it is. */
export function answerEnquiry(turn: Turn, enquiry: Enquiry): Decision {
  if (enquiry.on === 'range') return range(turn, enquiry);
  if (enquiry.on === 'post') return posts(turn, enquiry);
  if (enquiry.on === 'day') return day(turn);
  return enquiry.on === 'head' ? makes(turn, enquiry) : priced(turn, enquiry);
}

/** The shop's range of a slot: all of it, or what goes with the head that is being talked about. What is not in it, the maker may still do. */
function range(turn: Turn, { about, of, lacks }: On<'range'>): Decision {
  const { world, desk, by } = turn;
  const spec = { ...lineOf(draftOf(turn)).spec, ...putWords(emptyLine, of).spec, [about]: undefined };
  const all = inOrder(about, choicesFor(world.shop, {}, about));
  const fits = inOrder(about, choicesFor(world.shop, spec, about));
  const fitting = fits.length < all.length ? fits : null;
  const person = lacks === null ? [] : [[wordButton('ask-maker', benchTap('ask-maker'))]];
  return says(desk, card(by.id, { code: 'range', about, all, fitting, lacks }, { rows: [...goOn(turn), ...person] }));
}

/** Hooks as they grow: 4, 2, 1, 1/0, 2/0; everything else as the shop lists it. */
const inOrder = (about: SpecSlot, values: readonly string[]): readonly string[] =>
  about === 'hook' ? values.toSorted((a, b) => hookRank(a) - hookRank(b)) : values;

const hookRank = (hook: string): number => (hook.endsWith('/0') ? 1 : -1) * Number.parseInt(hook, 10);

/** Whether the shop makes a head, and what stands against it. */
function makes(turn: Turn, { words }: On<'head'>): Decision {
  const line = putWords(emptyLine, words);
  const findings = checkDraftLine(turn.world.shop, line, 0);
  return says(turn.desk, card(turn.by.id, { code: 'makes', spec: line.spec, findings }, { rows: goOn(turn) }));
}

/** Where parcels go, and what the smallest one costs to the place asked about. */
function posts(turn: Turn, { to }: On<'post'>): Decision {
  const { shop } = turn.world;
  const region = to === null ? undefined : regionOf(shop, to);
  const from = region ? Math.min(...region.bands.map(({ cents }) => cents)) : null;
  const places = shop.postage.regions.flatMap((one) => one.places);
  return says(turn.desk, card(turn.by.id, { code: 'posts-to', to, from, places }, { rows: goOn(turn) }));
}

/** A whole order's price stands on its summary. Before that a head's price where one is talked of, for another number than was said if one is named, else the price list. */
function priced(turn: Turn, { of }: On<'quote'>): Decision {
  const draft = draftOf(turn);
  if (Object.keys(of).length === 0 && draft && isQuoted(turn, draft)) return again(turn, []);
  const price = priceOf(turn.world.shop, putWords(lineOf(draft), of));
  const each = price?.each;
  const count = of.quantity ?? null;
  const told =
    each === undefined
      ? priceList(turn).cards
      : [card(turn.by.id, { code: 'quote-later', each, count, total: price?.total ?? each })];
  return again(turn, told);
}

/** The day stands on the summary; before that it is not known. */
function day(turn: Turn): Decision {
  const draft = draftOf(turn);
  return again(turn, draft && isQuoted(turn, draft) ? [] : [card(turn.by.id, { code: 'day-later' })]);
}

/** What was told, and the talk again where it was. */
function again(turn: Turn, told: Decision['cards']): Decision {
  const draft = draftOf(turn);
  const next = draft === undefined ? newDraft(turn, 'below') : proceed(turn, draft, 'below');
  return { ...next, cards: [...told, ...next.cards] };
}

/** What heads cost as far as they are known, the rest as usual; undefined where too little is. */
function priceOf(shop: Shop, { spec, quantity, extra }: DraftLine): LinePrice | undefined {
  const whole = spec.style === undefined || spec.weight === undefined ? undefined : usualSpec(shop, spec);
  return whole && priceLine(shop, { spec: whole, quantity: quantity ?? shop.orders.least, extra });
}

const lineOf = (draft: Draft | undefined): DraftLine => (draft ? currentLine(draft) : emptyLine);

/** Back to what was open, or to a new order. */
function goOn(turn: Turn): Card['rows'] {
  const draft = draftOf(turn);
  if (draft === undefined) return [[newButton()]];
  return nextAsk(turn.world.shop, draft) ? [[wordButton('keep-on', draftTap(draft, 'keep-on'))]] : [];
}
