import type { Instant } from '../../domain/craft/time.ts';
import type { PersonId } from '../../domain/desk/person.ts';

type Size = Readonly<{ deep: number; refillMs: number }>;

/** A person: so many updates at once, and one more each half second, twenty in ten seconds. */
const ONE: Size = { deep: 20, refillMs: 500 };
/** All who were never here before, together: thirty at once, and thirty a minute. */
const NEWCOMERS: Size = { deep: 30, refillMs: 2_000 };
/** People that are remembered; who has been quiet longest is forgotten first, with a full bucket. */
const PEOPLE_MOST = 10_000;

export type Admission = 'in' | 'notice' | 'out';
export type Standing = 'known' | 'new';

type Bucket = Readonly<{ left: number; at: Instant; noticed: Instant }>;

/** Who may go on: `in` until a person's bucket is empty, then `notice` once, and `out` until it has filled up by half.
 *  Newcomers share a bucket as well, so that a thousand made-up people do not fill the book. */
export class FloodGate {
  readonly #buckets = new Map<PersonId, Bucket>();
  #newcomers: Bucket | null = null;

  admit(id: PersonId, now: Instant, standing: Standing = 'known'): Admission {
    const own = this.#admitOne(id, now);
    if (own !== 'in' || standing === 'known') return own;
    const [bucket, admission] = poured(this.#newcomers ?? full(NEWCOMERS, now), now, NEWCOMERS);
    this.#newcomers = bucket;
    return admission;
  }

  #admitOne(id: PersonId, now: Instant): Admission {
    const [bucket, admission] = poured(this.#buckets.get(id) ?? full(ONE, now), now, ONE);
    this.#buckets.delete(id);
    this.#buckets.set(id, bucket);
    this.#forget();
    return admission;
  }

  #forget(): void {
    const [oldest] = this.#buckets.keys();
    if (this.#buckets.size > PEOPLE_MOST && oldest !== undefined) this.#buckets.delete(oldest);
  }
}

const full = ({ deep }: Size, now: Instant): Bucket => ({ left: deep, at: now, noticed: Number.NEGATIVE_INFINITY });

function poured(old: Bucket, now: Instant, { deep, refillMs }: Size): readonly [Bucket, Admission] {
  const left = Math.min(deep, old.left + Math.max(0, now - old.at) / refillMs);
  if (left >= 1) return [{ left: left - 1, at: now, noticed: old.noticed }, 'in'];
  const isNew = now - old.noticed > ONE.deep * ONE.refillMs;
  return [{ left, at: now, noticed: isNew ? now : old.noticed }, isNew ? 'notice' : 'out'];
}
