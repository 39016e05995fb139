import type { Case } from '@washline/engine';
import { readdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { readInput } from '../input.ts';
import { printVerified } from '../print/verified.ts';
import { printJson, refuse } from '../problems.ts';
import { say } from '../sentences.ts';
import { EXIT, type World } from '../world.ts';
import { ROOT } from '../root.ts';

export interface VerifyFlags { readonly json: boolean; readonly color: boolean; readonly only?: readonly string[] }

/** The most a file of cases may hold, in bytes. */
const CASES_LIMIT = 16 * 1024 * 1024;

/** `washline verify [CASES.json…] [--only GROUP…]`: published cases through the engine; without a file, the project's own. */
export async function verify(world: World, flags: VerifyFlags, files: readonly string[]): Promise<number> {
  const cases: Case[] = [];
  for (const file of files.length > 0 ? files : await ownCases()) {
    const input = await readInput(world, file, CASES_LIMIT);
    if ('problem' in input) return refuse(world, flags.json, input.problem);
    const found = casesIn(input.text);
    if (typeof found === 'string') return refuse(world, flags.json, { code: found, message: say(`verify.${found}`, { file }), where: { file } });
    cases.push(...found);
  }
  const { verify: run } = await import('@washline/engine');
  const result = run({ cases }, flags.only);
  const unknown = (flags.only ?? []).filter((group) => !cases.some((item) => item.group === group));
  if (unknown.length > 0) return refuse(world, flags.json, { code: 'group-unknown', message: say('verify.group', { group: unknown.join(', ') }) });
  if (flags.json) printJson(world, result); else printVerified(world, result, cases, flags.color);
  return result.failed > 0 ? EXIT.stopped : EXIT.done;
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
