import { LANGUAGES, type Language } from '../domain/shop/words.ts';

/** A word for one of a thing and for any other number of it. */
export type Plural = Readonly<{ one: string; other: string }>;

const RULES = Object.fromEntries(LANGUAGES.map((language) => [language, new Intl.PluralRules(language)])) as Readonly<
  Record<Language, Intl.PluralRules>
>;

/** The form that goes with a number. @example pluralOf('en', 2, { one: 'head', other: 'heads' }) //=> 'heads' */
export const pluralOf = (language: Language, number: number, { one, other }: Plural): string =>
  RULES[language].select(number) === 'one' ? one : other;
