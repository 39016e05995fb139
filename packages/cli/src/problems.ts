import { plain } from './plain.ts';
import { say } from './sentences.ts';
import { EXIT, type World } from './world.ts';

/** A problem as the contract prints it: a sentence and its place. */
export interface Problem { readonly code?: string; readonly message: string; readonly where?: { readonly file?: string; readonly line?: number; readonly column?: number } }

/** `file:line:column: sentence` on one line. */
function problemLine(problem: Problem): string {
  const { file, line, column } = problem.where ?? {};
  const place = [file, line, column].filter((part) => part !== undefined).join(':');
  return plain(place === '' ? problem.message : `${place}: ${problem.message}`);
}

const SHOWN = 20;

/** Problems on stderr, one line each; beyond twenty, how many more. */
export function printProblems(world: World, problems: readonly Problem[]): void {
  for (const problem of problems.slice(0, SHOWN)) world.stderr.write(`${problemLine(problem)}\n`);
  if (problems.length > SHOWN) world.stderr.write(`${say('problems.more', { count: problems.length - SHOWN })}\n`);
}

export function printJson(world: World, value: unknown): void {
  world.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
}

/** Asked for wrongly: the problem on stderr, or with `json` as the one value on stdout. Gives the exit status. */
export function refuse(world: World, json: boolean, problem: Problem): number {
  if (json) printJson(world, { problems: [problem] });
  else printProblems(world, [problem]);
  return EXIT.asked;
}
