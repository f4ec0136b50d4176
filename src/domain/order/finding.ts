import type { Day } from '../craft/time.ts';
import type { Language, LineSlot } from '../shop/words.ts';
import type { Conflict } from './rules.ts';

/** One tap that would mend a finding: what to put into which slots. */
export type WayOut = Readonly<{ put: Readonly<Partial<Record<LineSlot, string | number>>> }>;

/** What a check can have to say, beside what does not go together. */
export type Remark =
  | Conflict
  | Readonly<{ code: 'too-few'; slots: readonly LineSlot[]; quantity: number; least: number }>
  | Readonly<{ code: 'too-many'; slots: readonly LineSlot[]; quantity: number; most: number }>
  | Readonly<{
      code: 'waits-for-stock';
      slots: readonly LineSlot[];
      item: string;
      need: number;
      free: number;
      /** Values of the slot that the mold takes too and that are there now. */
      instead: readonly string[];
      day: Day;
      /** The day it was to come and did not; null while that is not over. */
      due: Day | null;
    }>
  | Readonly<{
      code: 'out-of-stock';
      slots: readonly LineSlot[];
      item: string;
      need: number;
      free: number;
      instead: readonly string[];
    }>
  | LawRemark
  | Readonly<{ code: 'no-postage'; slots: readonly LineSlot[]; place: string }>;

/** What a rule on lead says of a head that goes to a place, with its source and date; never legal advice. */
export type LawRemark = Readonly<{
  code: 'law-refuses' | 'law-holds' | 'law-notice';
  slots: readonly LineSlot[];
  place: string;
  why: 'in-force' | 'from-later' | 'not-yet-law' | 'unclear-cover' | 'length-unknown' | 'only-hook-clears-it';
  row: string;
  fact: Readonly<Record<Language, string>>;
  citation: string;
  asOf: string;
  since: string | null;
  tag: string;
}>;

export type FindingKind = 'cannot' | 'ask' | 'note';

/** One result of checking: it cannot be, the maker must be asked, or only worth knowing; with its reason and the nearest ways out. */
export type Finding = Readonly<{ kind: FindingKind; line: number; why: Remark; ways: readonly WayOut[] }>;

/** Which remark is of which kind; complete by type. */
export const KIND: Readonly<Record<Remark['code'], FindingKind>> = {
  'no-such-weight': 'cannot',
  'weight-unknown': 'cannot',
  'hook-does-not-fit': 'cannot',
  'no-guard-hole': 'cannot',
  'guard-too-thick': 'cannot',
  'keeper-not-in-mold': 'cannot',
  'takes-no-dressing': 'cannot',
  'melts-in-oven': 'cannot',
  'not-together': 'cannot',
  'too-few': 'cannot',
  'too-many': 'cannot',
  'waits-for-stock': 'note',
  'out-of-stock': 'ask',
  'law-refuses': 'cannot',
  'law-holds': 'ask',
  'law-notice': 'note',
  'no-postage': 'ask',
};
