import type { Document, Measure, Path, Section, Splice, Step } from '../document/types.ts';
import type { Ingredient, Tables } from '../larder/types.ts';
import type { Spread } from '../provenance/types.ts';
import type { Losses } from '../preps/cloth.ts';
import type { Figure } from '../reading/types.ts';
import { givenFor, givenInput } from './given.ts';
import { InputBook, type Input, type Role, type Said, assumed, shareAbout, spreadAbout } from './inputs.ts';
import { Layout, type Content } from './layout.ts';
import { Parts } from './parts.ts';
import { shelvesOf, type Shelves } from './shelf.ts';
import type { Choice } from './meanings.ts';
import { Named, Probe, type Op, type ProbeOp } from './program.ts';
import type { Start } from './temperature.ts';
import { BLOCK } from '../matter/constituents.ts';

/** A thing that can be put in: its make-up for one gram, and where it comes from. */
export interface Source {
  /** offset of a block that holds one gram of it, without enthalpy */
  readonly block: number;
  /** offset of its volume at 20 °C in mL per gram */
  readonly mL: number;
  readonly ingredient?: Ingredient;
  readonly prep?: PrepBuilt;
  readonly form: string;
  /** key of its start temperature in the table of assumptions */
  readonly start: string;
  readonly known: boolean;
}

/** A measure that has become grams: where they stand, of what, how warm. */
export interface Put { readonly measure: Measure; /** offset in the text from which on it is poured: its own, or that of the line below that says so */ readonly from: number; readonly source: Source; readonly g: number; readonly start: Start; readonly occurrence: string; readonly share: boolean; /** as it is written, mL or g, where it is written */ readonly nominal?: number }

/** A content with what is asked of it while it is made: its temperature guess and the warmest it has been. */
export interface Vat { readonly content: Content; readonly liquid: number; readonly celsius: number; readonly hottest: number; /** offset: g of its own water that is ice */ readonly ownIce: number }

/** A solid that steeps in a prep: how many times as long as tea leaf it takes, and the offsets of the share that is out and of the contact a tea leaf had in its place. */
export interface Steeped { readonly put: Put; readonly slower: number; readonly reached: number; readonly contact: number }

/** A prep as compiled: what is left of it, what was taken, how long it takes. */
export interface PrepBuilt {
  readonly name: string;
  readonly section: Section;
  readonly content: Content;
  readonly used_g: number;                                    // offset
  readonly yield_g: number;                                   // offset
  readonly rest_C: number;                                    // offset
  readonly ice?: number;                                      // offset: g of ice in a gram of it, where it may be partly frozen
  readonly mL: number;                                        // offset: what it gives, at 20 °C
  readonly seconds: number;                                   // active and waiting, its needs included
  readonly takes: readonly { readonly prep: string; readonly g: number }[];
  readonly stages: StageBuilt[];
  readonly vessel: 'jar' | 'bottle' | 'pan' | 'siphon' | 'tray' | 'freezer box';
  readonly foam: Foam | null;
  readonly gel: boolean;
  readonly puts: readonly Put[];
  readonly steps: readonly Step[];
  readonly vat: Vat;
  readonly sections: readonly Section[];
  /** what decides whether it sets, as margins */
  setting: readonly MarginSeed[];
  readonly noted: Noted;
  readonly steeped: readonly Steeped[];
  /** where went what is not in it any more; `soaked`: blocks of water that soaked sheets brought along */
  readonly losses: Losses;
  readonly soaked: readonly number[];
}
/** What a prep wrote down of itself while it was made, for limits that are judged later: offsets, the steps they are of. */
export interface Noted {
  /** the step that charges with N2O: nominal size in mL, g of gas in all, temperature and mL of the mix as charged */
  charge: { readonly step: Step; readonly nominal_mL: number; readonly gas: (x: Float64Array) => number; readonly celsius: number; readonly mL: number; readonly pressure: ProbeOp; readonly bound: ProbeOp } | null;
  /** steps in a freezer, and being kept where water freezes (null): g of ice that forms, its share of the water in per cent, mL of the liquid at 20 °C, and by how many mL it shrinks until it freezes */
  readonly frozen: { readonly step: Step | null; readonly celsius: number; readonly ice_g: number; readonly share: number; readonly mL: number; readonly shrinks: number }[];
  /** steps on a fire: % vol of the liquid as it comes on it */
  readonly fires: { readonly step: Step; readonly strength: number }[];
  /** the coldest a mix was from when it was last hot on, until something is done with it; 1000 where nothing was put to it */
  coolest: number;
  /** the warmest a wash was with all that is put to it, before its first cloth; -1000 where that was never looked for */
  warmest: number;
  /** does yeast live in it: from its first ferment on, until it was too hot for it */
  live: boolean;
  /** steps in a closed bottle, with the step that closed it: offsets of bar on the gauge at its end, of bar if all went on in the room, of the °C, and of the share of the gas that is dissolved */
  readonly closed: { readonly step: Step; readonly shut: Step; readonly bar: number; readonly full: number; readonly celsius: number; readonly dissolved: number }[];
}
/** A foam's expansion: offsets of its overrun in per cent of the liquid's volume. */
export interface Foam { readonly overrun: number }
export interface StageBuilt { readonly text: string; readonly path: Path; readonly of: string; readonly balance: boolean }

/** A remedy as splices; inserted text is literal (names, numbers of the spec) or the filled text of a key. */
export interface RemedySeed { readonly key: string; readonly words: Readonly<Record<string, string | number>>; readonly splices: readonly { readonly from: number; readonly to: number; readonly key?: string; readonly literal?: string }[] }

/** A margin to be judged: positive beyond the limit. */
export interface MarginSeed {
  readonly code: string; readonly at: Path; readonly op: ProbeOp; readonly unit: string;
  readonly words: Readonly<Record<string, string | number>>; readonly sources: readonly string[];
  /** numbers of the run to be put into the words */
  readonly live?: Readonly<Record<string, ProbeOp>>;
  readonly remedy?: RemedySeed | ((numbers: Readonly<Record<string, number>>) => RemedySeed | undefined);
  readonly cap?: 'warn' | 'note';
  /** a graver code: where that stops at the same place, this one is silent; its own code: where that says anything there */
  readonly under?: string;
  /** margin (negative) from which a code with degrees warns at its nominal value */
  readonly warnFrom?: number;
}

/** What may be said of an input beside its number and width. */
export interface More { readonly at?: Path; readonly grade?: Figure['grade']; readonly source?: string; readonly from?: string; readonly row?: string; readonly bounds?: { readonly min?: number; readonly max?: number }; readonly assumed?: Said }

/** More operations than any program has. */
const LATE = 1 << 30;

/** What compiling carries along. */
export class Context {
  readonly document: Document;
  readonly tables: Tables;
  readonly sections: readonly Section[];
  readonly shelves: Shelves;
  readonly layout = new Layout();
  readonly ops: Op[] = [];
  /** operations that write down what a stage shows and nothing else reads */
  readonly ofStages = new Set<number>();
  readonly parts = new Parts();
  readonly book = new InputBook(() => this.ops.length, (input) => this.parts.uses(input, this.ops.length));
  readonly probes: Named[] = [];
  readonly margins: MarginSeed[] = [];
  /** readings that were not settled: judged after the run by what the other would move */
  readonly choices: Choice[] = [];
  readonly preps = new Map<string, PrepBuilt>();
  readonly sources = new Map<string, Source>();
  readonly unknown: { readonly measure: Measure; readonly why: 'ingredient-unknown' | 'strength-unknown' | 'prep-missing' | 'measure-vague' }[] = [];
  /** block of the open part into which everything goes that is strained off, boiled off or left behind; with those of the others it closes the mass balance */
  lost = -1;
  readonly losts: number[] = [];
  /** water that steps bring along (soaked sheets, ice that melted): offsets of blocks, with their sign */
  readonly extras: (readonly [number, number])[] = [];
  /** liquids to which something was added since their temperature was last worked out */
  readonly unsettled = new Set<number>();
  /** liquids that something sparkling was poured into, and what was carbonated */
  readonly sparkling = new Set<number>();
  /** liquids that may hold ice of their own */
  readonly frozen = new Set<number>();

  /** by path of a measure that a line below pours: where that line begins */
  readonly poured = new Map<string, number>();

  constructor(document: Document, tables: Tables, sections: readonly Section[]) {
    this.document = document;
    this.tables = tables;
    this.sections = sections;
    for (const a of sections.flatMap((s) => s.lines).flatMap((l) => l.actions)) if ((a.kind === 'fill' || a.kind === 'step') && a.again !== undefined) this.poured.set(a.again.join('/'), a.span.from);
    this.shelves = shelvesOf(sections, tables);
  }

  /** Begins a part of the program: a prep, or the drink. */
  begin(): void {
    this.parts.begin(this.ops.length, this.layout.length, this.probes.length);
    this.lost = this.layout.take(BLOCK);
    this.losts.push(this.lost);
  }
  /** Ends it: what follows is of no part. */
  end(): void { this.parts.end(this.ops.length, this.layout.length, this.probes.length); }

  /** An input about `value`, as wide as a row of the spreads table says. There is no default: a row that is missing is a fault of the tables. */
  spread(key: string, row: string, value: number, unit: string, role: Role, more: More = {}): number {
    const known = more.assumed ? -1 : this.book.at(key);
    if (known >= 0) return known;
    const r = this.rowOf(row);
    return this.put(key, value, unit, role, spreadAbout(r, value), row, r.grade, r.source, more);
  }

  /** An input that is a factor about 1, as wide as a row of the spreads table is about `value`. */
  share(key: string, row: string, value: number, role: Role, more: More = {}): number {
    const r = this.rowOf(row);
    return this.put(key, 1, 'share', role, shareAbout(r, value), row, r.grade, r.source, more);
  }

  /** An input with the middle of a row of absolute ends as its value: a yield, a share that is lost. */
  middle(key: string, row: string, unit: string, role: Role, more: More = {}): number {
    const r = this.rowOf(row);
    if (r.kind !== 'absolute') throw new Error(`spread row ${row} has no ends`);
    return this.put(key, (r.a + r.b) / 2, unit, role, spreadAbout(r, (r.a + r.b) / 2), row, r.grade, r.source, more);
  }

  /** What a line writes as a range: its ends are taken as 95 % points. */
  range(key: string, low: number, high: number, unit: string, role: Role, more: More = {}): number {
    return this.about(key, (low + high) / 2, low, high, unit, role, more);
  }

  /** The same about a value that is not the middle. */
  about(key: string, value: number, low: number, high: number, unit: string, role: Role, more: More = {}): number {
    return this.put(key, value, unit, role, low === high ? { kind: 'exact' } : { kind: 'range', low, high, min: 0 }, 'written', 'trade', 'written', more);
  }

  /** A number that is exact as written: a count. */
  exact(key: string, value: number, unit: string, role: Role, more: More = {}): number {
    return this.put(key, value, unit, role, { kind: 'exact' }, 'written', 'defined', 'written', more);
  }

  /** The pH a row of the larder prints as a band: its ends are 95 % points. */
  band(key: string, low: number, high: number, row: Ingredient, more: More = {}): number {
    const { grade, source } = row.cells['ph_low']!;
    return this.about(key, (low + high) / 2, low, high, 'pH', 'nature', { grade, source, row: `ingredients ${row.id} ph_low..ph_high`, from: `ingredients ${row.id} ph_low..ph_high`, ...more });
  }

  private rowOf(row: string) {
    const r = this.tables.spread(row);
    if (!r) throw new Error(`no spread row ${row}`);
    return r;
  }

  private put(key: string, value: number, unit: string, role: Role, spread: Spread, row: string, grade: Input['grade'], source: string, more: More): number {
    const input: { -readonly [K in keyof Input]: Input[K] } = {
      key, value, unit, spread: more.bounds ? { ...spread, ...more.bounds } : spread, grade: more.grade ?? grade, source: more.source ?? source, role, row: more.row ?? (row === 'written' ? row : `spreads ${row}`),
    };
    if (more.from) input.from = more.from;
    if (more.at) input.at = more.at;
    if (more.assumed) input.assumed = more.assumed;
    return this.book.add(input);
  }

  /** An input from the table of assumptions, shared by its key. `splices`: where the words go that would replace it; without any they are a line of the head. */
  assume(key: string, at: Path, role: Role = 'nature', inputKey = key, splices?: readonly Splice[]): number {
    const row = this.tables.assumption(key);
    if (!row) throw new Error(`no assumption ${key}`);
    // the maker's bench goes before what a card says of its kitchen
    const given = row.source === 'bench' ? undefined : givenFor(this.document, key);
    return this.book.add(given ? givenInput(this.tables, inputKey, key, row, given, role) : assumed(inputKey, row, role, at, key, splices));
  }

  /** What a stage's account of heat stands at, by the stage's name: drink, melt, ice, vessel, air, mixing in kJ. */
  readonly balances = new Map<string, number>();

  /** What computes a number that was named; undefined where nothing was. */
  probed(of: string, name: string): ProbeOp | undefined { return this.probes.find((p) => p.probe.of === of && p.probe.name === name)?.op; }

  /** Names a number of the reading. `late`: it reads inputs, or what later operations still change. */
  probe(name: string, of: string, unit: string, method: string, sources: readonly string[], op: ProbeOp, late = false): void {
    this.probes.push(new Named(new Probe(name, of, unit, method, sources, late ? LATE : this.ops.length), op));
  }
}
