import type { Paper } from '../../app/letter.ts';
import type { Order } from '../../domain/desk/order.ts';
import type { BusinessWords } from '../businessWords.ts';
import { capital } from '../clip.ts';
import { headName } from '../names.ts';
import type { Voice } from '../voice.ts';
import { fittingNames } from './spec.ts';

export type Words = BusinessWords['paper'];
export type Block = Paper['blocks'][number];

/** A head with all that is on it, on two lines. */
export const headText = ({ spec }: Order['lines'][number], voice: Voice): string =>
  `${capital(headName(voice, spec))}\n${fittingNames(voice, spec, () => true).join(', ')}`;

export const thanks = ({ shop, own }: Voice): Block => ({
  kind: 'text',
  heading: '',
  lines: [own(shop.texts.thanks)],
});
