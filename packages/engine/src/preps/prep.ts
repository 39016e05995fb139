import type { Action, Line, Measure, Section, Step } from '../document/types.ts';
import { enthalpy, volumeAt20 } from '../liquids/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { steeping } from '../larder/index.ts';
import { wholeMass } from '../matter/block.ts';
import type { Context, PrepBuilt, Put, StageBuilt, Vat } from '../program/context.ts';
import { placeTemperature } from '../program/temperature.ts';
import { Occurrences, add, put, rest, setTemperature, settle, solveShares, stage, textOf, vat } from '../program/vat.ts';
import { carbonate, chargeNitrous } from './gas.ts';
import { boilOff, extract, reduceTo } from './move.ts';
import { settingOf } from './setting.ts';
import { strain } from './strain.ts';
import steps from '../../../../data/steps.json' with { type: 'json' };

export interface StepRow { readonly does: string; readonly attention: string; readonly vessel?: string; readonly place?: string }
/** What a verb does in the run; a verb without a row changes nothing of the matter. @source none - definition */
export function stepRow(verb: string): StepRow {
  return (steps as unknown as Record<string, StepRow>)[verb] ?? { does: 'mix', attention: 'active' };
}

const FOAMS = new Set(['siphon foam', 'foam']);
const WASHES = new Set(['fat wash']);

/** Verbs whose amount is of what is there already. */
const NO_MATTER = new Set(['return-over-the-curd', 'discard', 'weigh', 'measure', 'taste']);

/** All measures of a section in order, with those a line carries along and those a step brings. @source none - definition */
export function measuresOf(lines: readonly Line[]): Measure[] {
  const out: Measure[] = [];
  const take = (m: Measure) => { out.push(m); if (m.carrier?.amount) out.push(m.carrier); };
  for (const a of actionsOf(lines)) {
    if (a.kind === 'measure') take(a);
    else if (a.kind === 'fill' && a.measure) take(a.measure);
    else if (a.kind === 'step' && a.measure && !NO_MATTER.has(a.verb)) take(a.measure);
  }
  return out;
}
/** All actions of a section in order. @source none - definition */
export function actionsOf(lines: readonly Line[]): Action[] { return lines.flatMap((l) => l.actions); }

/** How long a step takes, as an input: written with its tool's spread, assumed where a table has its kind, else nothing. @source none - definition */
export function stepSeconds(ctx: Context, step: Step, needed: boolean): number {
  const written = step.seconds;
  const row = ({ stir: 'time/stir', shake: 'time/shake', boil: 'time/boil', soak: 'time/soak', freeze: 'time/freeze', infuse: 'time/steep' } as Record<string, string>)[step.verb] ?? 'time/rest';
  if (written) {
    const value = (written.low + written.high) / 2;
    if (written.low !== written.high) return ctx.book.add({ key: `time/${step.path.join('/')}`, value, unit: 's', spread: { kind: 'range', low: written.low, high: written.high, min: 0 }, grade: 'trade', source: 'written', role: 'time', at: step.path });
    return ctx.spread(`time/${step.path.join('/')}`, row, value, 's', 'time', { at: step.path, bounds: { min: 0 } });
  }
  const assumption = { stir: 'time/stir', shake: 'time/shake', 'whip-shake': 'time/whip shake', swizzle: 'time/swizzle', blend: 'time/blend', 'flash-blend': 'time/flash blend', throw: 'time/throw', roll: 'time/roll' }[step.verb];
  if (needed && assumption) return ctx.assume(assumption, step.path, 'time');
  return -1;
}

/** Seconds a step takes for the plan; what has no time written takes its usual one. @source common-practice */
function occupies(step: Step): number {
  return step.seconds ? step.seconds.high : stepRow(step.verb).attention === 'waiting' ? 600 : 60;
}

/** Compiles one prep: its amounts, then its matter, step by step. @source none - definition */
export function compilePrep(ctx: Context, section: Section): PrepBuilt {
  const v = vat(ctx, section.key);
  const names = new Occurrences(section.key);
  const puts = new Map<Measure, Put>();
  for (const m of measuresOf(section.lines)) puts.set(m, put(ctx, m, section.key, names));
  const list = [...puts.values()];
  solveShares(ctx, list);

  const used_g = ctx.layout.take(1), yield_g = ctx.layout.take(1), rest_C = ctx.layout.take(1), kept = ctx.layout.take(1), dairy = ctx.layout.take(1);
  const stages: StageBuilt[] = [];
  const all: Step[] = [];
  let seconds = 0, strained = 0, siphon = false, boiled = false, last: Step | null = null;
  ctx.ops.push(({ s }) => { let g = 0; for (const p of list) if (p.source.ingredient?.category === 'dairy') g += s[p.g]!; s[dairy] = g; });

  const pourIn = (m: Measure) => {
    const p = puts.get(m)!;
    const form = p.source.form;
    const phase = form === 'fat' && WASHES.has(section.method) ? 'fat' : form === 'botanical' || form === 'piece' || form === 'insoluble' ? 'solids' : 'liquid';
    add(ctx, v, p, phase);
    if (m.treatments.some((t) => t.key === 'soaked') && form === 'agent') soakWater(ctx, v, p);
    if (m.carrier && puts.has(m.carrier)) add(ctx, v, puts.get(m.carrier)!);
  };

  for (const action of actionsOf(section.lines)) {
    if (action.kind === 'measure') { pourIn(action); continue; }
    if (action.kind === 'fill') { if (action.measure) pourIn(action.measure); continue; }
    if (action.kind !== 'step') continue;
    all.push(action);
    last = action;
    seconds += occupies(action);
    const row = stepRow(action.verb);
    if (action.measure && puts.has(action.measure)) pourIn(action.measure);
    settle(ctx, v);
    switch (row.does) {
      case 'rest': {
        const t = placeTemperature(ctx, action, row.place ?? 'place/room');
        const time = stepSeconds(ctx, action, false);
        if (v.content.has('solids')) extractAll(ctx, v, list);
        if (time >= 0) rest(ctx, v, t, time, (action.temperature?.celsius ?? 0) < -5 ? 'freezer' : 'air'); else setTemperature(ctx, v, t);
        break;
      }
      case 'set': setTemperature(ctx, v, placeTemperature(ctx, action, 'place/room')); if (v.content.has('solids')) extractAll(ctx, v, list); break;
      case 'boil': {
        if (v.content.has('solids')) extractAll(ctx, v, list);
        if (!action.flags.includes('covered') && !action.flags.includes('closed')) {
          const share = ctx.assume(section.method.includes('agar') ? 'agar/water boiled off' : 'prep/boil-off', action.path, 'nature');
          ctx.ops.push(({ s, x }) => boilOff(s, v.liquid, ctx.lost, x[share]!));
        }
        setTemperature(ctx, v, boiling(ctx, action));
        boiled = true;
        break;
      }
      case 'reduce': {
        const to = action.to;
        ctx.ops.push(({ s }) => {
          const now = volumeAt20(s, v.liquid);
          const target = to && 'share' in to ? now * to.share : to ? ((to.amount.low + to.amount.high) / 2) : now * 0.5;
          reduceTo(s, v.liquid, ctx.lost, target);
        });
        setTemperature(ctx, v, boiling(ctx, action));
        boiled = true;
        break;
      }
      case 'strain': {
        if (v.content.has('solids')) extractAll(ctx, v, list);
        strain(ctx, { section, vat: v, step: action, first: strained === 0, puts: list, dairy });
        strained++;
        if (action.temperature) setTemperature(ctx, v, placeTemperature(ctx, action, 'place/room'));
        break;
      }
      case 'charge': {
        if (action.gas?.kind === 'CO2') { carbonate(ctx, section, v, action); break; }
        if (!siphon) chargeNitrous(ctx, section, v, action, rest_C);
        siphon = true;
        break;
      }
      case 'carbonate': carbonate(ctx, section, v, action); setTemperature(ctx, v, placeTemperature(ctx, action, 'place/fridge')); break;
    }
    stage(ctx, stages, `prep:${section.key}/`, { text: textOf(ctx, action), path: action.path }, v);
  }
  if (strained === 0 && v.content.has('solids')) extractAll(ctx, v, list);

  // what is left, and how warm it rests
  settle(ctx, v);
  const stays = last !== null && (stepRow(last.verb).does === 'rest' || stepRow(last.verb).does === 'set' || last.temperature !== undefined);
  const own = stays ? -1 : ctx.assume('start/prep from the fridge', ['preps', section.key], 'place');
  ctx.ops.push(({ s, x }) => {
    s[yield_g] = wholeMass(s, v.liquid);
    s[kept] = volumeAt20(s, v.liquid) + s[v.liquid + slot.unknown_g]!;
    s[rest_C] = stays || own < 0 ? s[v.celsius]! : x[own]!;
  });
  const foam = FOAMS.has(section.method) ? { overrun: ctx.layout.take(1) } : null;
  if (foam) {
    const cream = list.some((p) => /cream/.test(p.source.ingredient?.id ?? ''));
    const input = ctx.assume(cream ? 'siphon/overrun cream' : 'siphon/overrun gelatin foam', section.lines[0]?.path ?? ['preps', section.key], 'nature');
    ctx.ops.push(({ s, x }) => { s[foam.overrun] = x[input]!; });
  }
  const takes: { prep: string; g: number }[] = [];
  let needs = 0;
  for (const p of list) if (p.source.prep) { takes.push({ prep: p.source.prep.section.key, g: p.g }); needs = Math.max(needs, p.source.prep.seconds); }
  const built: PrepBuilt = {
    name: section.name, section, content: v.content, used_g, yield_g, rest_C, mL: kept, seconds: seconds + needs, takes, stages,
    vessel: siphon || section.method === 'siphon foam' ? 'siphon' : section.method === 'gel' ? 'tray' : section.method === 'carbonate' || section.method === 'bitters' ? 'bottle' : boiled && strained === 0 ? 'pan' : 'jar',
    foam, gel: section.method === 'gel', puts: list, steps: all, vat: v, sections: ctx.sections, setting: [],
  };
  built.setting = settingOf(ctx, built);
  if (foam) {
    // a foam that does not set is poured, not dispensed: no air stays in it
    const fatal = built.setting.map((m) => m.op), one = new Float64Array(1);
    ctx.ops.push((w) => {
      for (let i = 0; i < fatal.length; i++) { fatal[i]!(w, one, 0); if (one[0]! > 0) w.s[foam.overrun] = 0; }
    });
  }
  ctx.preps.set(section.key, built);
  return built;
}

/** Gelatin sheets take up water while they soak and bring it along. */
function soakWater(ctx: Context, v: Vat, p: Put): void {
  const row = ctx.tables.spread('gelatin/soak water') ?? ctx.tables.spread('texture/gelatin soak water');
  const value = row && row.kind === 'absolute' ? (row.a + row.b) / 2 : 5.5;
  const low = row && row.kind === 'absolute' ? row.a : 5, high = row && row.kind === 'absolute' ? row.b : 6;
  const times = ctx.book.add({ key: 'gelatin/soak water', value, unit: 'g per g', spread: { kind: 'range', low, high }, grade: row?.grade ?? 'trade', source: row?.source ?? 'common-practice', role: 'nature', at: p.measure.path });
  const cold = ctx.assume('start/water', p.measure.path, 'place');
  const water = ctx.layout.take(BLOCK);
  ctx.extras.push([water, 1]);
  ctx.ops.push(({ s, x }) => {
    const g = s[p.g]! * x[times]!;
    for (let i = 0; i < BLOCK; i++) s[water + i] = 0;
    s[water + at.water] = g;
    s[v.liquid + at.water]! += g;
    s[v.liquid + slot.enthalpy_J]! += enthalpy(s, water, x[cold]!);
  });
  ctx.unsettled.add(v.liquid);
}

/** What dissolves out of the solids, once for all of them: each gives its own share of its mass, as the table of forms has it. */
function extractAll(ctx: Context, v: Vat, puts: readonly Put[]): void {
  const botanicals = puts.filter((p) => (p.source.form === 'botanical' || p.source.form === 'piece') && p.source.ingredient);
  if (botanicals.length === 0 || ctx.extracted.has(v.liquid)) return;
  ctx.extracted.add(v.liquid);
  settle(ctx, v);
  const solids = v.content.phase('solids');
  const given = botanicals.map((p) => steeping(p.source.ingredient!)?.extractable ?? 0.2);
  const share = ctx.book.add({ key: `extract/${v.content.name}`, value: 1, unit: 'share', spread: { kind: 'range', low: 0.4, high: 1.6, min: 0, max: 3 }, grade: 'trade', source: 'common-practice', role: 'nature', at: botanicals[0]!.measure.path });
  ctx.ops.push(({ s, x }) => {
    let soluble = 0, out = 0;
    for (let i = 0; i < SOLUBLE.length; i++) soluble += s[solids + SOLUBLE[i]!]!;
    for (let i = 0; i < botanicals.length; i++) out += s[botanicals[i]!.g]! * given[i]!;
    if (soluble <= 0) return;
    extract(s, v.liquid, solids, Math.min(0.98, (x[share]! * out) / soluble));
    s[v.liquid + slot.enthalpy_J] = enthalpy(s, v.liquid, s[v.celsius]!);      // what dissolves has the liquid's temperature
  });
}
const SOLUBLE = Array.from({ length: slot.enthalpy_J }, (_, i) => i).filter((i) => i !== at.water && i !== at.fibre && i !== at.fat && i !== at.insolubles);

/** What boils here: 100 °C less what height takes, a degree more for sugar. @source common-practice */
export function boiling(ctx: Context, step: Step): number {
  return ctx.book.add({ key: 'boiling point', value: 100, unit: '°C', spread: { kind: 'range', low: 97, high: 102 }, grade: 'trade', source: 'common-practice', role: 'place', at: step.path });
}
