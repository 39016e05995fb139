import type { Case, Wine, WineResult } from '@washline/engine';
import { readdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { basename, join } from 'node:path';
import { readInput } from '../input.ts';
import { printVerified } from '../print/verified.ts';
import { printJson, refuse } from '../problems.ts';
import { say } from '../sentences.ts';
import { EXIT, type World } from '../world.ts';
import { ROOT } from '../root.ts';

export interface VerifyFlags { readonly json: boolean; readonly color: boolean; readonly only?: readonly string[] }

/** The most a file of cases may hold, in bytes. */
const CASES_LIMIT = 16 * 1024 * 1024;

/** As few wines as this say nothing about a share of 95 in 100. */
const ENOUGH_WINES = 100;

/** `washline verify [CASES.json…] [WINES.csv…] [--only GROUP…]`: published cases, or measured wines, through the engine; without a file, the project's own cases. */
export async function verify(world: World, flags: VerifyFlags, files: readonly string[]): Promise<number> {
  const cases: Case[] = [], wines: Wine[] = [];
  for (const file of files.length > 0 ? files : await ownCases()) {
    const input = await readInput(world, file, CASES_LIMIT);
    if ('problem' in input) return refuse(world, flags.json, input.problem);
    if (/\.csv$/i.test(file)) {
      const { winesOf } = await import('@washline/engine');
      const read = winesOf(input.text, colourOf(file));
      if ('code' in read) return refuse(world, flags.json, { code: read.code, message: say(`verify.${read.code}`, { file, ...read }), where: { file, ...('line' in read ? { line: read.line } : {}) } });
      wines.push(...read);
      continue;
    }
    const found = casesIn(input.text);
    if (typeof found === 'string') return refuse(world, flags.json, { code: found, message: say(`verify.${found}`, { file }), where: { file } });
    cases.push(...found);
  }
  const { verify: run, verifyWines } = await import('@washline/engine');
  const result = run({ cases }, flags.only);
  const found = wines.length > 0 ? verifyWines(wines, (await import('@washline/tables')).tables.spread) : undefined;
  const unknown = (flags.only ?? []).filter((group) => !cases.some((item) => item.group === group));
  if (unknown.length > 0) return refuse(world, flags.json, { code: 'group-unknown', message: say('verify.group', { group: unknown.join(', ') }) });
  if (flags.json) printJson(world, found ? { ...result, wines: found } : result); else printVerified(world, result, cases, flags.color, found);
  return result.failed > 0 || (found && !(await holds(found))) ? EXIT.stopped : EXIT.done;
}

/** The colour a file of wines is named after, for one without a column that says it. */
function colourOf(file: string): 'red' | 'white' | undefined {
  const [red, white] = [/red/i.test(basename(file)), /white/i.test(basename(file))];
  return red === white ? undefined : red ? 'red' : 'white';
}

/** Whether the bands hold as many wines as they should, where there are enough to tell. */
async function holds({ groups }: WineResult): Promise<boolean> {
  const { WINE_SHARE: [least, most] } = await import('@washline/engine');
  return groups.every(({ cases, share }) => share === null || cases < ENOUGH_WINES || (share >= least && share <= most));
}

async function ownCases(): Promise<string[]> {
  const folder = fileURLToPath(new URL('cases', ROOT));
  return (await readdir(folder)).filter((name) => name.endsWith('.json')).sort().map((name) => join(folder, name));
}

/** The cases of a file, each an object with at least an id, a group and inputs; else the key of what is wrong. */
function casesIn(text: string): readonly Case[] | 'not-json' | 'not-cases' {
  let value: unknown;
  try { value = JSON.parse(text); } catch { return 'not-json'; }
  const cases = value !== null && typeof value === 'object' && 'cases' in value ? value.cases : null;
  return Array.isArray(cases) && cases.every(isCase) ? cases : 'not-cases';
}

function isCase(value: unknown): value is Case {
  return value !== null && typeof value === 'object' && 'id' in value && typeof value.id === 'string' && 'group' in value && typeof value.group === 'string' && 'inputs' in value && 'value' in value && 'kind' in value;
}
