import type { Given, Section } from '../document/types.ts';
import type { Grade, SourceKey } from '../provenance/types.ts';

/** One value of a row, with how good it is and where it is from. Absent is absent. */
export interface Cell { readonly value: number; readonly grade: Grade; readonly source: SourceKey }

/**
 * One ingredient. Composition per 100 g of the edible part, by the columns of `data/larder/ingredients.tsv` (`water_g`, `sugars_g`,
 * `sucrose_g`, `citric_g`, `abv_pct`, `density_g_ml` …) and of `data/larder/craft.tsv` (`casein_g`, `protease_class`, `aroma` …).
 */
export interface Ingredient {
  readonly id: string;
  readonly name: string;
  readonly category: string;
  readonly cells: Readonly<Record<string, Cell | undefined>>;
  /** text columns of both tables that are filled: `tint`, `whips`, `holds`, `protease`, `heat_treatment`, `allergens_eu`, `hazards`, `note` … */
  readonly text: Readonly<Record<string, string | undefined>>;
  readonly acidsInCarb: boolean;
  readonly vegan: 'yes' | 'no' | 'check';
  readonly vegetarian: 'yes' | 'no' | 'check';
  /** EU groups; `certain` false where the table has a question mark */
  readonly allergens: readonly { readonly group: string; readonly certain: boolean }[];
  readonly hazards: readonly string[];
}

/** One row of `data/spreads.tsv`. `offset`: 95 % points added to the value; `absolute`: 95 % points as they stand; `per cent`: 95 % points in per cent of the value. */
export interface SpreadRow { readonly kind: 'normal sd' | 'lognormal cv' | 'offset' | 'absolute' | 'per cent'; readonly a: number; readonly b: number; readonly unit: string; readonly grade: Grade; readonly source: SourceKey }
/** One row of `data/assumptions.tsv`. */
export interface AssumptionRow { readonly value: number | string; readonly low: number | null; readonly high: number | null; readonly unit: string; readonly grade: Grade; readonly source: SourceKey; readonly say: string }

export interface HazardRow { readonly id: string; readonly agent: string; readonly severity: string; readonly limits: readonly { readonly jurisdiction: string; readonly what: string; readonly value: number | readonly number[] | null; readonly unit: string; readonly source: SourceKey; readonly grade: Grade }[] }

/** Everything the engine looks up; made by the package that owns the data, handed to `compile`. */
export interface Tables {
  readonly ingredient: (id: string) => Ingredient | undefined;
  readonly ids: readonly string[];
  readonly spread: (key: string) => SpreadRow | undefined;
  readonly assumption: (key: string) => AssumptionRow | undefined;
  readonly hazard: (id: string) => HazardRow | undefined;
  /** glass profiles by key of group `glass`: inner radius by height in mm */
  readonly glass: (key: string) => GlassShape | undefined;
  /** keys of all glasses */
  readonly glasses: readonly string[];
  /** a unit's factor to ml, g or pieces in one system (`measures:`), with its range */
  readonly unit: (unit: string, system: string | null) => UnitRow | undefined;
  readonly version: string;
  /** what the maker owns, where a bench was given: these tables answer from it first (see `withBench`) */
  readonly bench?: Bench;
  /** the tables beneath the bench */
  readonly under?: Tables;
}

/** Tools a bench names, in units that never change: what a limit on doses and jiggers asks for. Absent: not said. */
export interface BenchTools {
  /** the least a scale shows, g; null: there is no such scale */
  readonly scale_g?: number | null;
  readonly fineScale_g?: number | null;
  /** sizes a jigger is marked with, mL, and the step between its marks; null: there is none */
  readonly jigger?: { readonly sizes_mL: readonly number[]; readonly step_mL: number | null } | null;
  readonly siphons: readonly { readonly size_mL: number; readonly gross_mL: number | null }[];
}

/** What one maker owns: values that stand for rows of the tables, bottles, tools, and how they count and pay. */
export interface Bench {
  /** by key of `data/assumptions.tsv`; grade `own`, source `bench` */
  readonly values: ReadonlyMap<string, AssumptionRow>;
  /** by key of `data/spreads.tsv`: how well a tool measures */
  readonly spreads: ReadonlyMap<string, SpreadRow>;
  /** by unit: the maker's own bar spoon, dash, drop … */
  readonly units: ReadonlyMap<string, UnitRow>;
  /** further facts, as the head of a spec gives them */
  readonly given: readonly Given[];
  readonly shelf: readonly Section[];
  readonly tools: BenchTools;
  /** ISO 4217 */
  readonly currency: string | null;
  /** ISO 3166, two capitals */
  readonly country: string | null;
  /** what `oz`, `cup` and `tsp` mean where a spec does not say: `us`, `uk`, `au`, `metric`, `us-1910` */
  readonly measures: string | null;
  /** what volumes are shown in */
  readonly shows: 'ml' | 'oz' | null;
  readonly language: string | null;
  /** IANA name */
  readonly zone: string | null;
}
export interface GlassShape { readonly key: string; readonly name: string; readonly profile: readonly (readonly [number, number])[]; readonly base_mm: number; readonly wall_mm: number; readonly stem_mm: number; readonly foot_mm: number; readonly mass_g: number; readonly grade: Grade; readonly source: SourceKey }
export interface UnitRow { readonly unit: string; readonly of: 'ml' | 'g' | 'piece' | 'mm' | 's' | '°C' | '%' | 'kPa' | 'share'; readonly factor: number; readonly low: number; readonly high: number; readonly defined: boolean; readonly source: SourceKey }
