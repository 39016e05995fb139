import type { Document, Measure, Path, Section, Step } from '../document/types.ts';
import type { Ingredient, Tables } from '../larder/types.ts';
import type { Figure } from '../reading/types.ts';
import { InputBook, type Role, assumed, spreadAbout } from './inputs.ts';
import { Layout, type Content } from './layout.ts';
import type { Op, Probe, ProbeOp } from './program.ts';
import type { Start } from './temperature.ts';

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
export interface Put { readonly measure: Measure; readonly source: Source; readonly g: number; readonly start: Start; readonly occurrence: string; readonly share: boolean }

/** A content with what is asked of it while it is made: its temperature guess and the warmest it has been. */
export interface Vat { readonly content: Content; readonly liquid: number; readonly celsius: number; readonly hottest: number }

/** A prep as compiled: what is left of it, what was taken, how long it takes. */
export interface PrepBuilt {
  readonly name: string;
  readonly section: Section;
  readonly content: Content;
  readonly used_g: number;                                    // offset
  readonly yield_g: number;                                   // offset
  readonly rest_C: number;                                    // offset
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
  /** margin (negative) from which a code with degrees warns at its nominal value */
  readonly warnFrom?: number;
}

/** More operations than any program has. */
const LATE = 1 << 30;

/** What compiling carries along. */
export class Context {
  readonly document: Document;
  readonly tables: Tables;
  readonly sections: readonly Section[];
  readonly layout = new Layout();
  readonly ops: Op[] = [];
  readonly book = new InputBook(() => this.ops.length);
  readonly probes: { probe: Probe; op: ProbeOp }[] = [];
  readonly margins: MarginSeed[] = [];
  readonly preps = new Map<string, PrepBuilt>();
  readonly sources = new Map<string, Source>();
  readonly unknown: { readonly measure: Measure; readonly why: 'ingredient-unknown' | 'strength-unknown' | 'prep-missing' | 'measure-vague' }[] = [];
  /** block into which everything goes that is strained off, boiled off or left behind; closes the mass balance */
  readonly lost: number;
  /** water that steps bring along (soaked sheets, ice that melted): offsets of blocks, with their sign */
  readonly extras: (readonly [number, number])[] = [];
  /** liquids to which something was added since their temperature was last worked out */
  readonly unsettled = new Set<number>();
  /** liquids whose solids have given what they give */
  readonly extracted = new Set<number>();
  readonly scratch: number;

  constructor(document: Document, tables: Tables, sections: readonly Section[], block: number) {
    this.document = document;
    this.tables = tables;
    this.sections = sections;
    this.lost = this.layout.take(block);
    this.scratch = this.layout.take(block);
  }

  /** An input with a spread row of the table; `exact` where the table has none and `need` is false. */
  spread(key: string, row: string, value: number, unit: string, role: Role, more: { at?: Path; grade?: Figure['grade']; source?: string; bounds?: { min?: number; max?: number } } = {}): number {
    const r = this.tables.spread(row);
    if (!r) throw new Error(`no spread row ${row}`);
    const spread = { ...spreadAbout(r, value), ...more.bounds };
    return this.book.add({ key, value, unit, spread, grade: more.grade ?? r.grade, source: more.source ?? r.source, role, ...(more.at ? { at: more.at } : {}) });
  }

  /** An input from the table of assumptions, shared by its key. */
  assume(key: string, at: Path, role: Role = 'nature', inputKey = key): number {
    const row = this.tables.assumption(key);
    if (!row) throw new Error(`no assumption ${key}`);
    return this.book.add(assumed(inputKey, row, role, at));
  }

  /** What a stage's account of heat stands at, by the stage's name: drink, melt, ice, vessel, air, mixing in kJ. */
  readonly balances = new Map<string, number>();

  /** Names a number of the reading. `late`: it reads inputs, or what later operations still change. */
  probe(name: string, of: string, unit: string, method: string, sources: readonly string[], op: ProbeOp, late = false): void {
    this.probes.push({ probe: { name, of, unit, method, sources, after: late ? LATE : this.ops.length }, op });
  }
}
