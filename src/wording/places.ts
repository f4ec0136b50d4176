import { SUBDIVISIONS, SUBDIVISIONS_ES } from '../domain/order/reader/language/places.ts';
import type { Language } from '../domain/shop/words.ts';

/** What people call a place that has an ISO 3166 code; the code itself where nobody has a name for it.
 *  @example placeName('US-NY', 'es') //=> 'Nueva York' */
export function placeName(code: string, language: Language): string {
  const [country = '', part] = code.split('-');
  if (part === undefined) return countryName(country, language);
  const names = (language === 'es' ? SUBDIVISIONS_ES[code] : undefined) ?? SUBDIVISIONS[code];
  return names?.split(',')[0] ?? `${part}, ${countryName(country, language)}`;
}

const COUNTRIES: Readonly<Record<Language, Intl.DisplayNames>> = {
  en: new Intl.DisplayNames('en', { type: 'region' }),
  es: new Intl.DisplayNames('es', { type: 'region' }),
};

const countryName = (code: string, language: Language): string =>
  /^[A-Z]{2}$/.test(code) ? (COUNTRIES[language].of(code) ?? code) : code;
