import { language } from '../language.ts';
import { readInput } from '../input.ts';
import { printJson, printProblems, type Problem } from '../problems.ts';
import { loadReader, type Answer, type ReadOptions } from '../reader.ts';
import { EXIT, type World } from '../world.ts';

export interface ReadFlags { readonly json: boolean; readonly color: boolean; readonly variant?: string; readonly why?: readonly string[]; readonly bench?: string; readonly later: boolean; readonly inHand: boolean }

/** `washline read SPEC…` */
export async function read(world: World, flags: ReadFlags, files: readonly string[]): Promise<number> {
  const options = await optionsOf(world, flags);
  if ('problem' in options) return show(world, flags, [{ file: options.problem.where?.file ?? '', reading: null, problems: [options.problem] }]);
  const answers: FileAnswer[] = [];
  for (const file of files) {
    const input = await readInput(world, file);
    if ('problem' in input) answers.push({ file, reading: null, problems: [input.problem] });
    else answers.push({ file, ...(await loadReader(input.text))(input.text, { ...options, file }) });
  }
  return show(world, flags, answers);
}

export interface FileAnswer extends Answer { readonly file: string }

export async function optionsOf(world: World, flags: Omit<ReadFlags, 'later' | 'inHand'> & { readonly later?: boolean; readonly inHand?: boolean }): Promise<ReadOptions | { readonly problem: Problem }> {
  const { variant, why } = flags;
  const options = { ...(flags.inHand ? { later: 'hand' as const } : flags.later ? { later: 'alone' as const } : {}), ...(variant === undefined ? {} : { variant }), ...(why === undefined ? {} : { why }) };
  // never a file that merely lies beside the spec: what a reading hangs on was asked for
  const file = flags.bench ?? (world.env['WASHLINE_BENCH'] || undefined);
  if (file === undefined) return options;
  const bench = await readInput(world, file);
  return 'problem' in bench ? bench : { ...options, bench: bench.text, benchFile: file };
}

/** Prints what was read, one answer as an object, several as a list in order, and gives the exit status. */
export async function show(world: World, flags: ReadFlags, answers: readonly FileAnswer[]): Promise<number> {
  if (flags.json) {
    const [only] = answers;
    printJson(world, answers.length === 1 && only ? alone(only) : answers.map((answer) => (answer.problems.length === 0 ? answer.reading : { file: answer.file, problems: answer.problems, ...(answer.reading === null ? {} : { reading: answer.reading }) })));
  } else {
    const [{ printReading }, { speak }] = await Promise.all([import('../print/reading.ts'), import('@washline/drawing')]);
    await speak(language());
    for (const answer of answers) {
      if (answer.reading) printReading(world, answer.reading, flags.color, answer.lineAt);
      printProblems(world, answer.problems);
    }
  }
  if (answers.some((answer) => answer.problems.length > 0 || answer.reading === null)) return EXIT.asked;
  return answers.some((answer) => answer.reading?.findings.some((finding) => finding.severity === 'stop')) ? EXIT.stopped : EXIT.done;
}

function alone({ reading, problems }: Answer): unknown {
  if (problems.length === 0) return reading;
  return reading === null ? { problems } : { problems, reading };
}
