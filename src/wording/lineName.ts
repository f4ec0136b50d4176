import type { Line } from '../domain/order/spec.ts';
import { headName } from './names.ts';
import type { Voice } from './voice.ts';

/** A line in short. @example lineName(line, voice) //=> '24 × 3/8 oz football head' */
export const lineName = ({ spec, quantity }: Line, voice: Voice): string =>
  `${voice.number(quantity)} × ${headName(voice, spec)}`;
