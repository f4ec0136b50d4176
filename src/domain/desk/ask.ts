import { checkDraftLine } from '../order/check.ts';
import { choicesFor } from '../order/choices.ts';
import type { Ask, Draft } from '../order/draft.ts';
import type { Finding } from '../order/finding.ts';
import { daysMeant, openDay } from '../order/needBy.ts';
import { ANY_DAY } from '../order/talk.ts';
import { guardColours, nextAsk, questionsLeft } from '../order/next.ts';
import { usualSpec } from '../order/choices.ts';
import type { Impossible } from '../plan/plan.ts';
import type { Shop } from '../shop/shop.ts';
import type { SpecSlot } from '../shop/words.ts';
import type { Card, CardButton } from './card.ts';
import { draftSlot, draftTap, inRows, wayRows, wordButton } from './draftButtons.ts';
import { askedOf, quoteLines, type Quoted } from './quoting.ts';
import { summary } from './summary.ts';
import { card, says, type Decision, type Turn, type World } from './turn.ts';

/** What comes next for a draft: what cannot be, else the next question, else the summary with its quote.
 *  It is the one place that decides it, after a tap, a typed answer or a restart. */
export function proceed(turn: Turn, draft: Draft, place: Card['place']): Decision {
  const { world, desk, by, now } = turn;
  const more = { slot: draftSlot(draft.id), place } as const;
  const stuck = findingsOf(world, draft);
  const next = stuck.length > 0 ? undefined : nextAsk(world.shop, draft);
  const kept: Draft = { ...draft, current: stuck[0]?.line ?? next?.line ?? draft.current };
  const stored = { ...desk, drafts: { ...desk.drafts, [by.id]: kept } };
  if (stuck.length > 0) return says(stored, stuckCard(turn, kept, stuck, more));
  if (next) return says(stored, questionCard(turn, kept, next.ask, more));
  const quoted = quoteDraft(world, stored, kept, now);
  if (quoted.ok) return summary({ ...turn, desk: stored }, kept, quoted, more);
  return says(stored, stuckCard(turn, kept, quoted.findings, more, quoted.impossible));
}

/** What stands against a draft as it is: what cannot be cast, line by line, before anything more is asked; else what stands against its quote. */
export function standsAgainst({ world, desk, now }: Turn, draft: Draft): readonly Finding[] {
  const stuck = findingsOf(world, draft);
  if (stuck.length > 0 || nextAsk(world.shop, draft)) return stuck;
  const quoted = quoteDraft(world, desk, draft, now);
  return quoted.ok ? [] : quoted.findings;
}

/** The findings whose ways out are offered as buttons: those of `standsAgainst`, else what the quote notes. */
export function waysOffered(turn: Turn, draft: Draft): readonly Finding[] {
  const against = standsAgainst(turn, draft);
  const quoted = against.length > 0 ? undefined : quoteDraft(turn.world, turn.desk, draft, turn.now);
  return quoted?.ok ? quoted.notes : against;
}

/** What is wrong with the first line that cannot be made as it stands. */
export function findingsOf({ shop }: World, draft: Draft): readonly Finding[] {
  for (const [at, line] of draft.lines.entries()) {
    const findings = checkDraftLine(shop, line, at);
    if (findings.length > 0) return findings;
  }
  return [];
}

function quoteDraft(world: World, desk: Turn['desk'], draft: Draft, now: Turn['now']): Quoted {
  const asked = askedOf(world.shop, draft);
  return asked === undefined ? { ok: false, findings: [], impossible: [] } : quoteLines(world, desk, asked, now);
}

const stuckCard = (
  turn: Turn,
  draft: Draft,
  findings: readonly Finding[],
  more: Partial<Card>,
  impossible: Impossible['impossible'] = [],
): Card => {
  const why = impossible.map((one) => one.why);
  return card(turn.by.id, { code: 'stuck', draft, findings, why }, { ...more, rows: stuckRows(draft, findings) });
};

/** Ways out, then a person, then starting anew. */
function stuckRows(draft: Draft, findings: readonly Finding[]): readonly (readonly CardButton[])[] {
  return [
    ...wayRows(draft, findings),
    [wordButton('ask-maker', draftTap(draft, 'ask-maker')), wordButton('start-over', draftTap(draft, 'start-over'))],
  ];
}

function questionCard(turn: Turn, draft: Draft, ask: Ask, more: Partial<Card>): Card {
  const { shop } = turn.world;
  const usual = ask === 'usual' ? (usualSpec(shop, draft.lines[draft.current]?.spec ?? {}) ?? null) : null;
  const progress = { line: draft.current + 1, lines: draft.lines.length, left: questionsLeft(shop, draft) };
  const rows = [...inRows(choiceButtons(turn, draft, ask), 2), controls(draft)];
  return card(turn.by.id, { code: 'question', draft, ask, findings: [], usual, progress }, { ...more, rows });
}

/** The choices of a question as buttons. Only what can be made is offered. */
function choiceButtons(turn: Turn, draft: Draft, ask: Ask): readonly CardButton[] {
  const { world, by } = turn;
  const { shop } = world;
  const choice = (value: string): CardButton => ({
    label: { code: 'choice', ask, value },
    tap: draftTap(draft, 'answer', `${ask}=${value}`),
  });
  const line = draft.lines[draft.current];
  if (ask === 'usual') return usualButtons(shop, draft);
  if (ask === 'quantity') return quantities(shop).map(choice);
  if (ask === 'shipTo') return places(shop, by.place).map(choice);
  if (ask === 'needBy') return dayButtons(turn, draft, choice);
  if (ask === 'guard' && line?.wantsGuard && draft.changing === null) return guardColours(shop, line.spec).map(choice);
  return openChoices(shop, draft, ask).map(choice);
}

/** What may be put into a slot in place of what stands there now. */
const openChoices = (shop: Shop, draft: Draft, slot: SpecSlot): readonly string[] =>
  choicesFor(shop, { ...draft.lines[draft.current]?.spec, [slot]: undefined }, slot);

/** The days that the buyer's words may mean, and none at all. */
const dayButtons = (
  { world, now }: Turn,
  draft: Draft,
  choice: (value: string) => CardButton,
): readonly CardButton[] => [
  ...daysMeant(openDay(draft) ?? '', world.reader, now).map(choice),
  wordButton('any-day', draftTap(draft, 'answer', `needBy=${ANY_DAY}`)),
];

function usualButtons(shop: Shop, draft: Draft): readonly CardButton[] {
  const quantity = draft.lines[draft.current]?.quantity ?? null;
  const each = wordButton('choose-each', draftTap(draft, 'each'));
  if (quantity !== null) return [wordButton('usual', draftTap(draft, 'usual')), each];
  const counts = quantities(shop).map((value): CardButton => ({
    label: { code: 'choice', ask: 'usual', value },
    tap: draftTap(draft, 'usual', value),
  }));
  return [...counts, each];
}

/** Handy numbers of heads: a small lot, then each number from which a head costs less. */
const quantities = ({ orders, prices }: Shop): readonly string[] =>
  [...new Set([Math.max(10, orders.least), ...prices.breaks.map(({ from }) => from)])]
    .filter((count) => count >= orders.least && count <= orders.most)
    .map(String);

/** The buyer's last place first, then the shop's own. */
const places = (shop: Shop, last: string | null): readonly string[] => [
  ...new Set([...(last ? [last] : []), shop.place]),
];

function controls(draft: Draft): readonly CardButton[] {
  const back = draft.trail.length > 0 ? [wordButton('back', draftTap(draft, 'back'))] : [];
  return [...back, wordButton('ask-maker', draftTap(draft, 'ask-maker'))];
}
