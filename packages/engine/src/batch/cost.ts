/**
 * Pour cost: what the ingredients cost of what is paid.
 * @param cost,price in one currency, price without tax and above 0
 * @returns %
 * @source none - definition
 */
export function pourCost(cost: number, price: number): number {
  return (100 * cost) / price;
}

/**
 * Price that makes a cost the target share of it.
 * @param cost of the ingredients
 * @param target pour cost as a share, above 0
 * @param tax as a share of the net price
 * @returns price, tax included
 * @source none - definition
 */
export function priceFor(cost: number, target: number, tax = 0): number {
  return (cost / target) * (1 + tax);
}

/**
 * Cost of an amount of juice.
 * @param amount_mL juice used
 * @param perFruit price of a fruit
 * @param perFruit_mL juice it gives
 * @param waste share of the juice that is lost, 0..1
 * @returns in the currency of the price
 * @source none - definition
 */
export function juiceCost(amount_mL: number, perFruit: number, perFruit_mL: number, waste: number): number {
  return ((amount_mL / perFruit_mL) * perFruit) / (1 - waste);
}

/**
 * Stock to hold so that it lasts until the next delivery.
 * @param perDay_mL used a day
 * @param lead_d,review_d days until delivery and between orders
 * @param safety share on top
 * @returns mL
 * @source common-practice
 */
export function parLevel(perDay_mL: number, lead_d: number, review_d: number, safety: number): number {
  return perDay_mL * (lead_d + review_d) * (1 + safety);
}

/**
 * How much more was used than should have been?
 * @param actual,theoretical in one unit
 * @returns % of the theoretical
 * @source none - definition
 */
export function usageVariance(actual: number, theoretical: number): number {
  return (100 * (actual - theoretical)) / theoretical;
}
