import { factsOf, holdsIce, type FilmVessel } from '@washline/drawing';
import type { GlassReading, Line, PrepReading, Step } from '@washline/engine';
import { INTO_GLASS, MIXERS, STRAINS, type Read, type Reading } from '../read.ts';
import type { FilmStep } from './steps.ts';

/** What stands there: the glass as it is served, or a vessel and what is in it. */
export type Stood = { readonly kind: 'glass'; readonly glass: GlassReading; readonly slush: boolean } | ({ readonly kind: 'vessel' } & FilmVessel);
export interface After {
  /** null where the engine has no state of this section yet */
  readonly state: Stood | null;
  /** words of the step whose state this is, where it is not the one asked for */
  readonly as: string | null;
  /** what a vessel under pressure asks for */
  readonly pressure: string | null;
}

const SHAKEN = new Set(['shake', 'whip-shake', 'dry-shake', 'throw', 'roll']);
const HEATS = new Set(['boil', 'simmer', 'reduce', 'heat', 'warm', 'scald', 'toast', 'caramelise']);

/** The text without the lines of a section that are not yet done, so that its reading is the state after these steps; a list is done with what pours of it. */
export function cutAfter(text: string, lines: readonly Line[], done: readonly FilmStep[]): string {
  const kept = new Set(done.flatMap(({ line, action }) => [line.line, ...(action.kind === 'fill' && action.again !== undefined ? lines.filter((one) => one.actions.some((a) => a.path.join('/') === action.again!.join('/'))).map((one) => one.line) : [])]));
  let out = text;
  for (const line of [...lines].filter((one) => !kept.has(one.line) && one.actions.length > 0).sort((a, b) => b.span.from - a.span.from)) out = out.slice(0, line.span.from) + out.slice(line.span.to);
  return out;
}

/**
 * What stands after a step, by the engine: the stage of that step, or a reading of the text as far as it is done. Where it has neither (a share of what is
 * not in yet, one of several measures of a line) it is the state of the last step that has one, and says whose it is.
 *
 * @param read reads a text for its numbers alone; null while the engine is on its way
 */
export function afterOf(steps: readonly FilmStep[], at: number, now: Read, read: (text: string) => Pick<Read, 'reading'> | null): After {
  const asked = steps[at];
  if (asked === undefined) return { state: null, as: null, pressure: null };
  for (let i = at; i >= 0 && steps[i]?.section === asked.section; i -= 1) {
    const found = stateOf(steps, i, now, read);
    if (found !== null) return { ...found, as: i === at ? null : steps[i]?.words ?? null };
  }
  return { state: null, as: null, pressure: null };
}

function stateOf(steps: readonly FilmStep[], at: number, now: Read, read: (text: string) => Pick<Read, 'reading'> | null): Omit<After, 'as'> | null {
  const step = steps[at];
  if (step === undefined) return null;
  const { section, line, action } = step, last = line.actions.at(-1)?.path.join('/') === action.path.join('/');
  const shares = section.lines.some((one) => one.actions.some((a) => a.kind === 'measure' && (a.share !== undefined || a.carrier?.share !== undefined)));
  const rest = steps.slice(at + 1).some((one) => one.section === section);
  const whole: Pick<Read, 'reading'> | null = !rest ? now : !last || shares ? null : read(cutAfter(now.document.text, section.lines, steps.slice(0, at + 1)));
  const volume = section.kind === 'prep' ? stageIn(now.reading.preps[section.key]?.stages, step) : stageIn(now.reading.stages, step);
  return section.kind === 'prep' ? inPrep(steps, step, whole, volume, now.reading) : inBuild(steps, at, whole, volume, now);
}

type Stages = PrepReading['stages'];
type Stage = Stages[number];
function stageIn(stages: Stages | undefined, step: FilmStep): Stage | null { return stages?.find((s) => s.path.join('/') === step.action.path.join('/')) ?? null; }

function inPrep(steps: readonly FilmStep[], step: FilmStep, cut: Pick<Read, 'reading'> | null, stage: Stage | null, full: Reading): Omit<After, 'as'> | null {
  const { key } = step.section, own = cut?.reading.preps[key] ?? null, final = full.preps[key] ?? null, shown = own ?? final;
  const mL = stage?.figures['volume']?.value ?? own?.yield.value;
  if (shown === null || mL === undefined || !Number.isFinite(mL)) return null;
  const mine = steps.filter((one) => one.section === step.section), before = mine.slice(0, mine.indexOf(step) + 1);
  const charged = before.some((one) => one.action.kind === 'step' && one.action.verb === 'charge');
  const kind = step.action.kind === 'step' && HEATS.has(step.action.verb) ? 'pan' : final?.vessel === 'siphon' && !charged ? 'jar' : final?.vessel ?? 'jar';
  const room = Math.max(mL, final?.yield.value ?? 0, ...(final?.stages ?? []).map((s) => s.figures['volume']?.value ?? 0));
  const gas = own?.gas, facts = own === null ? null : factsOf(own);
  return {
    pressure: facts?.caution == null ? null : `${step.action.kind === 'step' && step.action.verb === 'charge' ? facts.charged ?? facts.pressure ?? '' : facts.pressure ?? ''}. ${facts.caution}`,
    state: {
      kind: 'vessel', vessel: kind, room_mL: room, mL, ice_g: 0, colour: shown.colour, turbidity: shown.turbidity, strength: stage?.figures['strength']?.value ?? shown.figures['strength']?.value ?? null,
      bar: kind === 'siphon' && gas !== undefined ? gas.pressure.value : null, frozen: own?.frozen !== undefined, set: shown.method === 'gel' && own === final,
    },
  };
}

/** Is what stands before this step, or is put in by it, in a vessel of its own? The next thing done to it tells. */
function vesselAt(steps: readonly FilmStep[], at: number): 'shaker' | 'stirring glass' | 'jar' | null {
  const build = steps.slice(at).filter((one) => one.section === steps[at]?.section), all = steps.filter((one) => one.section === steps[at]?.section);
  const strained = all.slice(0, all.length - build.length).some((one) => one.action.kind === 'step' && INTO_GLASS.has(one.action.verb));
  const doing = build.map((one) => one.action).filter((a): a is Step => a.kind === 'step');
  const next = doing.find((a) => a.verb === 'swizzle' || a.verb === 'build' || MIXERS.has(a.verb) || INTO_GLASS.has(a.verb));
  if (next === undefined || next.verb === 'swizzle' || next.verb === 'build') return null;
  const first = build[0]?.action;
  if (INTO_GLASS.has(next.verb)) return first === next || next.verb === 'pour' || next.verb === 'serve' ? null : tinOf(all) ?? 'jar';
  if (next.verb === 'stir') {
    const iced = all.slice(0, all.length - build.length).some((one) => one.action.kind === 'fill' && one.action.ice !== undefined);
    const own = next.ice !== undefined || (!strained && (doing.slice(doing.indexOf(next) + 1).some((a) => INTO_GLASS.has(a.verb)) || !all.some((one) => one.action.kind === 'fill')));
    const strains = doing.slice(doing.indexOf(next) + 1).some((a) => STRAINS.has(a.verb));
    return own && (strains || !(iced && next.ice === undefined)) ? 'stirring glass' : null;
  }
  return SHAKEN.has(next.verb) ? 'shaker' : 'jar';
}
function tinOf(all: readonly FilmStep[]): 'shaker' | 'stirring glass' | null {
  const verbs = all.flatMap((one) => (one.action.kind === 'step' ? [one.action.verb] : []));
  return verbs.some((v) => SHAKEN.has(v)) ? 'shaker' : verbs.includes('stir') ? 'stirring glass' : null;
}

function inBuild(steps: readonly FilmStep[], at: number, cut: Pick<Read, 'reading'> | null, stage: Stage | null, now: Read): Omit<After, 'as'> | null {
  const tin = vesselAt(steps, at);
  if (tin === null) {
    const glass = cut?.reading.glass ?? null;
    return cut === null || glass === null || !(glass.washline_mm > 0) ? null : { pressure: null, state: { kind: 'glass', glass, slush: holdsIce(cut.reading) } };
  }
  // A build for several is read as one of them; what is in the tin is only known from its own stage.
  const mL = stage?.figures['volume']?.value ?? (now.document.serves === 1 ? cut?.reading.figures['volume']?.value : undefined), ice_g = stage?.figures['ice_left']?.value ?? 0;
  if (mL === undefined || !Number.isFinite(mL)) return null;
  const like = (cut ?? now).reading.glass?.layers.find((l) => l.kind === 'liquid') ?? now.reading.glass?.layers.find((l) => l.kind === 'liquid');
  const mixed = now.reading.stages.map((s) => (s.figures['volume']?.value ?? 0) + (s.figures['ice_left']?.value ?? 0) / 0.917);
  return { pressure: null, state: { kind: 'vessel', vessel: tin, room_mL: Math.max(mL + 250, ...mixed), mL, ice_g, colour: like?.colour ?? '#f4f6f0', turbidity: like?.turbidity ?? 0, strength: stage?.figures['strength']?.value ?? null, bar: null, frozen: stage !== null && holdsIce(stage), set: false } };
}
