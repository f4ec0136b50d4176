import { wordButton } from '../draftButtons.ts';
import { forgot, hasOpenOrder, mayExport } from '../forgotten.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';

/** What is kept and why, with the ways to a copy and to being forgotten. */
export const privacy = ({ desk, by }: Turn): Decision =>
  says(
    desk,
    card(
      by.id,
      { code: 'privacy' },
      { rows: [[wordButton('export', privacyTap('export')), wordButton('forget', privacyTap('forget'))]] },
    ),
  );

/** Everything that is kept about the sender, as a file of JSON. Questions that others answered are theirs; so are finished orders. */
export function exportOwn(turn: Turn): Decision {
  const { desk, by, now, around } = turn;
  if (!mayExport(desk, by.id, now)) return says(desk, card(by.id, { code: 'export-lately' }));
  const own = {
    person: by,
    draft: desk.drafts[by.id] ?? null,
    quote: desk.quotes[desk.drafts[by.id]?.id ?? ''] ?? null,
    openOrders: Object.values(desk.orders).filter(({ buyer }) => buyer === by.id),
    finishedOrders: around.archived,
    questions: Object.values(desk.questions).filter(({ from }) => from === by.id),
  };
  const document = { name: 'my-data.json', text: `${JSON.stringify(own, null, 2)}\n` };
  return says({ ...desk, exported: { ...desk.exported, [by.id]: now } }, card(by.id, { code: 'export' }, { document }));
}

/** Asks whether the sender is sure: it cannot be taken back. */
export const forget = ({ desk, by }: Turn): Decision =>
  says(
    desk,
    card(
      by.id,
      { code: 'forget-sure', orders: openOf(desk, by.id) },
      { rows: [[wordButton('forget-yes', privacyTap('forget-yes')), wordButton('keep-data', privacyTap('help'))]] },
    ),
  );

/** Deletes everything at once, or, while an order is open, everything but that, and the rest when it has shipped. */
export function forgetYes({ desk, by }: Turn): Decision {
  const orders = openOf(desk, by.id);
  const rest = forgot(desk, by.id);
  if (orders.length === 0)
    return { ...says(rest, card(by.id, { code: 'forgotten' }, { kind: 'confirmation' })), forgotten: [by.id] };
  const waiting = {
    ...rest,
    people: { ...rest.people, [by.id]: { ...by, asked: null, past: [], place: null, reworded: null, loose: null } },
    forgetting: [...rest.forgetting, by.id],
  };
  return says(waiting, card(by.id, { code: 'forget-later', orders }, { kind: 'confirmation' }));
}

/** Those whose last order has shipped meanwhile are forgotten now. */
export function forgetDone(decision: Decision): Decision {
  const done = decision.desk.forgetting.filter((id) => !hasOpenOrder(decision.desk, id));
  if (done.length === 0) return decision;
  return { ...decision, desk: done.reduce(forgot, decision.desk), forgotten: done };
}

const openOf = (desk: Turn['desk'], id: number): readonly string[] =>
  Object.values(desk.orders)
    .filter(({ buyer }) => buyer === id)
    .map((order) => order.id);

const privacyTap = (act: 'export' | 'forget' | 'forget-yes' | 'help') =>
  ({ act, on: '-', version: 0, arg: '-' }) as const;
