import { lines } from '../clip.ts';
import type { Voice } from '../voice.ts';
import type { Phrases, SayingOf } from '../words.ts';
import { findingLines } from './draft.ts';
import { specName } from './spec.ts';

/** Whether a head that was asked about is made, or what stands against it and comes nearest. */
export const makes = (
  { spec, findings }: SayingOf<'makes'>,
  voice: Voice,
  { draft, findings: words }: Phrases,
): string =>
  findings.length === 0
    ? draft.makes(specName(voice, spec) ?? '')
    : lines(draft.stuck, findingLines(findings, 1, voice, { draft, findings: words }));
