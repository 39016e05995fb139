import { expect, test } from 'vitest';
import { minorDigits, smallestCoins } from './index.ts';

// ISO 4217, table A.1, column "minor unit"
test.each([['EUR', 2], ['USD', 2], ['GBP', 2], ['AUD', 2], ['CHF', 2], ['JPY', 0], ['KRW', 0], ['ISK', 0], ['KWD', 3], ['BHD', 3], ['TND', 3], ['CLF', 4]] as const)('%s has %i digits behind the point', (code, digits) => {
  expect(minorDigits(code)).toBe(digits);
});
test('words that are no currency have none', () => {
  expect(minorDigits('XYZ')).toBeUndefined();
  expect(minorDigits('')).toBeUndefined();
  expect(minorDigits('eur')).toBeUndefined();
});

// by definition: the cent is a hundredth of the euro, the fils a thousandth of the Kuwaiti dinar
test('a price is a whole number of the smallest coin', () => {
  expect(smallestCoins('24', '50', 2)).toBe(2450);
  expect(smallestCoins('24', '5', 2)).toBe(2450);
  expect(smallestCoins('24', '', 2)).toBe(2400);
  expect(smallestCoins('0', '05', 2)).toBe(5);
  expect(smallestCoins('1', '234', 3)).toBe(1234);
  expect(smallestCoins('1200', '', 0)).toBe(1200);
});
test('a price finer than the smallest coin is none', () => {
  expect(smallestCoins('24', '505', 2)).toBeNull();
  expect(smallestCoins('1200', '5', 0)).toBeNull();
});
