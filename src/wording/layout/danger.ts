import type { Danger } from '../../domain/desk/coming.ts';
import { HOUR, type Day } from '../../domain/craft/time.ts';
import type { Help } from '../../domain/desk/helps.ts';
import { capital, lines, paragraphs } from '../clip.ts';
import type { EveningWords, Threat } from '../eveningWords.ts';
import { hourOn } from '../hourOn.ts';
import { amountOf, itemName } from '../names.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';

/** A promise in danger: whose, how late, the whole chain of what it waits on, and what really helps. */
export function inDanger({ danger, helps }: SayingOf<'in-danger'>, voice: Voice, phrases: Phrases): string {
  const { order, buyer } = danger;
  const { evening: words } = phrases;
  return paragraphs(
    words.inDanger(order, buyer, threatOf(danger, voice.day)),
    waitsOn(danger, voice, phrases),
    lines(...(helps.length === 0 ? [words.helps.nothing] : helps.map((help) => helpLine(help, voice, words)))),
  );
}

/** A danger as the words want it, its days written one way or another. */
export const threatOf = ({ promised, ships, late, waits, packed }: Danger, day: (day: Day) => string): Threat => ({
  promised: day(promised),
  ships: ships && day(ships),
  late,
  at: waits !== null ? 'hold' : packed ? 'post' : 'bench',
});

function helpLine(help: Help, voice: Voice, { helps }: EveningWords): string {
  if (help.do === 'buy') return helps.buy;
  if (help.do === 'post') return helps.post(voice.clock(help.by));
  const { change } = help;
  const ships = voice.day(help.ships);
  if (change.do !== 'extra') return helps[change.do](ships);
  const clocks = [change.from, change.to].map((clock) => hourOn(change.day, clock, voice));
  return helps.extra(`${voice.shortDay(change.day)}, ${clocks.join('–')}`, ships);
}

/** Each link of the chain on its own line, what is missing first; null where nothing is known of it. */
export function waitsOn(danger: Danger, voice: Voice, phrases: Phrases): string | null {
  const links = [...missingLinks(danger, voice, phrases), ...linksOf(danger, danger.because, voice, phrases)];
  return links.length === 0 ? null : lines(phrases.evening.waitsOn, ...links.map((link) => `- ${capital(link)}`));
}

/** What is missing, else the last two things that it waits on, in one line. */
export function inShort(danger: Danger, voice: Voice, phrases: Phrases): string {
  const waits = danger.because.filter(({ code }) => code !== 'post' && code !== 'work');
  const missing = missingLinks(danger, voice, phrases);
  const links = missing.length > 0 ? missing : linksOf(danger, waits.slice(-LINKS), voice, phrases);
  return capital(links.slice(0, LINKS).join('; '));
}

const missingLinks = ({ missing }: Danger, voice: Voice, { evening }: Phrases): readonly string[] =>
  missing.map(({ item, count, due }) =>
    evening.missing(itemName(voice, item), amountOf(item, count, voice), due && voice.shortDay(due)),
  );

const LINKS = 2;

/** What it waits on, in order of time. Past a week a weekday alone does not say which one. */
function linksOf(
  { missing }: Danger,
  because: Danger['because'],
  voice: Voice,
  { quote, evening }: Phrases,
): readonly string[] {
  const ends = because.map((one) => (one.code === 'post' ? one.by : one.until));
  const isLong = Math.max(...ends) - Math.min(...ends) > 6 * 24 * HOUR;
  const clock = isLong ? voice.time : voice.clock;
  return because
    .filter(({ code }, at) => code === 'lag' || code === 'work' || because[at + 1]?.code !== code)
    .map((one) => {
      if (one.code === 'hands' && one.with.length > 0) return evening.handsOn(voice.list(one.with), clock(one.until));
      if (one.code === 'material' && missing.length > 0) return evening.ifOrdered(clock(one.until));
      const write = quote.because[one.code] as (facts: typeof one, voice: Voice) => string;
      return write(one, { ...voice, clock });
    });
}
