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
