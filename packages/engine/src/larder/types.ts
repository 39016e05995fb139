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
}
export interface GlassShape { readonly key: string; readonly name: string; readonly profile: readonly (readonly [number, number])[]; readonly base_mm: number; readonly wall_mm: number; readonly stem_mm: number; readonly foot_mm: number; readonly mass_g: number; readonly grade: Grade; readonly source: SourceKey }
export interface UnitRow { readonly unit: string; readonly of: 'ml' | 'g' | 'piece' | 'mm' | 's' | '°C' | '%' | 'kPa' | 'share'; readonly factor: number; readonly low: number; readonly high: number; readonly defined: boolean; readonly source: SourceKey }
