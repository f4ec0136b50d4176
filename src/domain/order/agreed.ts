/** Longest wish that fits a spec's slot. */
const LONGEST = 38;

/** A slot's value for something agreed with the maker, in the buyer's own words.
 *  @example agreedValue('pink glitter') //=> '~pink glitter' */
export const agreedValue = (said: string): string => `~${said.slice(0, LONGEST)}`;

/** The buyer's words in an agreed value; undefined for a word of the shop file.
 *  @example wordsAgreed('~pink glitter') //=> 'pink glitter' */
export const wordsAgreed = (value: string | undefined): string | undefined =>
  value?.startsWith('~') ? value.slice(1) : undefined;
