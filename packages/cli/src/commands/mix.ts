import type { Problem } from '../problems.ts';
import { loadReader, type Answer } from '../reader.ts';
import type { World } from '../world.ts';
import { optionsOf, show, type ReadFlags } from './read.ts';

const NAME = 'mix';
const HEAD = `${NAME}\n`;

/** `washline mix LINE…`: the lines of a drink as arguments, one each; places count the arguments. */
export async function mix(world: World, flags: ReadFlags, lines: readonly string[]): Promise<number> {
  const options = await optionsOf(world, flags);
  if ('problem' in options) return show(world, flags, [{ file: options.problem.where?.file ?? '', reading: null, problems: [options.problem] }]);
  const readText = await loadReader();
  const text = HEAD + lines.map((line) => line.replace(/[\r\n]+/g, ' ')).join('\n');
  const asked = options.why === undefined ? options : { ...options, why: [options.why].flat().map((name) => counted(name, 1)) };
  return show(world, flags, [{ file: NAME, ...withoutHead(readText(text, asked), options.benchFile) }]);
}

/** A finding's code with the line it stands at (`measure-vague@2`), so many lines further down. */
const counted = (words: string, by: number): string => words.replaceAll(/\b([a-z]+(?:-[a-z]+)*)@(\d+)/g, (_, code: string, line: string) => `${code}@${Math.max(1, Number(line) + by)}`);

/** Places in the text with its name line become places in the lines alone. */
function withoutHead(answer: Answer, benchFile: string | undefined): Answer {
  const { lineAt } = answer;
  const ofBench = (problem: Problem): boolean => benchFile !== undefined && problem.where?.file === benchFile;
  const reading = moved(answer.reading) as Answer['reading'];
  const problems = answer.problems.map((problem) => (ofBench(problem) ? problem : (moved(problem) as Problem)));
  return { reading, problems, ...(lineAt ? { lineAt: (path) => { const line = lineAt(path); return line && { line: line.line - 1, text: line.text }; } } : {}) };
}

function moved(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(moved);
  if (value === null || typeof value !== 'object') return value;
  const out: Record<string, unknown> = {};
  for (const [key, item] of Object.entries(value)) {
    if (typeof item === 'string') out[key] = /^(name|figure|message)$/.test(key) ? counted(item, -1) : item;
    else if (key === 'line' && typeof item === 'number') out[key] = Math.max(1, item - 1);
    else if ((key === 'splices' && Array.isArray(item))) out[key] = item.map((splice: { from: number; to: number }) => ({ ...splice, ...back(splice) }));
    else if (key === 'span' && item !== null && typeof item === 'object') out[key] = { ...item, ...back(item as { from: number; to: number }) };
    else out[key] = moved(item);
  }
  return out;
}

function back(span: { readonly from: number; readonly to: number }): { from: number; to: number } {
  return { from: Math.max(0, span.from - HEAD.length), to: Math.max(0, span.to - HEAD.length) };
}
