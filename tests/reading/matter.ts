import { BLOCK, CONSTITUENTS, compile, slot, type Compiled, type Tables } from '@washline/engine';
import { parse } from '@washline/spec';

/** Matter put in less matter found again, by constituent in grams: what every step and prep must keep at zero. */
export function imbalance(text: string, tables: Tables, variant: string | null = null): { readonly off: Float64Array; readonly scale: number; readonly compiled: Compiled } {
  const compiled = compile(parse(text), tables, variant);
  const { program, ctx, build } = compiled;
  const w = program.workspace();
  program.run(program.nominal, new Float64Array(program.probes.length), new Uint8Array(program.probes.length).fill(1), w);
  const { s } = w;
  const off = new Float64Array(CONSTITUENTS.length + 1);
  let scale = 0;
  const count = (block: number, share: number) => {
    for (let i = 0; i < CONSTITUENTS.length; i++) off[i]! += share * s[block + i]!;
    off[CONSTITUENTS.length]! += share * s[block + slot.unknown_g]!;
  };
  const puts = [...[...ctx.preps.values()].flatMap((p) => p.puts), ...(build?.puts ?? [])];
  for (const p of puts) if (!p.source.prep && p.source.form !== 'ice') { count(p.source.block, s[p.g]!); scale += Math.abs(s[p.g]!); }
  for (const [extra, share] of ctx.extras) count(extra, share);
  for (const lost of ctx.losts) count(lost, -1);
  for (const prep of ctx.preps.values()) {
    for (const [kind, block] of prep.content.all) {
      const left = kind === 'liquid' ? 1 - (s[prep.yield_g]! > 0 ? s[prep.used_g]! / s[prep.yield_g]! : 0) : 1;
      count(block, -left);
    }
  }
  if (build) count(build.total, -1);
  void BLOCK;
  return { off, scale, compiled };
}
