import { learnFrom } from '../bench/learned.ts';
import type { Session } from '../bench/session.ts';
import { addDays, localDay, type Instant } from '../craft/time.ts';
import type { Shop } from '../shop/shop.ts';
import type { Desk } from './state.ts';

/** The desk with what a finished session teaches, and its heads in the day's account. `before` is the desk with the session in it. */
export function noted(shop: Shop, before: Desk, after: Desk, session: Session, now: Instant): Desk {
  return {
    ...after,
    learned: learnFrom(shop, before.learned, session, before.lots, now),
    worked: withHeads(after.worked, session, localDay(now, shop.zone)),
  };
}

/** Today's and yesterday's account with these heads in it; older days fall out. */
function withHeads(worked: Desk['worked'], { step, shares, scrap }: Session, day: string): Desk['worked'] {
  const done = shares.reduce((sum, { lot, heads }) => sum + heads - (scrap[lot] ?? 0), 0);
  const kept = worked.filter((one) => one.day >= addDays(day, -1));
  const so = kept.find((one) => one.day === day && one.step === step);
  const heads = (so?.heads ?? 0) + done;
  return [...kept.filter((one) => one !== so), { day, step, heads }];
}
