import { language } from '../language.ts';
import { plain } from '../plain.ts';
import { readInput } from '../input.ts';
import { number } from '../print/numbers.ts';
import { printJson, refuse } from '../problems.ts';
import { say } from '../sentences.ts';
import { EXIT, type World } from '../world.ts';

export interface LinesFlags { readonly json: boolean; readonly color: boolean }

/** `washline lines [FILE]`: what each line was understood as. */
export async function lines(world: World, flags: LinesFlags, file = '-'): Promise<number> {
  const input = await readInput(world, file);
  if ('problem' in input) return refuse(world, flags.json, input.problem);
  const { lines: readLines, sayProblem, loadLanguage } = await import('@washline/spec');
  await loadLanguage(language());
  const rows = readLines(input.text).map((row) => {
    if (row.problem === undefined) return row;
    const { message } = sayProblem({ ...row.problem, path: null, line: 1, span: { from: 0, to: 0 } }, undefined, language());
    return { ...row, problem: { ...row.problem, message } };
  });
  if (flags.json) { printJson(world, rows); return EXIT.done; }
  for (const row of rows) {
    const amount = row.low === null ? '' : `${number(row.low)}${row.high !== null && row.high !== row.low ? ` ${say('read.to')} ${number(row.high)}` : ''} ${row.unit ?? ''}`.trim();
    const what = [row.verb, amount, row.ingredient, row.strength === null ? null : `${number(row.strength)} %`, row.seconds === null ? null : `${number(row.seconds)} s`, row.celsius === null ? null : `${number(row.celsius)} °C`];
    world.stdout.write(`${say(`lines.${row.kind}`).padEnd(8)} ${plain(row.text)}\n`);
    const said = what.filter((part) => part !== null && part !== undefined && part !== '').join(' · ');
    if (said !== '') world.stdout.write(`         ${plain(said)}\n`);
    if (row.problem !== undefined) world.stdout.write(`         ${plain(row.problem.message ?? '')}\n`);
  }
  return EXIT.done;
}
