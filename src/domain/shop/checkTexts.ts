import type { Check } from './check.ts';
import { faultAt, type Fault, type Path } from './fault.ts';
import { valueAt, type SoundParts } from './sound.ts';

/** What must hold for the shop's own texts. */
export const TEXT_CHECKS: readonly Check[] = [ownLanguage];

/** Texts that may be given in each language. */
const TEXTS: readonly Path[] = [
  ['about'],
  ['payment', 'words'],
  ['texts', 'greeting'],
  ['texts', 'thanks'],
  ['texts', 'shipped'],
];

/** A text in some languages is there in the shop's own too, for whoever reads none of them. */
function ownLanguage(shop: SoundParts): Fault[] {
  const { language } = shop;
  return language === undefined
    ? []
    : TEXTS.flatMap((path) => {
        const words = valueAt(shop, path);
        return isOneEach(words) && !(language in words)
          ? [faultAt(path, words, `its text in the shop's own language too, as "${language}": "…"`)]
          : [];
      });
}

const isOneEach = (words: unknown): words is object => typeof words === 'object' && words !== null;
