import { inGarage } from '../../bench/cure.ts';
import { temperatureIn } from '../../craft/temperature.ts';
import { news } from '../news.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';
import { timerFacts } from '../telling.ts';

/** Temperatures that a garage can have, °C; anything else is a slip of the finger. */
const COLDEST = -40;
const HOTTEST = 55;

/** The garage is this warm from now on; running cures go on at that rate. A number without a unit is in the shop's own.
 *  @example garage(turn, '55 F') */
export function garage(turn: Turn, text: string): Decision {
  const { world, desk, by, now } = turn;
  const celsius = temperatureIn(text, world.shop.temperature);
  if (celsius === undefined || celsius < COLDEST || celsius > HOTTEST)
    return says(desk, card(by.id, { code: 'which-temperature' }));
  const timers = Object.fromEntries(
    Object.entries(desk.timers).map(([id, timer]) => [id, inGarage(timer, celsius, now, world.shop.epoxy)]),
  );
  const next = { ...desk, garageCelsius: celsius, timers };
  const cures = Object.values(timers)
    .filter(({ course }) => course !== null)
    .map((timer) => timerFacts(world.shop, next, timer, now));
  const set = card(by.id, { code: 'garage-set', celsius, cures, leastCelsius: world.shop.epoxy.leastCelsius });
  return news(turn, desk, says(next, set));
}
