import { directions } from './directions.mjs';
import { docs } from './docs.mjs';
import { domains } from './domains.mjs';
import { findings } from './findings.mjs';
import { leftovers } from './leftovers.mjs';
import { page } from './page.mjs';
import { sabotageReasons } from './sabotage.mjs';
import { sourceLines } from './sources.mjs';
import { surface } from './surface.mjs';
import { words } from './words.mjs';

/** Every tidy check of the house, in the order printed. Each gives its name and what is wrong. */
const CHECKS = [directions, domains, sourceLines, words, findings, surface, leftovers, page, docs, sabotageReasons];

/** Runs them all; one that breaks is a failed check, not the end of the run. */
export async function tidy() {
  const found = [];
  for (const check of CHECKS) {
    try { found.push(...[await check()].flat()); } catch (error) { found.push({ name: check.name, problems: [`the check itself broke: ${error.message}`] }); }
  }
  return found;
}
