import { checkCure, equivalentMinutes } from '../../craft/oven.ts';
import { temperatureIn } from '../../craft/temperature.ts';
import { card, says, type Decision, type Turn } from '../turn.ts';

/** Temperatures at which an oven for powder can be, °C. */
const COOLEST = 100;
const HOTTEST = 260;

/** What the hold would be worth at the temperature that the oven really has; only to warn, never to allow a cure outside the powder's sheet. */
export function ovenAt(turn: Turn, text: string): Decision {
  const { world, desk, by } = turn;
  const { oven, temperature } = world.shop;
  const celsius = temperatureIn(text, temperature);
  if (celsius === undefined || celsius < COOLEST || celsius > HOTTEST)
    return says(desk, card(by.id, { code: 'which-oven' }));
  const sheet = { minutes: oven.holdMinutes, celsius: oven.celsius };
  const wanted = equivalentMinutes(sheet, celsius, oven.activation);
  // The shop file's °C may stand for a round °F: what comes to the same whole minute is the same hold.
  const isSame = Math.round(wanted) === Math.round(oven.holdMinutes);
  const verdict = isSame ? 'enough' : checkCure({ minutes: oven.holdMinutes, celsius }, sheet, oven).verdict;
  return says(desk, card(by.id, { code: 'oven-at', celsius, hold: oven.holdMinutes, wanted, verdict }));
}
