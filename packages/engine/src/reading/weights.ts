import type { Compiled } from '../program/compile.ts';

/**
 * What is put in by each line, in g: for whoever weighs instead of pouring. Lines of what nothing is known of have none. `s`: a run, else the nominal one.
 * @returns by the path of the line, joined with `/`
 * @source none - mass balance
 */
export function weightsOf({ ctx, build, program }: Pick<Compiled, 'ctx' | 'build' | 'program'>, s: Float64Array = program.usual.s): Readonly<Record<string, number>> {
  const out: Record<string, number> = {};
  for (const { measure, source, g } of [...[...ctx.preps.values()].flatMap((prep) => prep.puts), ...(build?.puts ?? [])]) {
    const key = measure.path.join('/'), grams = s[g]!;
    if (source.known && source.form !== 'ice' && grams > 0 && out[key] === undefined) out[key] = grams;
  }
  return out;
}
