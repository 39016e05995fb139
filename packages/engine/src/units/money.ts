import table from '../../../../data/currencies.json' with { type: 'json' };

const DIGITS = new Map(Object.entries(table.digits).flatMap(([digits, codes]) => codes.split(' ').map((code) => [code, Number(digits)] as const)));

/**
 * How many digits stand behind the point in a currency: the euro has 2, the yen 0, the Kuwaiti dinar 3.
 * @param currency three capitals as ISO 4217 has them
 * @returns 0, 2, 3 or 4; undefined for a code that is no currency in use
 * @source iso-4217 minor units
 */
export function minorDigits(currency: string): number | undefined { return DIGITS.get(currency); }

/**
 * A written price in the smallest coin, an integer: "24.5" in euros is 2450, in yen no price at all.
 * @param whole digits before the point, fraction those behind it, '' where none
 * @param digits behind the point in this currency
 * @returns null where the price is finer than the smallest coin
 * @source iso-4217 minor units
 */
export function smallestCoins(whole: string, fraction: string, digits: number): number | null {
  return fraction.length > digits ? null : Number(whole) * 10 ** digits + Number(fraction.padEnd(digits, '0') || 0);
}
