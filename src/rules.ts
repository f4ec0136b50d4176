import type { Rules } from './app/handle.ts';
import { localDay } from './domain/craft/time.ts';
import type { Around } from './domain/desk/around.ts';
import { decide } from './domain/desk/decide.ts';
import type { Desk } from './domain/desk/state.ts';
import type { World } from './domain/desk/turn.ts';
import { toastText } from './wording/toast.ts';
import { write } from './wording/write.ts';

/** decide, with its cards put into each person's words; someone who is just being forgotten still hears it in their own. */
export function rulesOf(world: World, around: () => Around): Rules<Desk> {
  const decided = decide(world);
  return (before, command, now) => {
    const { desk, cards, toast, closed, forgotten } = decided(before, command, now, around());
    const languageOf = (id: number) => (desk.people[id] ?? before.people[id])?.language ?? world.shop.language;
    const by = command.type === 'tick' ? world.shop.language : languageOf(command.by.id);
    return {
      desk,
      letters: cards.map((card) => write(world.shop, languageOf(card.to), card)),
      toast: toast && toastText(toast, by),
      closed: closed.map((order) => ({
        // What became known of it since is a record of its own: its account, and the tracking number of its parcel.
        id: [
          order.id,
          ...(order.ledger.length === 0 ? [] : [order.ledger.length]),
          ...(order.tracking === null ? [] : ['t']),
        ].join('/'),
        month: localDay(order.shippedAt ?? now, world.shop.zone).slice(0, 7),
        record: order,
      })),
      ...(forgotten === undefined ? {} : { forgotten }),
    };
  };
}
