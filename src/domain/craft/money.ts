/** Money in integer minor units of the shop's currency: cents for US dollars. */
export type Cents = number;
/** An ISO 4217 code such as `USD`. */
export type Currency = string;

/** A rate in hundred-thousandths: 6.875 % is 6875. Whole numbers keep tax arithmetic exact. */
export type Rate = number;

/** The share of an amount, rounded half up to a whole minor unit.
 *  @example shareOf(1000, 6875) //=> 69 */
export const shareOf = (amount: Cents, rate: Rate): Cents => Math.floor((amount * rate + 50_000) / 100_000);

export const total = (amounts: readonly Cents[]): Cents => amounts.reduce((sum, amount) => sum + amount, 0);

/** An amount parted by weight, to the cent: the parts add up to it. Without any weight the parts are alike.
 *  @example parted(100, [1, 1, 1]) //=> [33, 34, 33] */
export function parted(amount: Cents, weights: readonly number[]): readonly Cents[] {
  const all = total(weights);
  const upTo = (count: number): Cents =>
    Math.round(amount * (all === 0 ? count / weights.length : total(weights.slice(0, count)) / all));
  return weights.map((_, at) => upTo(at + 1) - upTo(at));
}

/** How many digits a currency has after its point: two for most, none for yen, three for dinars (ISO 4217, as the runtime knows it).
 *  @example minorDigits('JPY') //=> 0 */
export const minorDigits = (currency: Currency): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;

/** An amount as a plain decimal, for tables and machines. @example decimal(-1205, 'USD') //=> '-12.05' */
export function decimal(cents: Cents, currency: Currency): string {
  const digits = minorDigits(currency);
  const text = String(Math.abs(cents)).padStart(digits + 1, '0');
  const sign = cents < 0 ? '-' : '';
  return digits === 0 ? `${sign}${text}` : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/** An amount as somebody types it, in minor units: `20`, `$20.50`, `1,200`, `-5`; undefined when it is none or has too many digits.
 *  @example centsIn('$20.5', 'USD') //=> 2050 */
export function centsIn(text: string, currency: Currency): Cents | undefined {
  const said = /^([-+\u2212])?\s*\p{Sc}?\s*(\d{1,3}(?:,\d{3})+|\d{1,7})(?:[.,](\d+))?\s*\p{Sc}?$/u.exec(text.trim());
  const digits = minorDigits(currency);
  const [, sign = '+', whole = '', part = ''] = said ?? [];
  if (said === null || part.length > digits) return undefined;
  const cents = Number(whole.replaceAll(',', '')) * 10 ** digits + Number(part.padEnd(digits, '0') || 0);
  return sign === '+' ? cents : -cents;
}
