import type { Danger } from '../../domain/desk/coming.ts';
import { HOUR } from '../../domain/craft/time.ts';
import { capital, lines, paragraphs } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';

/** A promise in danger: whose, how late, the whole chain of what it waits on, and what would help. */
export function inDanger({ danger }: SayingOf<'in-danger'>, voice: Voice, phrases: Phrases): string {
  const { order, buyer, promised, ships } = danger;
  const { evening: words } = phrases;
  return paragraphs(
    words.inDanger(order, buyer, voice.day(promised), voice.day(ships)),
    waitsOn(danger, voice, phrases),
    words.helps,
  );
}

/** Each link of the chain on its own line; null where nothing is known of it. */
export function waitsOn({ because }: Danger, voice: Voice, phrases: Phrases): string | null {
  const links = linksOf(because, voice, phrases);
  return links.length === 0 ? null : lines(phrases.evening.waitsOn, ...links.map((link) => `- ${capital(link)}`));
}

/** The last two things that it waits on, in one line. */
export function inShort({ because }: Danger, voice: Voice, phrases: Phrases): string {
  const waits = because.filter(({ code }) => code !== 'post' && code !== 'work');
  return capital(linksOf(waits.slice(-LINKS), voice, phrases).join('; '));
}

const LINKS = 2;

/** What it waits on, in order of time. Past a week a weekday alone does not say which one. */
function linksOf(because: Danger['because'], voice: Voice, { quote, evening }: Phrases): readonly string[] {
  const ends = because.map((one) => (one.code === 'post' ? one.by : one.until));
  const isLong = Math.max(...ends) - Math.min(...ends) > 6 * 24 * HOUR;
  const clock = isLong ? voice.time : voice.clock;
  return because
    .filter(({ code }, at) => code === 'lag' || code === 'work' || because[at + 1]?.code !== code)
    .map((one) => {
      if (one.code === 'hands' && one.with.length > 0) return evening.handsOn(voice.list(one.with), clock(one.until));
      const write = quote.because[one.code] as (facts: typeof one, voice: Voice) => string;
      return write(one, { ...voice, clock });
    });
}
