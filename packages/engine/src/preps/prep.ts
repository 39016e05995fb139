import { actionsOf, listedIn, ofPart } from '../document/actions.ts';
import type { Action, Line, Measure, Section, Step } from '../document/types.ts';
import { enthalpy, volumeAt20 } from '../liquids/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { clearBlock, wholeMass } from '../matter/block.ts';
import type { Context, PrepBuilt, Put, StageBuilt, Vat } from '../program/context.ts';
import { frozenShare, mayHoldIce, restFrozen, tellFrozen } from '../program/frozen.ts';
import { chillsGlass } from '../program/glass.ts';
import { belowZero, placeTemperature, writtenTemperature } from '../program/temperature.ts';
import { assumeTime, secondsOf, untilDone, usualTime } from '../program/times.ts';
import { driveOut } from '../program/sparkle.ts';
import { bringBelow, bringTo, stand } from '../program/stand.ts';
import { Occurrences, add, put, setTemperature, settle, solveShares, stage, textOf, vat, warmPart } from '../program/vat.ts';
import { behindStep } from '../program/words.ts';
import { booked, nothingLost } from './cloth.ts';
import { breathes, closes, opens, presses, tellClosed } from './closed.ts';
import { KILLED, ferment } from './ferment.ts';
import { carbonate, chargeNitrous, tellDissolved, vent } from './gas.ts';
import { reduceTo } from './move.ts';
import { burn, simmer } from './cook.ts';
import { noteFire, noteMeeting, noteWarmth, nothingNoted } from './noted.ts';
import { settingOf } from './setting.ts';
import { Steep } from './steep.ts';
import { strain } from './strain.ts';
import steps from '../../../../data/steps.json' with { type: 'json' };

export interface StepRow { readonly does: string; readonly attention: string; readonly vessel?: string; readonly place?: string }
/** What a verb does in the run; a verb without a row changes nothing of the matter. @source none - definition */
export function stepRow(verb: string): StepRow {
  return (steps as unknown as Record<string, StepRow>)[verb] ?? { does: 'mix', attention: 'active' };
}

/** What a step does for a while: without a time written it takes its usual one. */
const TIMED = new Set(['rest', 'boil', 'set']);
const FOAMS = new Set(['siphon foam', 'foam']);
const WASHES = new Set(['fat wash']), CURDLES = new Set(['milk wash', 'clarify with milk']);
const PRESSED = 'pressure infusion';
/** On a hob from this on: what is only warmed stands in water. °C */
const WARM = 45;
const onHob = (step: Step): boolean => (step.temperature === undefined ? /^(heat|melt)$/.test(step.verb) : step.temperature.celsius >= WARM && step.verb !== 'sous-vide');
/** What parts ice from liquid, or warms it on its way: a prep to which this is still to come is taken as liquid. */
const THAWS = /^(strain|boil|reduce)$/;
const thaws = (a: Action): boolean => a.kind === 'step' && (a.verb === 'thaw' || a.verb === 'ferment' || THAWS.test(stepRow(a.verb).does));

/** What a ferment stands to go on in, with or without the word: in a prep of that method, and wherever yeast lives. */
const STANDS = /^(ferment|rest|infuse|age|store|chill|settle)$/;
const ferments = (section: Section, live: boolean, killed: boolean, step: Step): boolean => step.verb === 'ferment' || (STANDS.test(step.verb) && (live || (!killed && section.method === 'ferment' && /^(rest|infuse|age)$/.test(step.verb))));
/** Is it too hot for yeast? */
const kills = (step: Step): boolean => /^(boil|reduce)$/.test(stepRow(step.verb).does) || (stepRow(step.verb).does === 'set' && !ofPart(step) && step.temperature !== undefined && step.temperature.celsius >= KILLED);

/** Verbs whose amount is of what is there already. */
const NO_MATTER = new Set(['return-over-the-curd', 'discard', 'weigh', 'measure', 'taste']);

/** All measures of a section in order, with those a line carries along and those a step brings. @source none - definition */
export function measuresOf(lines: readonly Line[]): Measure[] { return measuresIn(actionsOf(lines)); }

/** Measures of these actions, in their order. @source none - definition */
export function measuresIn(actions: readonly Action[]): Measure[] {
  const out: Measure[] = [];
  const take = (m: Measure) => { out.push(m); if (m.carrier?.amount) out.push(m.carrier); };
  for (const a of actions) {
    if (a.kind === 'measure') take(a);
    else if (a.kind === 'fill' && a.measure) take(a.measure);
    else if (a.kind === 'step' && a.measure && !ofPart(a) && !NO_MATTER.has(a.verb)) take(a.measure);
  }
  return out;
}

/** Is what a step charged open again in the end: vented, or an infusion under pressure that was strained? */
function opened(section: Section, charge: Step): boolean {
  return actionsOf(section.lines).some((a) => a.kind === 'step' && a.span.from > charge.span.from && (a.verb === 'vent' || (section.method === PRESSED && stepRow(a.verb).does === 'strain')));
}

/** How long a step takes, as an input: written with its tool's spread, assumed where a table has its kind, else nothing. @source none - definition */
export function stepSeconds(ctx: Context, step: Step, needed: boolean, method = ''): number {
  const written = step.seconds;
  if (written?.word && ctx.tables.assumption(`time/${written.word}`)) return assumeTime(ctx, step, `time/${written.word}`);
  const row = ({ stir: 'time/stir written', shake: 'time/shake written', boil: 'time/boil', soak: 'time/soak', freeze: 'time/freeze', infuse: 'time/steep' } as Record<string, string>)[step.verb] ?? 'time/rest';
  if (written) {
    const value = (written.low + written.high) / 2;
    if (written.low !== written.high) return ctx.range(`time/${step.path.join('/')}`, written.low, written.high, 's', 'time', { at: step.path });
    return ctx.spread(`time/${step.path.join('/')}`, row, value, 's', 'time', { at: step.path, bounds: { min: 0 } });
  }
  const usual = needed ? usualTime(ctx, step, method) : undefined;
  const input = usual ? assumeTime(ctx, step, usual) : -1;
  return usual && untilDone(usual) ? -1 : input;
}

/** Seconds a step takes for the plan; what has no time written takes its usual one. @source common-practice */
function occupies(ctx: Context, step: Step, method: string): number {
  if (step.seconds) return step.seconds.high;
  const usual = usualTime(ctx, step, method);
  return usual ? secondsOf(ctx, usual) : secondsOf(ctx, stepRow(step.verb).attention === 'waiting' ? 'time/waiting step' : 'time/active step');
}

/** Ways a bottle is moved to take up its gas. */
const SHAKEN = new Set(['shake', 'dry-shake', 'roll']);

/** Compiles one prep: its amounts, then its matter, step by step. @source none - definition */
export function compilePrep(ctx: Context, section: Section): PrepBuilt {
  const v = vat(ctx, section.key), { lost } = ctx;
  const names = new Occurrences(section.key);
  const puts = new Map<Measure, Put>();
  for (const m of measuresOf(section.lines)) puts.set(m, put(ctx, m, section.key, names));
  const list = [...puts.values()];
  solveShares(ctx, list);

  const used_g = ctx.layout.take(1), yield_g = ctx.layout.take(1), rest_C = ctx.layout.take(1), kept = ctx.layout.take(1), dairy = ctx.layout.take(1);
  const stages: StageBuilt[] = [];
  const all: Step[] = [];
  let seconds = 0, strained = 0, siphon = false, boiled = false, killed = false, last: Step | null = null, shut: Step | null = null;
  ctx.ops.push(({ s }) => { let g = 0; for (const p of list) if (p.source.ingredient?.category === 'dairy') g += s[p.g]!; s[dairy] = g; });

  const noted = nothingNoted(ctx), losses = nothingLost(ctx, section.method === 'oleo saccharum'), brought = ctx.extras.length;
  const steep = new Steep(ctx, v, section);
  const onFire = (step: Step) => { if (!step.flags.includes('closed')) noteFire(ctx, noted, v, step); };
  let poured = 0;
  const together = () => { if (CURDLES.has(section.method) && strained === 0 && poured === list.length) noteWarmth(ctx, noted, v); };
  const pourIn = (m: Measure) => {
    const p = puts.get(m)!;
    poured += m.carrier && puts.has(m.carrier) ? 2 : 1;
    const form = p.source.form;
    const phase = form === 'fat' && WASHES.has(section.method) ? 'fat' : form === 'botanical' || form === 'piece' || form === 'insoluble' ? 'solids' : 'liquid';
    add(ctx, v, p, phase);
    if (phase === 'solids') steep.put(p);
    if (m.treatments.some((t) => t.key === 'soaked') && form === 'agent') soakWater(ctx, v, p);
    if (m.carrier && puts.has(m.carrier)) add(ctx, v, puts.get(m.carrier)!);
    if (p.source.prep?.noted.live) { noted.live = true; ctx.sparkling.add(v.liquid); }
  };

  const actions = actionsOf(section.lines);
  /** A liquid in its place, and what froze there. */
  const stands = (step: Step, temperature: number, time: number) => {
    const formed = stand(ctx, v, step, temperature, time, actions.slice(actions.indexOf(step) + 1).some(thaws));
    if (formed) noted.frozen.push({ step, ...formed });
  };
  /** "heat 100 ml of the juice": that much of it is brought there, and put back. */
  const toTemperature = (step: Step, temperature: number) => {
    const listed = listedIn(actions, step), whole = listed?.amount, part = step.measure?.amount, p = listed && puts.get(listed);
    if (p && whole && part && whole.unit === part.unit) warmPart(ctx, v, p, Math.min(1, (part.low + part.high) / (whole.low + whole.high)), temperature);
    else setTemperature(ctx, v, temperature);
  };
  for (const action of actions) {
    if (action.kind === 'measure') { pourIn(action); continue; }
    if (action.kind === 'fill') { if (action.measure) pourIn(action.measure); continue; }
    if (action.kind !== 'step' || chillsGlass(action)) continue;
    all.push(action);
    last = action;
    // how long a prep keeps is not how long it is waited for
    if (action.verb !== 'store' || action !== actions.at(-1)) seconds += occupies(ctx, action, section.method);
    if (!action.seconds && TIMED.has(stepRow(action.verb).does)) stepSeconds(ctx, action, true, section.method);
    const row = stepRow(action.verb);
    if (action.measure && puts.has(action.measure)) pourIn(action.measure);
    if (ctx.unsettled.has(v.liquid)) { settle(ctx, v); noteMeeting(ctx, noted, v); together(); }
    // a bottle is shaken under its gas to take it up
    if (!(all.at(-2)?.verb === 'carbonate' && SHAKEN.has(action.verb) && !action.ice)) driveOut(ctx, v, action);
    if (closes(action)) shut ??= action; else if (opens(action)) shut = null;
    steep.begin();
    // what is held below 0 °C stands in that cold, whatever the word
    switch (row.does === 'set' && belowZero(action) ? 'rest' : row.does) {
      case 'rest': {
        const t = placeTemperature(ctx, action, row.place ?? 'place/room');
        const time = row.does === 'rest' || action.seconds ? stepSeconds(ctx, action, true, section.method) : -1;
        stands(action, t, time);
        steep.pass(action, 'place', t, time);
        if (ferments(section, noted.live, killed, action)) { noted.live = true; ferment(ctx, v, action, t, time); }
        if (!ctx.sparkling.has(v.liquid)) break;
        if (shut) presses(ctx, noted, v, action, shut, t); else if (noted.live) breathes(ctx, v);
        break;
      }
      case 'set': if (onHob(action)) onFire(action); toTemperature(action, placeTemperature(ctx, action, 'place/room')); steep.pass(action, action.verb === 'cool' ? 'goes' : 'keeps', -1, action.seconds ? stepSeconds(ctx, action, true, section.method) : -1); break;
      case 'boil': {
        onFire(action);
        const time = stepSeconds(ctx, action, true, section.method);
        booked(ctx, losses, 'boiled', () => simmer(ctx, v, action, section.method.includes('agar') ? 'agar/water boiled off' : 'prep/boil-off', time));
        setTemperature(ctx, v, boiling(ctx, action));
        steep.pass(action, 'keeps', -1, time);
        boiled = true;
        break;
      }
      case 'reduce': {
        onFire(action);
        const to = action.to, left = to ? -1 : ctx.assume('reduce/not said', action.path, 'nature', 'reduce/not said', behindStep(action, ctx.tables.assumption('reduce/not said')!.say, ctx.document.text));
        booked(ctx, losses, 'boiled', () => ctx.ops.push(({ s, x }) => {
          const now = volumeAt20(s, v.liquid);
          const target = to && 'share' in to ? now * to.share : to ? ((to.amount.low + to.amount.high) / 2) : now * x[left]!;
          reduceTo(s, v.liquid, lost, target);
        }));
        setTemperature(ctx, v, boiling(ctx, action));
        steep.pass(action, 'keeps', -1, action.seconds ? stepSeconds(ctx, action, true, section.method) : -1);
        boiled = true;
        break;
      }
      case 'strain': {
        steep.leave(action);
        if (siphon && section.method === PRESSED) vent(ctx, v);
        booked(ctx, losses, 'cloth', () => strain(ctx, { section, vat: v, step: action, first: strained === 0, puts: list, dairy, pulped: steep.pulped, dry: losses.dry }));
        // what stays behind in a vessel or a cloth takes its part of the ice with it
        if (mayHoldIce(ctx, v)) restFrozen(ctx, v);
        strained++;
        // what comes off a strainer in the cold has stood in it before
        if (action.temperature) { const t = placeTemperature(ctx, action, 'place/room'); if (noted.frozen.length > 0) bringTo(ctx, v, action, t); else stands(action, t, -1); }
        break;
      }
      case 'charge': {
        if (action.gas?.kind === 'CO2') { stands(action, carbonate(ctx, section, v, action), -1); break; }
        if (!siphon) chargeNitrous(ctx, section, v, action, rest_C, noted, opened(section, action));
        siphon = true;
        steep.charge();
        if (section.method === PRESSED) steep.pass(action, 'keeps', -1, action.seconds ? stepSeconds(ctx, action, true, section.method) : -1);
        break;
      }
      case 'mix':
        if (action.verb === 'ignite') { onFire(action); booked(ctx, losses, 'boiled', () => burn(ctx, v, action)); }
        if (action.verb === 'vent') { vent(ctx, v); steep.vent(action); }
        break;
      case 'carbonate': stands(action, carbonate(ctx, section, v, action), -1); break;
    }
    together();
    if (noted.live && (action.verb === 'vent' || (kills(action) && !shut))) breathes(ctx, v);
    if (noted.live && kills(action)) { noted.live = false; killed = true; }
    if (action.seconds && (row.does === 'mix' || row.does === 'ice')) steep.pass(action, 'keeps', -1, stepSeconds(ctx, action, true, section.method));
    steep.breaks(action);
    stage(ctx, stages, `prep:${section.key}/`, { text: textOf(ctx, action), path: action.path }, v);
  }
  steep.leave(null);

  // what is left, and how warm it rests
  settle(ctx, v);
  together();
  if (shut) tellClosed(ctx, section.key, v, noted);
  if (noted.live || noted.closed.length > 0) tellDissolved(ctx, section.key, v);
  const stays = last !== null && (stepRow(last.verb).does === 'rest' || stepRow(last.verb).does === 'set' || (last.temperature !== undefined && !/^(boil|reduce)$/.test(stepRow(last.verb).does)));
  const own = stays ? -1 : ctx.assume('start/prep from the fridge', ['preps', section.key], 'place');
  // preps may be said to be kept where water freezes
  if (own >= 0 && ctx.book.list[own]!.value < 0) noted.frozen.push({ step: null, ...bringBelow(ctx, v, own) });
  const frozen = mayHoldIce(ctx, v), ice = ctx.layout.take(2);
  ctx.ops.push(({ s, x }) => {
    s[yield_g] = wholeMass(s, v.liquid);
    s[kept] = volumeAt20(s, v.liquid) + s[v.liquid + slot.unknown_g]!;
    s[rest_C] = own < 0 || s[v.ownIce]! > 0 ? s[v.celsius]! : x[own]!;       // where there is ice it stands where that keeps
    s[ice] = s[yield_g] > 0 ? s[v.ownIce]! / s[yield_g] : 0;
    s[ice + 1] = frozenShare(s, v.liquid, s[v.ownIce]!);
  });
  if (frozen) tellFrozen(ctx, `prep:${section.key}`, ice + 1);
  const foam = FOAMS.has(section.method) ? { overrun: ctx.layout.take(1) } : null;
  if (foam) {
    const cream = list.some((p) => /cream/.test(p.source.ingredient?.id ?? ''));
    const input = ctx.assume(cream ? 'siphon/overrun cream' : 'siphon/overrun gelatin foam', section.lines[0]?.path ?? ['preps', section.key], 'nature');
    const bound = noted.charge?.bound, most = new Float64Array(1);
    // no foam holds more gas than was dissolved in it
    ctx.ops.push((w) => { if (bound) bound(w, most, 0); w.s[foam.overrun] = bound ? Math.min(w.x[input]!, most[0]!) : w.x[input]!; });
  }
  const takes: { prep: string; g: number }[] = [];
  let needs = 0;
  for (const p of list) if (p.source.prep) { takes.push({ prep: p.source.prep.section.key, g: p.g }); needs = Math.max(needs, p.source.prep.seconds); }
  const built: PrepBuilt = {
    name: section.name, section, content: v.content, used_g, yield_g, rest_C, mL: kept, seconds: seconds + needs, takes, stages,
    vessel: siphon || section.method === 'siphon foam' ? 'siphon' : section.method === 'gel' ? 'tray' : section.method === 'carbonate' || section.method === 'bitters' ? 'bottle' : boiled && strained === 0 ? 'pan' : 'jar',
    foam, gel: section.method === 'gel', puts: list, steps: all, steeped: steep.steeped, vat: v, sections: ctx.sections, setting: [], noted,
    ...(frozen ? { ice } : {}), losses, soaked: ctx.extras.slice(brought).map(([block]) => block),
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
  const times = ctx.assume('gelatin/soak water', p.measure.path);
  const cold = ctx.assume('start/soaking water', p.measure.path, 'place');
  const water = ctx.layout.take(BLOCK);
  ctx.extras.push([water, 1]);
  ctx.ops.push(({ s, x }) => {
    const g = s[p.g]! * x[times]!;
    clearBlock(s, water);
    s[water + at.water] = g;
    s[v.liquid + at.water]! += g;
    s[v.liquid + slot.enthalpy_J]! += enthalpy(s, water, x[cold]!);
  });
  ctx.unsettled.add(v.liquid);
}

/** What boils here: 100 °C less what height takes, a degree more for sugar; at the bench's own height where it says one. @source common-practice */
export function boiling(ctx: Context, step: Step): number {
  const t = step.temperature;
  // nothing simmers below zero: that is no place for a pan
  if (t && !t.word && t.celsius > 0) return writtenTemperature(ctx, t.celsius, step.path, `temperature/${step.path.join('/')}`);
  return ctx.assume('place/boiling point', step.path, 'place', 'place/boiling point', behindStep(step, ctx.tables.assumption('place/boiling point')!.say, ctx.document.text));
}
