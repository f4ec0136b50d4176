/** A hook size as the trade writes it: `8`…`1` grow as the number falls, then `1/0`, `2/0`… grow with it. */
export type HookSize = string;

/** The size in its usual writing; undefined when the text is not a hook size.
 *  @example parseHook('#2') //=> '2'
 *  @example parseHook('3-0') //=> '3/0' */
export function parseHook(text: string): HookSize | undefined {
  const aught = /^\s*#?\s*(\d{1,2})\s*[/-]\s*0\s*$/.exec(text);
  if (aught) return Number(aught[1]) > 0 ? `${Number(aught[1])}/0` : undefined;
  const plain = /^\s*#?\s*(\d{1,2})\s*$/.exec(text);
  return plain && Number(plain[1]) > 0 ? String(Number(plain[1])) : undefined;
}

/** Where a size stands among all sizes, bigger hooks later. @example hookRank('1') < hookRank('1/0') //=> true */
export function hookRank(size: HookSize): number {
  const [number = 0, aught] = size.split('/').map(Number);
  return aught === undefined ? -number : number - 1 + 0.5;
}
