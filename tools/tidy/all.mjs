import { directions } from './directions.mjs';

/** Every tidy check of the house, in the order printed. Each gives its name and what is wrong. */
const CHECKS = [directions];

export async function tidy() {
  const found = [];
  for (const check of CHECKS) found.push(...[await check()].flat());
  return found;
}
