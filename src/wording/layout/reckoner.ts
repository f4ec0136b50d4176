import { GRAMS_PER_OUNCE } from '../../domain/craft/weight.ts';
import { lines, paragraphs } from '../clip.ts';
import { valueName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { BenchWords, Phrases, SayingOf } from '../words.ts';
import { specName } from './spec.ts';
import { timerLine } from './timers.ts';

/** What a number of heads takes, and what one weighs in each metal. */
export function reckoner({ facts }: SayingOf<'reckoner'>, voice: Voice, { bench: words }: Phrases): string {
  const { spec, quantity, heads, weights, melt, count, bake, powder } = facts;
  const many = (number: number): string => voice.count(number, voice.terms.heads);
  return paragraphs(
    specName(voice, spec),
    words.reckoned(many(quantity), many(heads)),
    lines(words.weights, ...weights.map((row) => weightRow(row, voice, words))),
    lines(
      words.melt(voice.grams(melt)),
      count && words.countTo('', Math.round(count.from), Math.round(count.to)),
      powder === null ? null : words.powder(voice.grams(Math.ceil(powder))),
      bake &&
        words.bake(
          voice.temperature(voice.shop.oven.celsius),
          voice.duration(Math.ceil(bake.comeUp)),
          voice.duration(bake.hold),
        ),
      cureRow(facts, voice, words),
    ),
  );
}

/** The garage's temperature, and what it makes of the cures that run. */
export function garageSet(say: SayingOf<'garage-set'>, voice: Voice, phrases: Phrases): string {
  const { celsius, cures, leastCelsius } = say;
  const { bench: words } = phrases;
  const still = celsius < leastCelsius;
  const rows = cures.map((facts) => `- ${timerLine(facts, voice, phrases)}`);
  const heading = still ? words.curesStill(voice.temperature(leastCelsius)) : words.curesGoOn;
  const none = still ? words.setNone(voice.temperature(leastCelsius)) : null;
  return paragraphs(words.garage(voice.temperature(celsius)), cures.length === 0 ? none : lines(heading, ...rows));
}

function weightRow(
  { metal, grams, bakes }: SayingOf<'reckoner'>['facts']['weights'][number],
  voice: Voice,
  words: BenchWords,
): string {
  const rounded = (value: number): string => voice.number(Math.round(value * 100) / 100);
  const row = words.weighs(valueName(voice, 'metal', metal), `${rounded(grams)} g`, rounded(grams / GRAMS_PER_OUNCE));
  return `- ${row}${bakes ? '' : `, ${words.noBake}`}`;
}

function cureRow({ cure, garage }: SayingOf<'reckoner'>['facts'], voice: Voice, words: BenchWords): string {
  const warmth = voice.temperature(garage);
  if (cure === null) return words.noCure(warmth);
  const hours = (value: number): string => voice.duration(Math.ceil(value) * 60);
  return words.cured(hours(cure.full), hours(cure.overnight), warmth);
}
