import type { BuildResult } from '../program/build.ts';
import type { Context, Put } from '../program/context.ts';

/** What goes into the drink, and the words of the prep that the build takes it from; null where the build names it itself. */
interface Reached { readonly put: Put; readonly within: string | null }

/**
 * Everything that goes into the drink, through every prep it takes from, each once; without a build, everything that is put into any prep.
 * @source none - definition
 */
export function reached(ctx: Context, build: BuildResult | null): Reached[] {
  const out: Reached[] = [], seen = new Set<string>();
  const visit = (puts: readonly Put[], within: string | null): void => {
    for (const put of puts) {
      const prep = put.source.prep;
      if (!prep) out.push({ put, within });
      else if (!seen.has(prep.name)) { seen.add(prep.name); visit(prep.puts, within ?? put.measure.thing.words); }
    }
  };
  visit(build ? build.puts : [...ctx.preps.values()].flatMap((p) => p.puts), null);
  return out;
}
