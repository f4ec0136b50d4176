import { addDays, localDay } from '../../craft/time.ts';
import { proposeButton } from '../benchButtons.ts';
import type { CardButton } from '../card.ts';
import { inRows } from '../draftButtons.ts';
import { spansOn } from '../hours.ts';
import { hoursOf } from '../planning.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';

/** Days shown: this week and the next. */
const DAYS = 14;

/** The bench hours of the days to come, each day with a button that closes it, or opens it again. */
export function hours({ world: { shop }, desk, by, now }: Turn): Decision {
  const first = localDay(now, shop.zone);
  const days = Array.from({ length: DAYS }, (_, after) => addDays(first, after)).map((day) => ({
    day,
    spans: spansOn(shop, desk, day),
  }));
  const off = hoursOf(shop, desk).daysOff;
  const buttons = days.flatMap(({ day, spans }): readonly CardButton[] => {
    if (spans.length > 0) return [proposeButton({ do: 'off', day })];
    return off.includes(day) ? [proposeButton({ do: 'on', day })] : [];
  });
  return says(desk, card(by.id, { code: 'hours', days }, { rows: inRows(buttons, 2) }));
}
