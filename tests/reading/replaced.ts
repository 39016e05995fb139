import { assumedOf, compile, partAt, spreads, type Assumed, type Compiled, type Spreads } from '@washline/engine';
import { parse, splice } from '@washline/spec';
import { tables } from '@washline/tables';

/** Nominal values shift by rounding when an assumption is written out, and widths with them. */
const SHIFT = 1.03;

interface Read { readonly compiled: Compiled; readonly s: Spreads; readonly assumed: readonly Assumed[]; readonly problems: readonly string[] }
const read = (text: string): Read => {
  const document = parse(text), compiled = compile(document, tables), { program } = compiled;
  return { compiled, s: spreads(program, undefined, false), assumed: assumedOf(compiled), problems: document.problems.map((p) => p.code) };
};

/** Figures of the drink, its preps and stages by name, with the place of their probe. */
const figuresOf = (r: Read): ReadonlyMap<string, number> => new Map(r.compiled.program.probes.map((p, k) => [`${p.of} ${p.name}`, k] as const)
  .filter(([name, k]) => !/^finding|word:|tint_|turbid|stands|balance|takes|over_mL|ice_(from|to)|margin/.test(name) && Number.isFinite(r.s.value[k]!)));

/**
 * Puts the words of each assumption of a spec in their place, one at a time, and says what is wrong then: still assumed, something else assumed instead, a
 * problem, a figure that is wider, or none narrower of those it moved.
 */
export function replacedOneByOne(text: string): { readonly assumed: readonly Assumed[]; readonly faults: readonly string[] } {
  const before = read(text), figures = figuresOf(before), faults: string[] = [];
  for (const a of before.assumed) {
    const fault = replacedOne(text, before, figures, a);
    if (fault !== null) faults.push(`${text.split('\n')[0]}: ${a.key} (${a.say}): ${fault}`);
  }
  return { assumed: before.assumed, faults };
}

function replacedOne(text: string, before: Read, figures: ReadonlyMap<string, number>, a: Assumed): string | null {
  if (a.say === '' || a.splices.length === 0) return 'no words';
  const written = splice(text, a.splices), after = read(written);
  const lines = written.split('\n').filter((line) => !text.split('\n').includes(line)).join(' | ');
  const problem = after.problems.find((code) => !before.problems.includes(code));
  if (problem !== undefined) return `${problem}: ${lines}`;
  if (after.assumed.some((b) => b.key === a.key)) return `still assumed: ${lines}`;
  // a name that is written out takes what hangs on the name with it
  const first = (key: string) => key.split('/')[0], gone = before.assumed.filter((b) => !after.assumed.some((c) => c.key === b.key)).map((b) => first(b.key));
  const fresh = after.assumed.filter((b) => !before.assumed.some((c) => c.key === b.key) && !(a.key.startsWith('larder/word/') || gone.includes(first(b.key)) || (b.key === 'tool/scale step' && / g$/.test(a.say))));
  if (fresh.length > 0) return `assumes ${fresh.map((b) => b.key).join(', ')}: ${lines}`;
  // another thing, or one that nothing was known of: its figures are others
  if (/^(larder\/word|measure\/vague)/.test(a.key)) return null;
  const i = before.compiled.program.inputs.findIndex((input) => (input.assumed?.key ?? input.key) === a.key), n = before.compiled.program.inputs.length, later = figuresOf(after);
  let moved = 0, narrower = 0;
  for (const [name, k] of figures) {
    const q = later.get(name);
    if (q === undefined) continue;
    const width = before.s.high[k]! - before.s.low[k]!, now = after.s.high[q]! - after.s.low[q]!;
    if (now > SHIFT * width + 1e-9) return `${name} wider, ${width.toPrecision(4)} to ${now.toPrecision(4)}: ${lines}`;
    if (i < 0 || !(before.s.variance[k]! > 0) || partAt(before.s, k * n + i) < 1e-4 * before.s.variance[k]!) continue;
    moved++;
    if (after.s.variance[q]! < before.s.variance[k]!) narrower++;
  }
  return moved > 0 && narrower === 0 ? `none of ${moved} narrower: ${lines}` : null;
}
