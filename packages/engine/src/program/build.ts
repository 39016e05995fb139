import type { Action, Fill, Garnish, IceWritten, Measure, Path, Section, Step } from '../document/types.ts';
import { temperatureOf, volume, volumeAt20 } from '../liquids/index.ts';
import { areaOfPieces } from '../ice/index.ts';
import { BLOCK, at, slot } from '../matter/constituents.ts';
import { addBlock, clearBlock, wholeMass } from '../matter/block.ts';
import { actionsOf, ofPart } from '../document/actions.ts';
import { boiling, measuresIn, stepRow, stepSeconds } from '../preps/prep.ts';
import { burn, simmer } from '../preps/cook.ts';
import { pourOut } from '../preps/move.ts';
import type { Context, Put, StageBuilt, Vat } from './context.ts';
import { frozenShare, mayHoldIce, tellFrozen } from './frozen.ts';
import { belowZero, placeTemperature } from './temperature.ts';
import { headOf, type Head } from './shaken.ts';
import { driveOut, poured } from './sparkle.ts';
import { stand } from './stand.ts';
import { chillsGlass, drunkFrom, glassNamed, glassOf, iceOf, level, type GlassBuilt, type IceBuilt, type Contents } from './glass.ts';
import { iceStep } from './ice-step.ts';
import { drinkKind } from './served.ts';
import { Occurrences, add, put, readsPut, setTemperature, settle, solveShares, stage, textOf, vat } from './vat.ts';

/** What stands in the glass, bottom to top. */
export interface LayerBuilt { readonly name: string; readonly kind: 'liquid' | 'foam' | 'gel'; readonly block: number; readonly mL: number; /** offset: 0 where a foam did not set and is liquid */ readonly stands: number; readonly at: Path; /** of a head shaken up in the drink itself */ readonly head?: Head }
/** A liquid as ice met it in a vessel of its own: offset of its mL, and the ice. */
export interface Heaped { readonly step: Step; readonly filled: number; readonly ice: IceBuilt }

export interface BuildResult {
  readonly glass: GlassBuilt; readonly glassIce: IceBuilt | null; readonly iceMass: number; readonly layers: readonly LayerBuilt[]; readonly base: Vat;
  readonly total: number; readonly stages: readonly StageBuilt[]; readonly garnish: readonly Garnish[]; readonly puts: readonly Put[]; readonly steps: readonly Step[];
  readonly temperature: number; readonly dilution: number; readonly iced: boolean; readonly contents: Contents;
  /** what stood in a shaker, glass or blender when ice met it */
  readonly heaped: readonly Heaped[];
}

/** Verbs that mix with ice or without, and those that bring what was mixed into the glass. */
export const MIXERS: ReadonlySet<string> = new Set(['stir', 'shake', 'whip-shake', 'dry-shake', 'throw', 'roll', 'blend', 'flash-blend']);
export const INTO_GLASS: ReadonlySet<string> = new Set(['strain', 'fine-strain', 'double-strain', 'pour', 'serve', 'dirty-dump']);
export const STRAINS: ReadonlySet<string> = new Set(['strain', 'fine-strain', 'double-strain']);
const ON_TOP = new Set(['float', 'sink', 'crown', 'layer']);

/** Compiles the drink at the glass. @source none - definition */
export function compileBuild(ctx: Context, section: Section): BuildResult {
  const actions = actionsOf(section.lines);
  const names = new Occurrences('build');
  const puts = new Map<Measure, Put>();
  const fills = new Set<Measure>();
  for (const a of actions) if (a.kind === 'fill' && a.measure) fills.add(a.measure);
  const poursOut = apart(actions);
  const beyond = poursOut ? new Set(measuresIn(actions.slice(actions.indexOf(poursOut) + 1))) : undefined;
  let late = false;
  for (const m of measuresIn(actions)) {
    if (beyond && !late && beyond.has(m)) { late = true; ctx.begin(); }
    const floats = actions.some((a) => a.kind === 'fill' && a.measure === m && ON_TOP.has(a.verb));
    puts.set(m, put(ctx, m, 'build', names, fills.has(m) ? { key: floats ? 'measure/float' : 'measure/top with' } : undefined));
  }
  const list = [...puts.values()];
  solveShares(ctx, list);

  if (poursOut) ctx.begin();
  const tin = vat(ctx, 'tin');
  let served: Vat | null = null;
  /** The glass, made where it is first asked for. */
  const glass = (): Vat => (served ??= vat(ctx, 'glass'));
  const measures = ctx.layout.take(BLOCK);                              // the measures in the vessel when ice first meets them
  const melted = ctx.layout.take(1), measured_mL = ctx.layout.take(1), dilution = ctx.layout.take(1);
  const layers: LayerBuilt[] = [];
  const stages: StageBuilt[] = [];
  const garnish: Garnish[] = [];
  const heaped: Heaped[] = [];
  const steps = actions.filter((a): a is Step => a.kind === 'step');
  let inTin = false, glassIce: IceBuilt | null = null, iced = false;
  let left: { readonly built: IceBuilt; readonly mass: number; readonly celsius: number; readonly verb: string } | null = null;   // ice in the tin, and what it was last done to

  /** Are the measures from here on mixed in a vessel of their own? The next thing done to them tells. */
  const mixesNext = (from: number): boolean => {
    for (let i = from; i < actions.length; i++) {
      const a = actions[i]!;
      if (a.kind !== 'step') continue;
      if (a.verb === 'swizzle' || a.verb === 'build') return false;
      if (MIXERS.has(a.verb)) {
        if (a.verb !== 'stir') return true;
        if (glassIce !== null && !a.ice) return actions.slice(i + 1).some((b) => b.kind === 'step' && STRAINS.has(b.verb));
        return actions.slice(i + 1).some((b) => b.kind === 'step' && INTO_GLASS.has(b.verb)) || a.ice !== undefined || !actions.some((b) => b.kind === 'fill');
      }
      if (STRAINS.has(a.verb)) return true;
      if (INTO_GLASS.has(a.verb)) return false;                            // poured from its bottle
    }
    return false;
  };
  const setGlassIce = (ice: IceWritten | undefined, use: string, path: Path) => {
    glassIce = iceOf(ctx, ice, use, path);
    const g = glassIce, iceInGlass = glass().content.ice;
    const area = (grams: number) => areaOfPieces(grams, g.size_mm);
    ctx.ops.push(({ s, x }) => {
      s[iceInGlass.mass] = x[g.mass]!; s[iceInGlass.celsius] = Math.min(0, x[g.celsius]!); s[iceInGlass.mass0] = x[g.mass]!; s[iceInGlass.area0] = area(x[g.mass]!);
    });
  };
  let mixing = false, waiting: IceWritten | undefined;
  let wasStrained = false;

  const emptyTin = (step: Step | null) => {
    if (poursOut && served === null) leaveTin();
    const shaken = steps.some((a) => a.verb === 'shake' || a.verb === 'whip-shake');
    const hold = ctx.assume(shaken ? 'hold/shaker' : 'hold/mixing glass', step?.path ?? ['build'], 'tool');
    const { lost } = ctx, from = tin.liquid, to = glass().liquid, { celsius } = glass(), pulp = tin.content.has('solids') ? tin.content.phase('solids') : -1;
    const again = !poursOut;                                             // something else may be mixed in it
    ctx.ops.push(({ s, x }) => {
      pourOut(s, from, to, lost, x[hold]!);
      if (pulp >= 0) addBlock(s, lost, pulp, 1);
      if (again) { clearBlock(s, from); if (pulp >= 0) clearBlock(s, pulp); }
      s[celsius] = s[tin.celsius]!;
    });
    ctx.unsettled.add(to);
    if (ctx.frozen.has(from)) ctx.frozen.add(to);
    if (ctx.sparkling.has(from)) ctx.sparkling.add(to);
    if (left && (left.verb === 'blend' || left.verb === 'flash-blend' ? !step || !STRAINS.has(step.verb) : step?.verb === 'dirty-dump')) {
      const ground = left.verb.includes('blend');
      setGlassIceFrom({ ...left, built: { ...left.built, ...(ground ? { kind: 'crushed', count: 0 } : {}) } });
    }
    left = null;
    inTin = false; mixing = false; wasStrained = true;
  };
  /** What is mixed apart is a part of the program of its own: it is not run again for what only comes on top. */
  const leaveTin = () => {
    ctx.begin();
    ctx.parts.reads(tin.liquid, BLOCK);
    if (tin.content.has('solids')) ctx.parts.reads(tin.content.phase('solids'), BLOCK);
    ctx.parts.reads(tin.celsius);
    if (left) { ctx.parts.reads(left.mass); ctx.parts.reads(left.celsius); }
  };
  const pourIn = (m: Measure, index: number) => {
    const p = puts.get(m)!;
    if (!mixing && !wasStrained) mixing = mixesNext(index);
    else if (!mixing && wasStrained) mixing = actions.slice(index).some((a) => a.kind === 'step' && MIXERS.has(a.verb) && (a.verb !== 'stir' || a.ice !== undefined));
    const form = p.source.form, into = mixing ? tin : glass();
    const solid = form === 'botanical' || form === 'piece' || form === 'insoluble';
    add(ctx, into, p, solid ? 'solids' : 'liquid');
    if (form === 'piece') pressOut(ctx, into, p);
    const carrier = carrierOf(m);
    if (carrier) add(ctx, into, carrier);
    if (mixing) inTin = true;
  };
  /** Ice written as a measure. */
  const iceIn = (m: Measure, index: number) => {
    const ice: IceWritten = { kind: /crush/i.test(m.thing.words) ? 'crushed' : 'cubes', span: m.amount ? m.span : { from: m.thing.span.from, to: m.span.to }, named: m.thing.span, ...(m.amount ? { mass: m.amount } : {}), ...(m.temperature ? { temperature: m.temperature } : {}) };
    putIce(ice, index, m.path);
  };
  /** What next mixes or strains after this action. */
  const mixedNext = (index: number): Step | undefined => actions.slice(index + 1).find((b): b is Step => b.kind === 'step' && (MIXERS.has(b.verb) || STRAINS.has(b.verb)));
  /** Ice for the next shake or stir if that brings none, else, or where a glass to drink from is named, into the glass. */
  const putIce = (ice: IceWritten, index: number, path: Path, to?: Step['into']) => {
    const next = mixedNext(index);
    if (!drunkFrom(to) && next && MIXERS.has(next.verb) && !next.ice && !wasStrained && mixesNext(index + 1)) waiting = ice; else setGlassIce(ice, use(ctx, ice), path);
  };
  /** The liquid a measure goes in with. */
  const carrierOf = (m: Measure): Put | undefined => (m.carrier ? puts.get(m.carrier) : undefined);
  const onTop = (p: Put, kind: 'liquid' | 'foam' | 'gel', name: string) => {
    const block = ctx.layout.take(BLOCK), mL = ctx.layout.take(1), stands = ctx.layout.take(1);
    const foam = p.source.prep?.foam, carrier = carrierOf(p.measure);
    readsPut(ctx, p);
    if (carrier) readsPut(ctx, carrier);
    if (foam) ctx.parts.reads(foam.overrun);
    const { block: one } = p.source;
    ctx.ops.push(({ s }) => {
      addBlock(s, block, one, s[p.g]!);
      if (carrier) addBlock(s, block, carrier.source.block, s[carrier.g]!);
      const v = volumeAt20(s, block) + s[block + slot.unknown_g]!;
      s[mL] = kind === 'foam' && foam ? v * (1 + s[foam.overrun]! / 100) : v;
      s[stands] = kind !== 'foam' || (foam && s[foam.overrun]! > 0) ? 1 : 0;
    });
    poured(ctx, p, block);
    layers.push({ name, kind, block, mL, stands, at: p.measure.path });
  };
  const topUp = (fill: Fill, index: number) => {
    if (fill.ice) { putIce(fill.ice, index, fill.path, fill.into); return; }
    if (!fill.measure) return;
    if (inTin && !actions.slice(index).some((a) => a.kind === 'step' && INTO_GLASS.has(a.verb))) emptyTin(null);
    const p = puts.get(fill.measure)!;
    const name = p.source.prep?.name ?? fill.measure.thing.words;
    if (p.source.prep?.foam) onTop(p, 'foam', name);
    else if (p.source.prep?.gel) onTop(p, 'gel', name);
    else if (ON_TOP.has(fill.verb) && fill.verb !== 'crown') onTop(p, 'liquid', name);
    else {
      const carrier = carrierOf(fill.measure);
      add(ctx, inTin ? tin : glass(), p);
      if (carrier) add(ctx, inTin ? tin : glass(), carrier);
    }
  };

  actions.forEach((a: Action, index) => {
    switch (a.kind) {
      case 'measure': {
        const prep = puts.get(a)!.source.prep;
        if (puts.get(a)!.source.form === 'ice') { iceIn(a, index); break; }
        if (prep?.foam && !mixesNext(index)) onTop(puts.get(a)!, 'foam', prep.name);
        else if (prep?.gel && !mixesNext(index)) onTop(puts.get(a)!, 'gel', prep.name);
        else pourIn(a, index);
        break;
      }
      case 'fill': topUp(a, index); break;
      case 'garnish': garnish.push(a); break;
      case 'step': {
        const row = stepRow(a.verb);
        if (a.measure && !ofPart(a) && !puts.has(a.measure)) break;
        if (a.measure && puts.has(a.measure)) pourIn(a.measure, index);
        if (row.does === 'ice') {
          const where = inTin ? tin : glass();
          // a hot drink is stirred, not chilled, unless ice is written
          const hot = !a.ice && glassIce === null && list.some((p) => warmer(ctx, p));
          // what is stirred before it is shaken, or stirred over ice, is stirred without
          const next = mixedNext(index), first = a.verb === 'stir' && !a.ice && !waiting && glassIce === null && !a.seconds && !a.times && next !== undefined && MIXERS.has(next.verb);
          const dry = a.flags.includes('dry') || hot || first;
          const usesGlassIce = !inTin && glassIce !== null && !a.ice;
          if (dry) { driveOut(ctx, where, a); stage(ctx, stages, '', { text: textOf(ctx, a), path: a.path }, where); break; }
          const step = a.ice || !waiting ? a : { ...a, ice: waiting };
          waiting = undefined;
          const filled = inTin ? noteFilled(ctx, where) : -1;
          const stageIce = iceStep(ctx, step, where, { usesGlassIce, glassIce: usesGlassIce ? glassIce : null, iced, measures, melted, measured_mL, dilution, inGlass: !inTin });
          if (!inTin && !usesGlassIce) { setGlassIceFrom(stageIce); }
          // stirred and not strained: in the glass it is served in
          if (filled >= 0 && (a.verb !== 'stir' || actions.slice(index + 1).some((b) => b.kind === 'step' && (STRAINS.has(b.verb) || b.verb === 'pour')))) heaped.push({ step, filled, ice: stageIce.built });
          driveOut(ctx, where, a);
          iced = true;
          left = inTin ? { ...stageIce, verb: a.verb } : null;
          stage(ctx, stages, '', { text: textOf(ctx, a), path: a.path }, where, stageIce.mass, dilution, true);
          ctx.balances.set(`stage:${stages.length - 1}`, stageIce.balance);
          break;
        }
        if (row.does === 'strain' || row.does === 'serve' || row.does === 'dump') {
          if (inTin) emptyTin(a);
          if (a.ice) setGlassIce(a.ice, use(ctx, a.ice), a.path);
          stage(ctx, stages, '', { text: textOf(ctx, a), path: a.path }, glass());
          break;
        }
        if (chillsGlass(a)) break;
        const here = inTin ? tin : glass();
        driveOut(ctx, here, a);
        if (row.does === 'rest' || (row.does === 'set' && belowZero(a))) {
          const t = placeTemperature(ctx, a, row.place ?? 'place/room'), time = row.does === 'rest' || a.seconds ? stepSeconds(ctx, a, true) : -1;
          settle(ctx, here);
          stand(ctx, here, a, t, time);
        } else if (row.does === 'set') setTemperature(ctx, here, placeTemperature(ctx, a, 'place/room'));
        else if (row.does === 'boil') { settle(ctx, here); simmer(ctx, here, a, 'prep/boil-off', stepSeconds(ctx, a, true)); setTemperature(ctx, here, boiling(ctx, a)); }
        else if (a.verb === 'ignite') { settle(ctx, here); burn(ctx, here, a); }
        else if (a.ice && a.verb === 'build') setGlassIce(a.ice, use(ctx, a.ice), a.path);
        else if (a.ice && glassIce === null) putIce(a.ice, index, a.path, a.into);
        stage(ctx, stages, '', { text: textOf(ctx, a), path: a.path }, here);
      }
    }
  });
  if (inTin) emptyTin(null);

  function setGlassIceFrom(built: { readonly built: IceBuilt; readonly mass: number; readonly celsius: number }): void {
    glassIce = built.built;
    const iceInGlass = glass().content.ice;
    ctx.ops.push(({ s }) => { s[iceInGlass.mass] = s[built.mass]!; s[iceInGlass.celsius] = s[built.celsius]!; s[iceInGlass.mass0] = s[built.mass]!; });
  }

  const glassVat = glass(), iceInGlass = glassVat.content.ice, { lost } = ctx, temperature = ctx.layout.take(1), iceMass = ctx.layout.take(1);
  ctx.parts.reads(dilution);
  settle(ctx, glassVat);
  const head = headOf(ctx, list, steps, glassVat);
  if (head) layers.push({ name: head.name, kind: 'foam', block: head.block, mL: head.mL, stands: head.stands, at: head.at, head });

  // the drink as a whole, stirred together in thought
  const total = ctx.layout.take(BLOCK), base_mL = ctx.layout.take(1), gel_mL = ctx.layout.take(1), density = ctx.layout.take(1), foam_mL = ctx.layout.take(1), foamDensity = ctx.layout.take(1);
  const serves = ctx.document.serves;                                      // the lines make so many; a glass holds one
  const floors = layers.filter((l) => l.kind === 'gel'), foams = layers.filter((l) => l.kind === 'foam'), wet = layers.filter((l) => l.kind === 'liquid');
  // leaves and fruit in the glass are garnish: not drunk, not counted
  const pulp = glassVat.content.has('solids') ? glassVat.content.phase('solids') : -1;
  const mayFreeze = mayHoldIce(ctx, glassVat), frozen = ctx.layout.take(1);
  if (mayFreeze) settle(ctx, glassVat);
  ctx.ops.push(({ s }) => {
    if (pulp >= 0) { addBlock(s, lost, pulp, 1); clearBlock(s, pulp); }
    addBlock(s, total, glassVat.liquid, 1);
    for (let i = 0; i < layers.length; i++) addBlock(s, total, layers[i]!.block, 1);
    s[frozen] = frozenShare(s, glassVat.liquid, s[glassVat.ownIce]!);
    s[temperature] = s[frozen] > 0 ? s[glassVat.celsius]! : wholeMass(s, glassVat.liquid) > 0 ? temperatureOf(s, glassVat.liquid, s[glassVat.liquid + slot.enthalpy_J]!, s[glassVat.celsius]) : 4;
    const t = s[temperature];
    let liquid = volume(s, glassVat.liquid, t) + s[glassVat.liquid + slot.unknown_g]!, grams = wholeMass(s, glassVat.liquid);
    for (let i = 0; i < wet.length; i++) { liquid += s[wet[i]!.mL]!; grams += wholeMass(s, wet[i]!.block); }
    let foam = 0, foamGrams = 0;
    for (let i = 0; i < foams.length; i++) {
      const f = foams[i]!, g = wholeMass(s, f.block);
      if (s[f.stands]! > 0) { foam += s[f.mL]!; foamGrams += g; } else { liquid += s[f.mL]!; grams += g; }
    }
    s[base_mL] = liquid / serves;
    s[density] = liquid > 0 ? grams / liquid : 1;
    s[foam_mL] = foam / serves;
    s[foamDensity] = foam > 0 ? foamGrams / foam : 0.25;
    let gel = 0;
    for (let i = 0; i < floors.length; i++) gel += s[floors[i]!.mL]!;
    s[gel_mL] = gel / serves;
    s[iceMass] = s[iceInGlass.mass]!;
  });
  if (mayFreeze) tellFrozen(ctx, 'drink', frozen);
  const top = [...fills].filter((m) => !layers.some((l) => l.at === m.path)).map((m) => puts.get(m)!);
  const into = glassOf(ctx, drinkKind({ strained: wasStrained, ice: (glassIce as IceBuilt | null)?.kind ?? null, shaken: steps.some((a) => /shake/.test(a.verb)), iced, top, puts: list, hot: list.some((p) => warmer(ctx, p)) }));
  const contents = { liquid_mL: base_mL, density, foam_mL, foam_density: foamDensity, base_mL: gel_mL };
  level(ctx, into, contents, glassIce, iceMass);
  return { contents, glass: into, glassIce, iceMass, layers, base: glassVat, total, stages, garnish, puts: list, steps, temperature, dilution, iced, heaped };
}

/** The step that pours what was mixed apart into the glass, where after it nothing is mixed any more and no measure is a share of others; else undefined. */
function apart(actions: readonly Action[]): Step | undefined {
  const at = actions.findIndex((a) => a.kind === 'step' && INTO_GLASS.has(a.verb));
  const plain = (a: Action): boolean => (a.kind === 'measure' ? a : a.kind === 'garnish' ? null : a.measure)?.share === undefined;
  if (at < 1 || !actions.every(plain) || actions.slice(at + 1).some((a) => a.kind === 'step' && (MIXERS.has(a.verb) || stepRow(a.verb).does === 'ice'))) return undefined;
  return actions[at] as Step;
}

/** Fruit muddled or shaken gives part of its juice: 0.3 to 0.7 of all that is in it but fibre. @source common-practice */
function pressOut(ctx: Context, v: Vat, p: Put): void {
  const share = ctx.middle(`pressed out/${p.occurrence}`, 'fruit/pressed out', 'share', 'nature', { at: p.measure.path, bounds: { min: 0, max: 1 } });
  const solids = v.content.phase('solids');
  readsPut(ctx, p);
  ctx.ops.push(({ s, x }) => {
    for (let i = 0; i < slot.enthalpy_J; i++) {
      if (i === at.fibre || i === at.insolubles) continue;
      const g = s[p.g]! * s[p.source.block + i]! * x[share]!;
      s[solids + i]! -= g;
      s[v.liquid + i]! += g;
    }
    const h = s[solids + slot.enthalpy_J]! * x[share]!;
    s[solids + slot.enthalpy_J]! -= h;
    s[v.liquid + slot.enthalpy_J]! += h;
  });
}

/** Which usual amount of ice goes into the glass: by its kind, else by the glass that is named. */
function use(ctx: Context, ice: IceWritten): string {
  const key = glassNamed(ctx) ?? '';
  if (ice.kind === 'crushed' || ice.kind === 'pebble') return 'crushed cup';
  if (ice.kind === 'large cube' || ice.kind === 'sphere') return 'one large cube';
  const long = key === '' && ctx.sections.some((s) => s.kind === 'build' && s.lines.some((l) => l.actions.some((a) => a.kind === 'fill' && a.measure !== null)));
  return key === 'collins' ? 'build collins' : long || key === 'highball' || key === 'fizz' ? 'build highball' : 'build rocks';
}

/** A drink into which something this warm went is served hot. @source common-practice */
const HOT_C = 50;
const warmer = (ctx: Context, p: Put): boolean => p.start.input >= 0 && ctx.book.list[p.start.input]!.value >= HOT_C;

/** Writes down how much there is before ice comes to it. */
function noteFilled(ctx: Context, v: Vat): number {
  const mL = ctx.layout.take(1);
  ctx.ops.push(({ s }) => { s[mL] = volumeAt20(s, v.liquid) + s[v.liquid + slot.unknown_g]!; });
  return mL;
}
