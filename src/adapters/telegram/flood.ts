import type { Instant } from '../../domain/craft/time.ts';
import type { PersonId } from '../../domain/desk/person.ts';

/** So many updates at once, and one more each half second: twenty in ten seconds. */
const DEEP = 20;
const REFILL_MS = 500;
/** People that are remembered; who has been quiet longest is forgotten first, with a full bucket. */
const PEOPLE_MOST = 10_000;

export type Admission = 'in' | 'notice' | 'out';

type Bucket = Readonly<{ left: number; at: Instant; noticed: Instant }>;

/** Who may go on: `in` until a person's bucket is empty, then `notice` once, and `out` until it has filled up by half. */
export class FloodGate {
  readonly #buckets = new Map<PersonId, Bucket>();

  admit(id: PersonId, now: Instant): Admission {
    const old = this.#buckets.get(id) ?? { left: DEEP, at: now, noticed: Number.NEGATIVE_INFINITY };
    const [bucket, admission] = poured(old, now);
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

function poured(old: Bucket, now: Instant): readonly [Bucket, Admission] {
  const left = Math.min(DEEP, old.left + Math.max(0, now - old.at) / REFILL_MS);
  if (left >= 1) return [{ left: left - 1, at: now, noticed: old.noticed }, 'in'];
  const isNew = now - old.noticed > DEEP * REFILL_MS;
  return [{ left, at: now, noticed: isNew ? now : old.noticed }, isNew ? 'notice' : 'out'];
}
