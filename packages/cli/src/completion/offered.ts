import type { Command, CommandContext, RouteMap } from '@stricli/core';

/** What may stand somewhere on the command line: a file by its ending, a folder, one of some words, or anything. */
export type What = { readonly kind: 'files'; readonly ending: string } | { readonly kind: 'folder' } | { readonly kind: 'words'; readonly words: readonly string[] } | { readonly kind: 'any' };
export interface OfferedFlag { readonly name: string; readonly brief: string; /** null for one without a value */ readonly takes: What | null }
export interface OfferedCommand { readonly name: string; readonly brief: string; readonly flags: readonly OfferedFlag[]; readonly takes: What }

const FIGURES = ['strength', 'volume', 'mass', 'ethanol', 'sugar', 'acidity', 'ph', 'density', 'brix', 'temperature', 'dilution', 'co2', 'energy', 'cost', 'washline_mm'];

/** What a placeholder of the commands stands for. */
function whatOf(placeholder: string, names: readonly string[]): What {
  switch (placeholder) {
    case 'SPEC': return { kind: 'files', ending: '.drink' };
    case 'CASES': return { kind: 'files', ending: '.json' };
    case 'FILE': return { kind: 'files', ending: '' };
    case 'PATH': return { kind: 'folder' };
    case 'FIGURE': return { kind: 'words', words: FIGURES };
    case 'LANGUAGE': return { kind: 'words', words: ['de', 'en'] };
    case 'SHELL': return { kind: 'words', words: ['bash', 'fish', 'zsh'] };
    case 'WORDS': return { kind: 'words', words: names };
    default: return { kind: 'any' };
  }
}
interface Parameter { readonly kind?: string; readonly brief: string; readonly placeholder?: string; readonly withNegated?: boolean; readonly default?: unknown; readonly hidden?: boolean }
interface Parameters { readonly flags?: Readonly<Record<string, Parameter>>; readonly positional?: { readonly kind: 'array' | 'tuple'; readonly parameter?: Parameter; readonly parameters?: readonly Parameter[] } }

/** Commands and flags as they stand in the application itself, so that no list has to be kept beside it. */
export function offered<C extends CommandContext>(root: RouteMap<C>, names: readonly string[]): readonly OfferedCommand[] {
  return root.getAllEntries().filter((entry) => !entry.hidden).map(({ name, target }) => {
    const { flags = {}, positional } = (target as Command<C> & { readonly parameters: Parameters }).parameters as unknown as Parameters;
    const first = positional?.kind === 'array' ? positional.parameter : positional?.parameters?.[0];
    return { name: name.original, brief: target.brief, takes: first === undefined ? { kind: 'any' } : whatOf(first.placeholder ?? '', names), flags: [...Object.entries(flags).filter(([, flag]) => flag.hidden !== true).map(([flag, parameter]) => flagOf(flag, parameter, names)), HELP] };
  });
}
const HELP: OfferedFlag = { name: 'help', brief: '', takes: null };

function flagOf(flag: string, parameter: Parameter, names: readonly string[]): OfferedFlag {
  const dashed = flag.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  if (parameter.kind !== 'boolean') return { name: dashed, brief: parameter.brief, takes: whatOf(parameter.placeholder ?? '', names) };
  // what is on by itself is only ever turned off
  return { name: parameter.default === true && parameter.withNegated !== false ? `no-${dashed}` : dashed, brief: parameter.brief, takes: null };
}
