import { actionsOf, ofPart, type Action, type Amount, type Document, type Measure, type PrepReading, type Section } from '@washline/engine';
import type { Reading } from '../reading.ts';
import { amountIn, measureShown, weightIn } from '../pen/units.ts';
import { words } from '../words.ts';

/** The amount of a line as something to take hold of: by its path, as it is written, and of what. */
export interface Grip { readonly path: string; readonly value: number; readonly unit: string; readonly of: string }
/** What is poured from where into what, as the sheet has it. */
export interface Pour { readonly from: string; readonly amount: string; readonly mL: number | null; readonly grip?: Grip | undefined }
/** What is bought, as it is written. */
export interface Bought { readonly text: string; readonly grip?: Grip | undefined }
export interface FlowPrep { readonly key: string; readonly name: string; readonly letter: string; readonly takes: readonly Pour[]; readonly reading: PrepReading | null }
export interface FlowBuild {
  readonly letter: string;
  /** null: built in the glass */
  readonly vessel: 'stirring glass' | 'shaker' | null;
  readonly title: string;
  /** what is in it once it is mixed */
  readonly stage: Reading['stages'][number] | null;
  readonly takes: readonly Pour[];
  readonly bought: readonly Bought[];
  readonly ice: boolean;
}
export interface Flow { readonly preps: readonly FlowPrep[]; readonly build: FlowBuild; readonly glass: { readonly takes: readonly Pour[]; readonly bought: readonly Bought[] } }

const LETTERS = 'ABCDEFGHJKLMNPRTUVWXYZ';

/** The letter of the nth section, from 0; without I, O, Q and S, which read as figures. */
export function letterOf(n: number): string {
  const here = LETTERS[n % LETTERS.length] ?? 'A';
  return n < LETTERS.length ? here : letterOf(Math.floor(n / LETTERS.length) - 1) + here;
}

/** The sections that hold for a variant, in the order of the sheet. */
export function sectionsOf(document: Document, variant: string | null): Section[] {
  return document.sections.filter((s) => (s.kind === 'prep' || s.kind === 'build')
    && (s.variant === variant || (s.variant === null && !document.sections.some((o) => o.variant === variant && variant !== null && o.kind === s.kind && o.key === s.key))));
}

/** `weights`: g of what each line puts in, by its path, for whoever weighs. */
export function flowOf(reading: Reading, document: Document | null, weights?: Readonly<Record<string, number>>): Flow {
  return document === null ? flowOfReading(reading) : flowOfDocument(reading, document, weights);
}

function flowOfReading(reading: Reading): Flow {
  const preps = Object.entries(reading.preps).map(([key, prep], i): FlowPrep => ({
    key, name: prep.name, letter: letterOf(i), reading: prep, takes: prep.takes.map((t) => ({ from: t.prep, amount: measureShown(t.mL), mL: t.mL })),
  }));
  return { preps, build: { letter: letterOf(preps.length), vessel: null, title: '', stage: null, takes: [], bought: [], ice: false }, glass: { takes: [], bought: [] } };
}

function flowOfDocument(reading: Reading, document: Document, weights?: Readonly<Record<string, number>>): Flow {
  const poursOf = (action: Action): Poured[] => measuresIn(action).map(([measure, own]) => ({ measure, text: amountText(measure, document.text, own ? weights?.[measure.path.join('/')] : undefined), grip: own ? gripOf(measure) : undefined }));
  const sections = sectionsOf(document, reading.variant);
  const prepSections = sections.filter((s) => s.kind === 'prep');
  const preps = prepSections.map((section, i): FlowPrep => {
    const own = reading.preps[section.key] ?? null;
    const known = new Map((own?.takes ?? []).map((t) => [t.prep, t.mL]));
    const takes = actionsOf(section.lines).flatMap(poursOf).flatMap((poured) => {
      const pour = pourOf(poured);
      return pour === null || pour.from === section.key ? [] : [{ ...pour, mL: known.get(pour.from) ?? pour.mL }];
    });
    return { key: section.key, name: section.name, letter: letterOf(i), takes, reading: own };
  });
  const actions = sections.filter((s) => s.kind === 'build').flatMap((s) => actionsOf(s.lines));
  const mixing = actions.findIndex((action) => action.kind === 'step' && MIXES[action.verb] !== undefined && !action.flags.includes('dry'));
  const build: { takes: Pour[]; bought: Bought[] } = { takes: [], bought: [] }, glass: { takes: Pour[]; bought: Bought[] } = { takes: [], bought: [] };
  for (const [i, action] of actions.entries()) {
    const into = mixing >= 0 && i < mixing ? build : glass;
    for (const poured of poursOf(action)) {
      const { measure, text, grip } = poured, pour = pourOf(poured);
      if (pour !== null) into.takes.push(pour); else if (measure.amount !== null) into.bought.push({ text: `${text} ${measure.thing.words}`.trim(), grip });
    }
  }
  const mix = mixing >= 0 ? actions[mixing] : undefined;
  const verb = mix?.kind === 'step' ? mix : null;
  const seconds = verb?.seconds === undefined || verb.seconds.word !== undefined ? '' : ` ${Math.round((verb.seconds.low + verb.seconds.high) / 2)} s`;
  return {
    preps, glass,
    build: {
      letter: letterOf(preps.length), vessel: verb === null ? null : MIXES[verb.verb] ?? null, title: verb === null ? '' : words(SAID[verb.verb] ?? verb.verb, {}) + seconds,
      stage: reading.stages.find((s) => s.path.join('/') === verb?.path.join('/')) ?? null, takes: build.takes, bought: build.bought, ice: verb !== null,
    },
  };
}

const MIXES: Readonly<Record<string, 'stirring glass' | 'shaker'>> = { stir: 'stirring glass', shake: 'shaker', throw: 'shaker', roll: 'shaker', whip: 'shaker' };
const SAID: Readonly<Record<string, string>> = { stir: 'stirred', shake: 'shaken', throw: 'thrown', roll: 'rolled', whip: 'whipped' };

/** A measure with its amount as it is lettered, and as something to take hold of. */
interface Poured { readonly measure: Measure; readonly text: string; readonly grip: Grip | undefined }

/** Measures of an action, each with whether its amount is the action's own: a carrier has neither a line nor a weight of its own. */
function measuresIn(action: Action): (readonly [Measure, own: boolean])[] {
  if (action.kind === 'measure') return action.carrier === undefined ? [[action, true]] : [[action, true], [action.carrier, false]];
  if (action.kind === 'fill') return action.measure === null ? [] : [[action.measure, true]];
  if (action.kind === 'step') return action.measure === undefined || ofPart(action) ? [] : [[action.measure, false]];
  return [];
}

/** What can be turned by steps is one amount, alone or a range. */
function gripOf({ path, amount, thing }: Measure): Grip | undefined {
  return amount === null || (amount.plus?.length ?? 0) > 0 ? undefined : { path: path.join('/'), value: (amount.low + amount.high) / 2, unit: amount.unit ?? '', of: thing.words };
}

function pourOf({ measure: { thing: { link }, amount }, text, grip }: Poured): Pour | null {
  return link.kind === 'prep' ? { from: link.prep, amount: text, mL: amount === null ? null : roughly(amount), grip } : null;
}

/** As it is weighed, in the unit chosen, or as it is written. `grams`: of what it puts in, where that is known. */
function amountText({ amount, portion }: Measure, text: string, grams: number | undefined): string {
  if (amount === null) return portion === 'all' ? 'all' : portion === 'rest' ? 'the rest' : '';
  const one = amount.low === amount.high ? weightIn(grams, amount.unit) ?? amountIn(amount.low, amount.unit) : null;
  return one ?? text.slice(amount.number.from, Math.max(amount.number.to, amount.unitSpan?.to ?? 0)).trim();
}

/** For the breadth of a stream only; never shown. */
function roughly(amount: Amount): number | null {
  const middle = (amount.low + amount.high) / 2;
  const factor: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000, oz: 30, g: 1, tsp: 5, tbsp: 15, barspoon: 4, dash: 0.8 };
  const by = amount.unit === null ? undefined : factor[amount.unit];
  return by === undefined ? null : middle * by;
}
