import type { Toast } from '../domain/desk/turn.ts';
import type { Language } from '../domain/shop/words.ts';
import { PHRASES } from './phrases.ts';

/** The short answer shown on a tapped button; null where the new card says it all.
 *  @example toastText('done', 'en') //=> 'Done' */
export const toastText = (toast: Toast, language: Language): string | null => PHRASES[language].toasts[toast];
