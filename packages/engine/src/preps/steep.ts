import type { Section, Step } from '../document/types.ts';
import { steeping } from '../larder/index.ts';
import { enthalpyWithIce, heatCapacity, volumeAt20 } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context, Put, Steeped, Vat } from '../program/context.ts';
import { lineBefore, lineAfter } from '../program/edit.ts';
import { inFreezer } from '../program/temperature.ts';
import { assumeSeconds, assumeTime, usualTime } from '../program/times.ts';
import { rest } from '../program/vat.ts';
import { extract } from './move.ts';
import { DRAWS_SLOWER, drawWater } from './oleo.ts';
import { ACTIVATION, MORE, PULPED, UNDER_PRESSURE, brokenBy, contactCooling, contactRate, reached, slowness } from './infusion.ts';
import places from '../../../../data/physics/places.json' with { type: 'json' };

/** What a solid gives that has no row of its own, as a share of its mass. @source common-practice */
const USUAL = 0.2;
const SOLUBLE = Array.from({ length: slot.enthalpy_J }, (_, i) => i).filter((i) => i !== at.water && i !== at.fibre && i !== at.fat && i !== at.insolubles);

/** g of a block that dissolve. */
function solubleIn(s: Float64Array, block: number): number { let g = 0; for (let i = 0; i < SOLUBLE.length; i++) g += s[block + SOLUBLE[i]!]!; return g; }
/** So much of what dissolves can be drawn out of wet solids. */
const NEARLY = 0.98;

/** How a step lasts, for what steeps: cools or warms to its place, keeps one temperature, or goes from one to another. */
type Course = 'place' | 'keeps' | 'goes';
const TEA = /^(tea-|matcha)/;
const OLEO = 'oleo saccharum';
/** Most of these is water, which a blender sets free. */
const JUICY = /^(fruit|vegetable)$/;

/**
 * The solids of a prep and how far they have given what they can: contact adds up over the steps from the time and the temperature that passed,
 * and what it sets free goes into the liquid at each of them, so that any step finds the liquid as it is by then.
 * @source tea-arizona; jaganyi-price-1999; common-practice how much slower other solids are
 */
export class Steep {
  private readonly ctx: Context;
  private readonly v: Vat;
  private readonly section: Section;
  /** offsets: contact of tea leaf since the beginning, contact by breaking, temperature as the step begins */
  private readonly contact: number;
  /** offset: share of the solids' water that sugar has drawn */
  private readonly drawn: number;
  private readonly list: Steeped[] = [];
  private there: Steeped[] = [];
  private pressed = false;
  /** it stood under gas at some time */
  private gas = false;
  private timed = false;
  /** what a blender has made a pulp of */
  readonly pulped = new Set<Put>();

  constructor(ctx: Context, v: Vat, section: Section) {
    this.ctx = ctx; this.v = v; this.section = section;
    const contact = this.contact = ctx.layout.take(4), drawn = this.drawn = contact + 3;
    ctx.ops.push(({ s }) => { s[contact] = 0; s[contact + 1] = 0; s[contact + 2] = 20; s[drawn] = 0; });
  }

  /** Everything that steeped, with what it reached. */
  get steeped(): readonly Steeped[] { return this.list; }

  /** Something solid goes in: its contact counts from now on. */
  put(p: Put): void {
    if (!(p.source.form === 'botanical' || p.source.form === 'piece') || !p.source.ingredient) return;
    const since = this.ctx.layout.take(5), { contact } = this, { block } = p.source;
    const one: Steeped = { put: p, reached: since + 2, contact: since + 4, slower: slowness(p.source.ingredient) };
    this.list.push(one);
    this.there.push(one);
    this.timed = false;
    this.ctx.ops.push(({ s }) => { s[since] = s[contact]!; s[since + 1] = s[contact + 1]!; s[since + 2] = 0; s[since + 3] = s[p.g]! * solubleIn(s, block); s[since + 4] = 0; });
  }

  /** Before a step is run: how warm it begins. */
  begin(): void {
    if (this.there.length === 0) return;
    const { contact, v } = this;
    this.ctx.ops.push(({ s }) => { s[contact + 2] = s[v.celsius]!; });
  }

  /** Gas goes on: from now on it is faster. */
  charge(): void {
    if (this.there.length === 0) return;
    this.pressed = true;
    this.gas = true;
  }
  /** Gas comes off. */
  vent(step: Step): void {
    if (this.there.length > 0 && !this.timed) this.unsaid(step);
    this.pressed = false;
  }

  /** A step lasted: `place` input of its temperature where it nears that, `seconds` input, or -1 where the usual time of its kind is asked for. */
  pass(step: Step, course: Course, place = -1, seconds = -1): void {
    if (this.there.length === 0) return;
    const time = seconds >= 0 ? seconds : this.lasts(step, course);
    if (time < 0) return;
    this.timed = true;
    this.count(time, course, place, inFreezer(step) ? 'freezer' : 'air');
    this.give();
  }

  /** A step breaks what is in it. */
  breaks(step: Step): void {
    const gives = brokenBy(step.verb);
    if (this.there.length === 0 || gives === 0) return;
    const { contact, v } = this, opens = gives >= PULPED ? reached(gives) : 0;
    this.timed = true;
    this.ctx.ops.push(({ s }) => { s[contact + 1]! += gives; });
    this.give();
    if (opens === 0) return;
    const solids = v.content.phase('solids'), all = [...this.there], juicy = all.filter((one) => JUICY.test(one.put.source.ingredient!.category));
    for (const one of juicy) this.pulped.add(one.put);
    if (juicy.length === 0) return;
    const waterOf = (s: Float64Array, list: readonly Steeped[]): number => { let g = 0; for (let i = 0; i < list.length; i++) g += s[list[i]!.put.g]! * s[list[i]!.put.source.block + at.water]!; return g; };
    // cells that are open let their own water go
    this.ctx.ops.push(({ s }) => {
      const own = waterOf(s, all), water = own > 0 ? s[solids + at.water]! * opens * (waterOf(s, juicy) / own) : 0;
      s[solids + at.water]! -= water;
      s[v.liquid + at.water]! += water;
      s[v.liquid + slot.enthalpy_J] = enthalpyWithIce(s, v.liquid, s[v.celsius]!, s[v.ownIce]!);
    });
  }

  /** What steeped is strained off, or the prep is done: where no step said how long, it is assumed. `before`: the step that ends it. */
  leave(before: Step | null): void {
    if (this.there.length === 0) return;
    if (!this.timed) this.unsaid(before);
    this.pressed = false;
    this.there = [];
    this.timed = false;
  }

  /** No step says how long: the usual time, in words of a line of its own before what ends it. */
  private unsaid(before: Step | null): void {
    const { ctx } = this, last = this.there[this.there.length - 1]!.put.measure, tea = this.there.some((x) => TEA.test(x.put.source.ingredient!.id));
    const key = this.pressed ? 'time/pressure infusion' : tea ? 'time/tea steep' : 'time/steeping';
    const line = { literal: `${this.pressed ? 'rest' : 'steep'} ${ctx.tables.assumption(key)!.say}` };
    const where = before ? lineBefore(ctx.sections, before, line) : lineAfter(ctx.sections, last, line), from = where[0]?.from ?? last.span.to;
    const time = assumeSeconds(ctx, key, last.path, [{ from, to: from, insert: where.map((x) => x.literal ?? '').join('') }]);
    const room = ctx.assume('place/room', last.path, 'place');
    this.begin();
    rest(ctx, this.v, room, time, 'air');
    this.count(time, 'place', room, 'air');
    this.give();
    this.timed = true;
  }

  private lasts(step: Step, course: Course): number {
    const { ctx, section } = this;
    const usual = usualTime(ctx, step, section.method) ?? (course === 'goes' ? 'time/waiting step' : step.verb === 'heat' || step.verb === 'melt' ? 'time/active step' : undefined);
    return usual ? assumeTime(ctx, step, usual) : -1;
  }

  /** By how many times as long a solid takes: under gas that is known for all of them together. */
  private slowness(of: Steeped): number {
    const row = this.gas ? 'model/infusion pressure' : of.slower === 1 ? 'model/infusion leaf' : 'model/infusion other';
    return this.ctx.spread(row, row, 1, 'share', 'nature', { at: of.put.measure.path });
  }

  /** Adds the contact of a time to what has passed. */
  private count(time: number, course: Course, place: number, medium: 'air' | 'freezer'): void {
    const { ctx, v, contact } = this, faster = this.pressed ? UNDER_PRESSURE : 1;
    // of other solids it is told how long they take, at whatever warmth; of tea it is measured what warmth does
    const activation = this.there.every((x) => x.slower === 1) ? ctx.spread('model/infusion temperature', 'model/infusion temperature', ACTIVATION, 'kJ/mol', 'nature', { at: this.there[0]!.put.measure.path }) : -1;
    const exchange = course === 'place' ? ctx.spread(`place/exchange/${medium}`, `place/exchange/${medium}`, places[medium].value, 'W/m2K', 'place') : -1;
    const pieces = v.content.phase('solids');
    ctx.ops.push(({ s, x }) => {
      const minutes = x[time]! / 60, from = s[contact + 2]!, now = s[v.celsius]!, kJ = activation < 0 ? ACTIVATION : x[activation]!;
      let more = 0;
      if (course === 'place') {
        const mL = volumeAt20(s, v.liquid), around = place >= 0 ? x[place]! : now;
        const carries = x[exchange]! * 6 * Math.cbrt((mL * 1e-6) ** 2);              // W/K over the surface of a cube
        more = contactCooling(from, around, minutes, mL > 0 && carries > 0 ? (heatCapacity(s, v.liquid, (from + around) / 2) + heatCapacity(s, pieces, (from + around) / 2)) / carries / 60 : 0, kJ);
      } else more = minutes * (course === 'goes' ? (contactRate(from, kJ) + 4 * contactRate((from + now) / 2, kJ) + contactRate(now, kJ)) / 6 : contactRate(now, kJ));
      s[contact]! += more * faster;
    });
  }

  /** What came free since it was last asked goes into the liquid. */
  private give(): void {
    const { ctx, v, contact, there } = this, slow = there.map((x) => this.slowness(x));
    const solids = v.content.phase('solids'), given = there.map((x) => steeping(x.put.source.ingredient!)?.extractable ?? USUAL);
    const still = [...there], first = there[0]!;
    const draws = this.section.method === OLEO ? ctx.middle('oleo/water drawn', 'oleo/water drawn', 'share', 'nature', { at: first.put.measure.path, bounds: { min: 0, max: 1 } }) : -1, drawn = draws < 0 ? -1 : this.drawn;
    if (draws >= 0) ctx.ops.push(({ s, x }) => {
      const since = first.reached - 2, now = x[draws]! * reached((s[contact]! - s[since]!) / (DRAWS_SLOWER * x[slow[0]!]!)), before = s[drawn]!;
      drawWater(s, v.liquid, solids, (now - before) / (1 - before), s[v.celsius]!);
      s[drawn] = now;
    });
    ctx.ops.push(({ s, x }) => {
      const soluble = solubleIn(s, solids);
      let out = 0, all = 0, most = 0;
      for (let i = 0; i < still.length; i++) {
        const one = still[i]!, since = one.reached - 2;
        const now = reached((s[contact]! - s[since]!) / (one.slower * x[slow[i]!]!) + s[contact + 1]! - s[since + 1]!);
        // what is cut finer or riper gives faster and gives more
        const gives = (s[one.put.g]! * given[i]!) / x[slow[i]!]! ** MORE;
        all += s[one.reached + 1]!; most += gives;
        out += gives * Math.max(0, now - s[one.reached]!);
        s[one.reached] = now;
        s[one.contact] = s[contact]! - s[since]!;
      }
      if (!(soluble > 0) || !(out > 0)) return;
      // never more in the end than is there to dissolve
      extract(s, v.liquid, solids, Math.min(NEARLY, (out * Math.min(1, (NEARLY * all) / most)) / soluble));
      s[v.liquid + slot.enthalpy_J] = enthalpyWithIce(s, v.liquid, s[v.celsius]!, s[v.ownIce]!);      // what dissolves has the liquid's temperature
    });
  }
}
