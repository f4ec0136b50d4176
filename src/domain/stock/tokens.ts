/** The words of a text as items are compared by: lower case, no accents, joins and signs apart, a hook size kept whole.
 *  @example wordsIn('4/0 60° hooks, Heavy') //=> ['4/0', '60', 'degree', 'hooks', 'heavy'] */
export const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll('°', ' degree ')
    .replaceAll(/(\d)\s*[/-]\s*0\b/g, '$1/0')
    .split(/[^\p{L}\p{N}/.]+|(?<!\d)\/|\/(?!0)|\.(?!\d)/u)
    .filter((word) => word !== '' && !FILLER.has(word));

/** Words that name nothing. */
const FILLER = new Set([
  'of',
  'the',
  'a',
  'an',
  'some',
  'more',
  'my',
  'de',
  'del',
  'la',
  'las',
  'el',
  'los',
  'mas',
  'y',
  'and',
  'n',
  'no',
  'num',
  'º',
]);
