import type { LawRemark } from '../../domain/order/finding.ts';
import type { LineSlot } from '../../domain/shop/words.ts';
import { itemName, headName, partName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { BecauseWords, FindingWords } from '../words.ts';
import { EN_TERMS } from './terms.ts';

const { steps, asks } = EN_TERMS;

export const EN_FINDINGS: FindingWords = {
  'no-such-weight': ({ style, weight, weights }, voice) =>
    `There is no mold for a ${headName(voice, { style, weight })}. It is cast in ${voice.list(weights)} oz.`,
  'weight-unknown': ({ weight, weights }, voice) =>
    `No mold here casts ${weight} oz. The weights are ${voice.list(weights)} oz.`,
  'hook-does-not-fit': ({ hook, fits }, voice) =>
    `A ${hook} hook does not fit this mold. ${fits.length === 1 ? 'The size that fits is' : 'The sizes that fit are'} ${voice.list(fits)}.`,
  'no-guard-hole': ({ style }, voice) =>
    `The mold of the ${headName(voice, { style })} has no guard hole, so a guard cannot be set in it.`,
  'guard-too-thick': ({ guard, pin }, voice) =>
    `The ${partName(voice, 'guard', guard)} does not fit the guard hole, which is ${pin} in wide.`,
  'keeper-not-in-mold': ({ style, keeper, keepers }, voice) =>
    `The ${headName(voice, { style })} cannot be cast with ${partName(voice, 'keeper', keeper)}. It can have ${either(keepers.map((one) => partName(voice, 'keeper', one)))}.`,
  'takes-no-dressing': ({ style }, voice) =>
    `The ${headName(voice, { style })} has no collar behind it, so a skirt or collar would not stay on.`,
  'melts-in-oven': ({ metal, solidus, oven }, voice) =>
    `Paint is baked at ${voice.temperature(oven)}, and ${partName(voice, 'metal', metal)} begins to melt at ${voice.temperature(solidus)}. It can stay unpainted, or be cast of another metal.`,
  'not-together': ({ slots }, voice) =>
    `No one mold casts all of this together: ${voice.list(slots.map((slot) => asks[slot]))}. Change any one of them.`,
  'too-few': ({ quantity, least }, voice) =>
    `A line starts at ${voice.count(least, EN_TERMS.heads)}; this one has ${voice.number(quantity)}.`,
  'too-many': ({ quantity, most }, voice) =>
    `A line can have up to ${voice.count(most, EN_TERMS.heads)}; this one has ${voice.number(quantity)}. More can go on another line.`,
  'waits-for-stock': ({ slots, item, day, due, instead }, voice) =>
    due === null
      ? `It waits for ${itemName(voice, item)}: more arrive ${voice.day(day)}. The ship day counts that in.${fitsToo(slots, instead, voice)}`
      : `It waits for ${itemName(voice, item)}: more were due ${voice.day(due)} and have not come. The ship day counts on them only for ${voice.day(day)}.${fitsToo(slots, instead, voice)}`,
  'out-of-stock': ({ slots, item, instead }, voice) =>
    `There is not enough ${itemName(voice, item)} for this, and none is on order. The maker can say when there will be.${fitsToo(slots, instead, voice)}`,
  'law-refuses': (facts, voice) => `It cannot be sold to ${voice.place(facts.place)} in lead. ${rule(facts, voice)}`,
  'law-holds': (facts, voice) =>
    `Before it is sold to ${voice.place(facts.place)} in lead, the maker has to look at a rule. ${rule(facts, voice)}`,
  'law-notice': (facts, voice) => `A rule on lead in ${voice.place(facts.place)}: ${rule(facts, voice)}`,
  'no-postage': ({ place }, voice) =>
    `I have no postage price to ${voice.place(place)}, so the maker has to work this one out.`,
};

export const EN_BECAUSE: BecauseWords = {
  material: ({ until }, voice) => `material is here ${voice.clock(until)}`,
  hands: ({ until }, voice) => `hands are taken until ${voice.clock(until)}`,
  hours: ({ until }, voice) => `the bench opens ${voice.clock(until)}`,
  oven: ({ until }, voice) => `the oven is taken until ${voice.clock(until)}`,
  lag: ({ do: step, until }, voice) => `${stepName(step)} runs to ${voice.clock(until)}`,
  work: ({ do: step, until }, voice) => `${stepName(step)} is done ${voice.clock(until)}`,
  spare: ({ day }, voice) => `room is kept for a bad evening, so ${voice.shortDay(day)} is what I can promise`,
  post: ({ by }, voice) => `post leaves ${voice.clock(by)}`,
};

const stepName = (step: string): string => (steps as Readonly<Record<string, string>>)[step] ?? step;

/** The fact, how surely it holds for this head, and where it stands written. */
const rule = ({ fact, why, since, citation, asOf, tag }: LawRemark, voice: Voice): string =>
  [
    fact.en,
    ...DOUBTS[why](since && voice.date(since)),
    `(${[citation, `as of ${voice.date(asOf)}`, ...(KNOWN[tag] ?? [])].join('; ')})`,
  ].join(' ');

const DOUBTS: Readonly<Record<LawRemark['why'], (since: string | null) => readonly string[]>> = {
  'in-force': () => [],
  'from-later': (since) => [since === null ? 'It is not in force yet.' : `It comes into force on ${since}.`],
  'not-yet-law': () => ['It was not law yet when last looked at.'],
  'unclear-cover': () => ['It is not certain that it covers jig heads.'],
  'length-unknown': () => ['It hangs on the length of the head, which has not been measured.'],
  'only-hook-clears-it': () => ["Only the hook's weight takes the head over its limit."],
};

/** How the source is known, where its own text was not seen. */
const KNOWN: Readonly<Record<string, readonly string[]>> = {
  V2: ['as reported by another source'],
  M: ['from memory'],
};

const either = (items: readonly string[]): string => items.join(' or ');

/** What the mold takes too and what is there now. */
const fitsToo = ([slot]: readonly LineSlot[], instead: readonly string[], voice: Voice): string =>
  instead.length === 0 || slot === undefined || slot === 'quantity'
    ? ''
    : ` Here now, and it fits the mold: ${either(instead.map((one) => partName(voice, slot, one)))}.`;
