import { ACIDS } from '../acids/index.ts';
import { plantBand, plantCriticalPH, plantMixPH, plantVerdict, type PlantMilk } from '../clarity/index.ts';
import type { Ingredient } from '../larder/types.ts';
import type { Context, Put } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import type { ProbeOp, Workspace } from '../program/program.ts';
import { caseinShare, gather, isDairy, nothing } from './dairy.ts';
import type { Facts } from './facts.ts';

const KINDS: readonly PlantMilk[] = ['soy', 'coconut', 'almond', 'oat'];
/** From here on a drink is hot, °C; more spirit than this in a plant drink, % vol, and no print says what it does; above this pH nothing sour is in it. @source common-practice */
const HOT = limit('curdles-in-glass', 'hot'), SPIRIT = limit('curdles-in-glass', 'spirit'), SOUR = limit('curdles-in-glass', 'sour');

/** What is known of a plant drink: its kind, its own pH, g of protein and mmol of calcium in a gram. Nothing where a cell is empty: no other drink's value stands for it. */
interface Known { readonly kind: PlantMilk; readonly own: number; readonly protein: number; readonly calcium: number }
export const isPlant = (p: Put): boolean => /^plant-/.test(p.source.ingredient?.category ?? '');
export const kindOf = (row: Ingredient): PlantMilk | undefined => KINDS.find((k) => row.id.startsWith(k));

function knownOf(row: Ingredient): Known | null {
  const { ph_low: low, ph_high: high, other_protein_g: protein, calcium_mmol_kg: calcium } = row.cells, kind = kindOf(row);
  // salts that a stabilised drink holds are in no table
  if (!kind || !low || !high || !protein || !calcium || row.text['stabilised'] === 'yes') return null;
  return { kind, own: (low.value + high.value) / 2, protein: protein.value / 100, calcium: calcium.value / 1e6 };
}

/** Plant drinks with acid: in the glass each by the pH of the mix and its own limit, in a wash whether soy curdles at all. @source soy-curdling; coconut-stability; soymilk-gel; oat-precipitation */
export function plant({ ctx, build }: Facts): void {
  if (build) glass(ctx, build.puts, build.temperature);
  for (const prep of ctx.preps.values()) if (/^(milk wash|clarify with milk)$/.test(prep.section.method)) washes(ctx, prep.puts);
}

type Which = (w: Workspace) => number;

/** The pH of the mix, its strength in % vol, and the pH it would have if plant drinks took up nothing of the acid. */
function mixOf(ctx: Context, puts: readonly Put[]): { readonly pH: Which; readonly least: Which; readonly spirit: Which } {
  const plants = puts.filter(isPlant), dairy = puts.filter(isDairy), rest = puts.filter((p) => !isPlant(p) && !isDairy(p)), o = nothing(), acids = new Float64Array(ACIDS);
  const all = plants.map((p) => knownOf(p.source.ingredient!)), times = ctx.spread('model/plant buffer', 'model/plant buffer', 1, 'share', 'model', { at: plants[0]!.measure.path });
  const solve = ({ s }: Workspace, factor: number): number => {
    gather(o, s, dairy, rest);
    acids.set(o.acids);
    let mL = o.serum + o.other, protein = 0, calcium = 0, sum = 0, weight = 0;
    plants.forEach((p, i) => {
      const g = s[p.g]!, known = all[i];
      mL += g * s[p.source.mL]!;
      protein += g * (known?.protein ?? 0); calcium += 1000 * g * (known?.calcium ?? 0);
      sum += g * (known?.own ?? NaN); weight += g;
    });
    const own = weight > 0 && Number.isFinite(sum) ? sum / weight : 7;
    return mL > 0 ? plantMixPH(protein, calcium, own, factor, { acids, strong: o.strong, water_L: mL / 1000, serum_L: o.serum / 1000, strength: o.serum > 0 ? caseinShare(o) : 0 }) : NaN;
  };
  return {
    pH: (w) => (all.every((k) => k !== null) ? solve(w, w.x[times]!) : NaN), least: (w) => solve(w, 0),
    spirit: ({ s }) => { gather(o, s, dairy, rest); let mL = o.serum + o.other; for (const p of plants) mL += s[p.g]! * s[p.source.mL]!; return mL > 0 ? (100 * o.ethanol) / mL : 0; },
  };
}

/** The pH below which one comes apart, as an input with the band in which it is not certain. */
function breaksAt(ctx: Context, p: Put, kind: PlantMilk): number {
  const { low, high } = plantBand(kind);
  return ctx.about(`model/plant curdle/${kind}`, plantCriticalPH(kind), low, high, 'pH', 'model', { grade: kind === 'almond' ? 'memory' : 'trade', source: kind === 'coconut' ? 'coconut-stability' : kind === 'soy' ? 'soy-curdling' : 'common-practice', row: `physics/curdle.json plant.${kind}`, at: p.measure.path });
}

function glass(ctx: Context, puts: readonly Put[], celsius: number): void {
  const plants = puts.filter(isPlant);
  if (plants.length === 0) return;
  const mix = mixOf(ctx, puts), code = 'curdles-in-glass', sources = ['soy-curdling', 'coconut-stability', 'common-practice'];
  // the mix is one, whichever line brings it: it is told of each drink once
  const each = plants.filter((p, i) => plants.findIndex((q) => q.source.ingredient!.id === p.source.ingredient!.id) === i);
  for (const p of each) {
    const known = knownOf(p.source.ingredient!), at = p.measure.path, thing = p.measure.thing.words;
    if (!known || plants.some((q) => !knownOf(q.source.ingredient!))) {
      ctx.margins.push({
        code, at, unit: 'pH', sources: ['common-practice'], words: { thing, degree: 'unknown' }, cap: 'warn', live: { pH: told(mix.least) },
        op: (w, out, i) => { out[i] = SOUR - mix.least(w); },
      });
      continue;
    }
    // what only goes hazy curdles in no drink
    if (plantVerdict(known.kind) === 'haze') continue;
    const { kind } = known, input = breaksAt(ctx, p, kind), verdict = plantVerdict(kind), warmer = plantCriticalPH(kind, HOT) - plantCriticalPH(kind);
    const breaks: Which = ({ s, x }) => x[input]! + (s[celsius]! >= HOT ? warmer : 0), live = { pH: told(mix.pH), breaks: told(breaks) };
    ctx.margins.push({
      code, at, unit: 'pH', sources, words: { thing, degree: verdict }, live, ...(verdict === 'curd' ? {} : { cap: 'warn' as const }),
      op: (w, out, i) => { out[i] = breaks(w) - mix.pH(w); },
    }, {
      code, at, unit: 'pH', sources, words: { thing, degree: 'spirit' }, live, cap: 'note', under: code, op: (w, out, i) => { out[i] = mix.spirit(w) > SPIRIT ? mix.pH(w) - breaks(w) : -1; },
    });
  }
}

/** Soy is the one that curdles like milk: a wash with too little acid for it stays a milk. */
function washes(ctx: Context, puts: readonly Put[]): void {
  const plants = puts.filter(isPlant), p = plants[0], known = p && knownOf(p.source.ingredient!);
  if (!p || !known || known.kind !== 'soy' || plants.length > 1) return;
  const mix = mixOf(ctx, puts), input = breaksAt(ctx, p, 'soy'), breaks: Which = ({ x }) => x[input]!;
  ctx.margins.push({
    code: 'wash-will-not-curdle', at: p.measure.path, unit: 'pH', sources: ['soy-curdling', 'common-practice'], words: { thing: p.measure.thing.words, degree: 'plant' }, live: { pH: told(mix.pH), breaks: told(breaks) },
    op: (w, out, i) => { out[i] = mix.pH(w) - breaks(w); },
  });
}

const told = (which: Which): ProbeOp => (w, out, i) => { out[i] = which(w); };
