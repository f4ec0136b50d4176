import { addDays, HOUR, instantOf, localDay, type Day, type Instant } from '../craft/time.ts';
import type { PersonId } from './person.ts';
import { orderWithAccount } from './account.ts';
import type { Desk } from './state.ts';
import type { World } from './turn.ts';

/** Days after which a draft nobody touched is dropped. */
const DRAFT_DAYS = 30;
/** Days after which someone who never ordered is forgotten, and of those not more than so many are kept at all. */
const STRANGER_DAYS = 30;
const STRANGERS_MOST = 2000;
/** Days for which answered questions are kept. */
const QUESTION_DAYS = 7;

/** The desk without what is too old to be kept. */
export function sweep({ makers, shop }: World, desk: Desk, now: Instant): Desk {
  const drafts = Object.entries(desk.drafts).filter(([, { touchedAt }]) => now - touchedAt < DRAFT_DAYS * 24 * HOUR);
  const ids = new Set(drafts.map(([, { id }]) => id));
  return {
    ...desk,
    people: remembered(makers, desk, now),
    drafts: Object.fromEntries(drafts),
    quotes: Object.fromEntries(
      Object.entries(desk.quotes).filter(([id, { goodUntil }]) => ids.has(id) && goodUntil > now - 24 * HOUR),
    ),
    held: desk.held.filter((order) => desk.orders[order] !== undefined),
    first: desk.first.filter((order) => desk.orders[order] !== undefined),
    watched: desk.watched.filter((lot) => desk.lots[lot] !== undefined),
    // What was said of a quote or an account is forgotten with it.
    daily: Object.fromEntries(
      Object.entries(desk.daily).filter(
        ([name, day]) =>
          (!name.startsWith('quote/') || now - instantOf(day, '12:00', shop.zone) < 14 * 24 * HOUR) &&
          (!name.startsWith('unpaid/') || orderWithAccount(desk, name.slice('unpaid/'.length)) !== undefined),
      ),
    ),
    ...past(desk, localDay(now, shop.zone)),
    exported: Object.fromEntries(Object.entries(desk.exported).filter(([, at]) => now - at < HOUR)),
    questions: Object.fromEntries(
      Object.entries(desk.questions).filter(
        ([, { answeredAt }]) => answeredAt === null || now - answeredAt < QUESTION_DAYS * 24 * HOUR,
      ),
    ),
  };
}

/** Hours told in chat for days that are over, and the account of days before yesterday. */
const past = (desk: Desk, day: Day): Pick<Desk, 'daysOff' | 'daysOn' | 'extraHours' | 'worked'> => ({
  daysOff: desk.daysOff.filter((off) => off >= day),
  daysOn: desk.daysOn.filter((on) => on >= day),
  extraHours: desk.extraHours.filter(({ date }) => date >= day),
  worked: desk.worked.filter((one) => one.day >= addDays(day, -1)),
});

/** Everyone with an order, past or open, or something begun or asked; of all others those seen last. */
function remembered(makers: readonly PersonId[], desk: Desk, now: Instant): Desk['people'] {
  const busy = new Set([
    ...makers,
    ...Object.values(desk.orders).map(({ buyer }) => buyer),
    ...Object.values(desk.questions).map(({ from }) => from),
    ...Object.keys(desk.drafts).map(Number),
  ]);
  const strangers = Object.values(desk.people)
    .filter(({ id, past }) => past.length === 0 && !busy.has(id))
    .sort((a, b) => b.seenAt - a.seenAt);
  const gone = strangers.filter(
    ({ seenAt }, rank) => rank >= STRANGERS_MOST || now - seenAt > STRANGER_DAYS * 24 * HOUR,
  );
  if (gone.length === 0) return desk.people;
  const lost = new Set(gone.map(({ id }) => String(id)));
  return Object.fromEntries(Object.entries(desk.people).filter(([id]) => !lost.has(id)));
}
