import { loadReader, type Answer } from '../reader.ts';
import type { World } from '../world.ts';
import { optionsOf, show, type ReadFlags } from './read.ts';

const NAME = 'mix';
const HEAD = `${NAME}\n`;

/** `washline mix LINE…`: the lines of a drink as arguments, one each; places count the arguments. */
export async function mix(world: World, flags: ReadFlags, lines: readonly string[]): Promise<number> {
  const options = await optionsOf(world, flags);
  if ('problem' in options) return show(world, flags, [{ file: flags.bench ?? '', reading: null, problems: [options.problem] }]);
  const readText = await loadReader();
  const text = HEAD + lines.map((line) => line.replace(/[\r\n]+/g, ' ')).join('\n');
  return show(world, flags, [{ file: NAME, ...withoutHead(readText(text, options)) }]);
}

/** Places in the text with its name line become places in the lines alone. */
function withoutHead(answer: Answer): Answer {
  const { lineAt } = answer;
  const { reading, problems } = moved({ reading: answer.reading, problems: answer.problems }) as Answer;
  return { reading, problems, ...(lineAt ? { lineAt: (path) => { const line = lineAt(path); return line && { line: line.line - 1, text: line.text }; } } : {}) };
}

function moved(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(moved);
  if (value === null || typeof value !== 'object') return value;
  const out: Record<string, unknown> = {};
  for (const [key, item] of Object.entries(value)) {
    if (key === 'line' && typeof item === 'number') out[key] = Math.max(1, item - 1);
    else if ((key === 'splices' && Array.isArray(item))) out[key] = item.map((splice: { from: number; to: number }) => ({ ...splice, ...back(splice) }));
    else if (key === 'span' && item !== null && typeof item === 'object') out[key] = { ...item, ...back(item as { from: number; to: number }) };
    else out[key] = moved(item);
  }
  return out;
}

function back(span: { readonly from: number; readonly to: number }): { from: number; to: number } {
  return { from: Math.max(0, span.from - HEAD.length), to: Math.max(0, span.to - HEAD.length) };
}
