import type { Fault } from './fault.ts';
import type { SoundParts } from './sound.ts';

/** A rule of the shop file that spans several of its parts: what is wrong by it in the parts that are sound. */
export type Check = (shop: SoundParts) => readonly Fault[];
