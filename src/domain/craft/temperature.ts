/** Degrees Celsius, the unit of every temperature inside the program unless a name says otherwise. */
export type Celsius = number;

/** Absolute zero in degrees Celsius, exact (SI Brochure, 9th ed., §2.3.1). */
export const ABSOLUTE_ZERO: Celsius = -273.15;

/** Celsius from Fahrenheit, exact by definition; valid at any temperature. @example celsiusOf(212) //=> 100 */
export const celsiusOf = (fahrenheit: number): Celsius => (fahrenheit - 32) / 1.8;

/** Fahrenheit from Celsius, exact by definition. @example fahrenheitOf(200) //=> 392 */
export const fahrenheitOf = (celsius: Celsius): number => celsius * 1.8 + 32;

/** Kelvin from Celsius. @example kelvinOf(0) //=> 273.15 */
export const kelvinOf = (celsius: Celsius): number => celsius - ABSOLUTE_ZERO;

/** Celsius from kelvin. @example celsiusOfKelvin(373.15) //=> 100 */
export const celsiusOfKelvin = (kelvin: number): Celsius => kelvin + ABSOLUTE_ZERO;

/** The temperature in what someone typed, °C; a number without a unit is in the unit given. Undefined when there is none.
 *  @example temperatureIn('55', 'F') //=> 12.77… */
export function temperatureIn(text: string, usual: 'F' | 'C'): Celsius | undefined {
  const match = /(-?\d{1,3}(?:[.,]\d)?)\s*°?\s*(f|c|fahrenheit|celsius)?\b/i.exec(text);
  if (!match?.[1]) return undefined;
  const degrees = Number(match[1].replace(',', '.'));
  const unit = match[2]?.[0]?.toUpperCase() ?? usual;
  return unit === 'F' ? celsiusOf(degrees) : degrees;
}
