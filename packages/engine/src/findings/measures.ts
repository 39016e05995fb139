import table from '../../../../data/measures.json' with { type: 'json' };
import { Z95, normalShare } from '../numeric/index.ts';
import type { Compiled } from '../program/compile.ts';
import type { Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import { choose } from '../program/meanings.ts';
import { written } from '../program/edit.ts';
import { EndSums } from '../reading/ends.ts';
import { place } from '../reading/place.ts';
import type { Spreads } from '../reading/spread.ts';
import type { Finding } from '../reading/types.ts';
import { CODES } from './codes.ts';
import type { Facts } from './facts.ts';

/** Figures of a drink, or of a prep where there is no drink, that a reading may move; by how little nobody sees. */
const SEEN: Readonly<Record<string, number | undefined>> = table.seen;
/** Ranges are those of many draws within this share: an edge is no sharper. */
const SHARP = limit('unit-two-meanings', 'sharp');
/** An error of a dose that is none, %. @source common-practice */
const ERROR = limit('dose-below-scale', 'error');

const putsOf = ({ ctx, build }: Facts): readonly Put[] => [...[...ctx.preps.values()].flatMap((p) => p.puts), ...(build?.puts ?? [])];

/** What the tools of a bench cannot measure, and ratios that say neither weight nor volume. @source common-practice data/measures.json */
export function measures(facts: Facts): void {
  const { ctx } = facts;
  const puts = putsOf(facts);
  for (const p of puts) {
    dose(facts, p);
    jigger(facts, p);
    const { ratio, thing, amount } = p.measure;
    const input = ratio && !ratio.byWritten ? ctx.book.list.findIndex((i) => i.key === `ratio/${thing.words.toLowerCase()} ${ratio.a}:${ratio.b}`) : -1;
    if (ratio && input >= 0) {
      choose(ctx, { code: 'ratio-unclear', at: p.measure.path, input, sources: ['usda-sr28'], words: { ratio: `${ratio.a}:${ratio.b}`, thing: thing.words }, remedy: { key: 'say-weight', words: {}, splices: [{ from: ratio.span.to, to: ratio.span.to, literal: ' by weight' }] } });
    }
    if (amount?.otherCustom === true) {
      const text = ctx.document.text.slice(amount.number.from, amount.number.to), plain = written((amount.low + amount.high) / 2);
      ctx.margins.push({
        code: 'measure-vague', at: p.measure.path, unit: 'g', sources: ['none'], words: { thing: thing.words, number: text, degree: 'custom' },
        op: ({ s }, out, i) => { out[i] = Math.max(s[p.g]!, 1e-6); },
        remedy: { key: 'write-plain', words: { amount: plain }, splices: [{ from: amount.number.from, to: amount.number.to, literal: plain }] },
      });
    }
  }
}

/** A weighed dose against the step of the scale: of what sets, sours or salts. */
function dose({ ctx }: Facts, p: Put): void {
  const row = p.source.ingredient, { amount, share } = p.measure;
  if (!row || p.source.form === 'liquid' || !table.dose.categories.includes(row.category) || (row.cells['water_g']?.value ?? 0) > 50) return;
  const unit = share && !amount ? 'g' : amount?.unit;
  if (unit !== 'g' && unit !== 'mg' && unit !== 'grain') return;
  const step = ctx.assume('tool/scale step', p.measure.path, 'tool');
  const error = (s: Float64Array, x: Float64Array) => (s[p.g]! > 0 ? (100 * Z95 * table.dose.steps_sd * x[step]!) / s[p.g]! : 0);
  const solution = amount && /^(acid|mineral)$/.test(row.category) && p.measure.concentration === undefined && amount.unit === 'g';
  ctx.margins.push({
    code: 'dose-below-scale', at: p.measure.path, unit: '%', sources: ['common-practice'], words: { thing: p.measure.thing.words },
    live: { g: ({ s }, out, i) => { out[i] = s[p.g]!; }, error: ({ s, x }, out, i) => { out[i] = error(s, x); }, coarse: ({ s }, out, i) => { out[i] = (100 * Z95 * table.dose.steps_sd) / s[p.g]!; } },
    op: ({ s, x }, out, i) => { out[i] = error(s, x) - ERROR; },
    remedy: () => {
      if (!solution || !amount) return undefined;
      // as a solution of a tenth, ten times the weight
      const end = p.measure.thing.span.to;
      return { key: 'weigh-solution', words: { thing: p.measure.thing.words }, splices: [{ from: amount.number.from, to: amount.number.to, literal: written(((amount.low + amount.high) / 2) * 10) }, { from: end, to: end, literal: ' solution 10 %' }] };
    },
  });
}

/** A pour that stands between the lines of a jigger, or below its lowest. */
function jigger({ ctx }: Facts, p: Put): void {
  const { amount } = p.measure;
  if (!amount || amount.low !== amount.high || amount.factorLow !== undefined || amount.plus || amount.twin || amount.unit === null) return;
  const unit = ctx.tables.unit(amount.unit, amount.system ?? null);
  const inches = amount.unit === 'oz' || amount.unit === 'floz-uk';
  if (ctx.tables.bench?.tools.jigger === null) return;
  if (!unit || unit.of !== 'ml' || !(inches || amount.unit === 'ml' || amount.unit === 'cl')) return;
  const size = inches ? 1 : unit.factor, marks = marksOf(ctx, inches), top = marks.at(-1)!;
  const asked = amount.low * size;
  if (!(asked > 0) || asked * (inches ? unit.factor : 1) >= LARGEST_ML) return;
  const rest = asked % top, full = asked - rest;
  const near = [0, ...marks].reduce((best, mark) => (Math.abs(mark - rest) < Math.abs(best - rest) ? mark : best), 0) + full;
  const off = near / asked - 1;
  if (Math.abs(off) < NEAR_ENOUGH) return;
  const input = ctx.book.list.findIndex((i) => i.key === `pour/${p.occurrence}`);
  if (input < 0 || p.source.form !== 'liquid') return;
  const { number, unitSpan } = amount;
  const by = near > 0 && Math.abs(off) < ROUNDED ? 'line' : 'weight';
  choose(ctx, {
    code: 'jigger-too-coarse', at: p.measure.path, input, share: near / asked, sources: ['common-practice'], words: { thing: p.measure.thing.words, asked, near, unit: inches ? 'oz' : 'ml', ...(near === 0 ? { degree: 'low' } : {}) },
    live: { g: ({ s }, out, i) => { out[i] = s[p.g]!; } },
    remedy: (n) => (by === 'line' ? { key: 'pour-line', words: { near: `${written(near)} ${inches ? 'oz' : 'ml'}` }, splices: [{ from: number.from, to: number.to, literal: written(near / size) }] }
      : unitSpan && n['g'] !== undefined ? { key: 'weigh-it', words: { g: written(n['g']) }, splices: [{ from: number.from, to: unitSpan.to, literal: `${written(n['g'])} g` }] } : undefined),
  });
}
/** The lines of the maker's own jigger, else the usual ones; in mL, or in ounces. */
function marksOf({ tables }: Facts['ctx'], inches: boolean): readonly number[] {
  const own = tables.bench?.tools.jigger;
  if (!own) return inches ? table.jigger.oz : table.jigger.ml;
  const largest = Math.max(...own.sizes_mL), steps = own.step_mL ? Array.from({ length: Math.floor(largest / own.step_mL + 1e-9) }, (_, i) => (i + 1) * own.step_mL!) : [];
  const marks = [...new Set([...own.sizes_mL, ...steps])].sort((a, b) => a - b);
  return inches ? marks.map((mL) => mL / tables.unit('oz', 'us')!.factor) : marks;
}

/** A jigger serves up to here; more goes by the jug. */
const LARGEST_ML = limit('jigger-too-coarse', 'largest');
/** Nearer to a line than a hand pours. */
const NEAR_ENOUGH = limit('jigger-too-coarse', 'near');
/** As far as a line may be moved to be poured as it stands. */
const ROUNDED = limit('jigger-too-coarse', 'rounded');

/**
 * Findings on readings that were not settled: raised where the other reading moves a figure beyond the range it has without that doubt, or
 * tips a stop. The margin counts half ranges, from the limit of its code on; for what has no amount, the grams that would be seen.
 * @source none - definition
 */
export function judgeChoices(c: Compiled, s: Spreads, at: (of: string, name: string) => number | undefined): Finding[] {
  const out: Finding[] = [];
  const { probes } = c.program, n = probes.length, inputs = c.program.inputs.length, sums = new EndSums(), ends = new Float64Array(2);
  for (const [index, choice] of c.ctx.choices.entries()) {
    const row = CODES[choice.code], input = c.program.inputs[choice.input];
    if (!row || !input) continue;
    const reach = choice.share === undefined ? 1 : pointShare(choice.share, input);
    let best = 0, moved = -1, by = 0;
    for (let k = 0; k < n; k++) {
      const p = probes[k]!;
      const stop = p.name.startsWith('margin:');
      if (stop ? !tips(c, p.of, p.name) : !(SEEN[p.name] !== undefined && (c.build ? p.of === 'drink' : p.of.startsWith('prep:')))) continue;
      const value = s.value[k]!, down = s.down[k * inputs + choice.input]!, up = s.up[k * inputs + choice.input]!;
      if (!Number.isFinite(value)) continue;
      const changes = choice.share === undefined ? [down, up] : [(choice.share < 1 ? down : up) * reach];
      for (const change of changes) {
        if (change === 0 || !Number.isFinite(change)) continue;
        let own: number;
        if (stop) {
          if (change > 0 === value > 0) continue;
          own = Math.abs(value);
        } else {
          sums.without(choice.share === undefined ? choice.input : -1, s, inputs, k, ends);
          own = Math.max(change < 0 ? -ends[0]! : ends[1]!, SEEN[p.name]!);
        }
        const ratio = Math.abs(change) / Math.max(own, 1e-12);
        if (ratio > best) { best = ratio; moved = k; by = change; }
      }
    }
    const most = limit(choice.code, 'moves');
    if (moved < 0 || best / (1 - SHARP) <= most) continue;
    const grams = row.unit === 'g' ? Math.abs(input.value) / best : 1;
    const value = (best - most) * grams, low = (best * (1 - SHARP) - most) * grams, high = (best / (1 - SHARP) - most) * grams;
    const words: Record<string, string | number> = { ...choice.words, figure: probes[moved]!.name, from: s.value[moved]!, to: s.value[moved]! + by, of: probes[moved]!.unit };
    for (const name of Object.keys(choice.live ?? {})) { const w = at(`choice:${index}`, `word:${name}`); if (w !== undefined) words[name] = s.value[w]!; }
    const numbers = Object.fromEntries(Object.entries(words).filter((e): e is [string, number] => typeof e[1] === 'number'));
    const remedy = typeof choice.remedy === 'function' ? choice.remedy(numbers) : choice.remedy;
    out.push({
      code: choice.code, severity: 'warn', where: place(c.ctx.document, choice.at), margin: { value, low, high, unit: row.unit },
      odds: normalShare((value / (value > 0 ? value - low : high - value)) * Z95), words, ...(remedy && remedy.splices.length > 0 ? { remedy } : {}), sources: choice.sources,
    });
  }
  return out;
}

/** How much of the way to its 95 % point a share of the input's value lies. */
function pointShare(share: number, { value, spread }: Compiled['program']['inputs'][number]): number {
  const half = spread.kind === 'lognormal' ? Math.exp(Z95 * Math.sqrt(Math.log1p(spread.cv ** 2))) - 1
    : spread.kind === 'normal' ? (Z95 * spread.sd) / value
      : spread.kind === 'range' ? (share < 1 ? value - spread.low : spread.high - value) / value : 0;
  return half > 0 ? Math.abs(share - 1) / half : 0;
}

/** Is a margin one that stops a drink? */
function tips(c: Compiled, of: string, name: string): boolean {
  const code = name.slice('margin:'.length), seed = c.ctx.margins[Number(of.slice('finding:'.length))];
  return CODES[code]?.most === 'stop' && CODES[code].presence !== true && seed !== undefined && seed.cap === undefined;
}
