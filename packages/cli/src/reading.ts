import type { Allergen, Assumed, Figures, GlassReading, Margin, Place, PrepReading, Severity, Stage, Why } from '@washline/engine';

/** A Reading as it is printed: the engine's, its findings with their sentences. */
export interface Finding {
  readonly code: string; readonly severity: Severity; readonly where: Place; readonly margin?: Margin; readonly odds?: number; readonly message: string;
  readonly remedy?: { readonly say: string; readonly splices: readonly { readonly from: number; readonly to: number; readonly insert: string }[] };
  readonly sources: readonly string[];
}
export interface Reading {
  readonly drink: string; readonly variant: string | null; readonly partial: boolean; readonly figures: Figures; readonly stages: readonly Stage[];
  readonly preps: Readonly<Record<string, PrepReading>>; readonly glass: GlassReading | null; readonly standard_drinks: Readonly<Record<string, number>>;
  readonly allergens: readonly Allergen[]; readonly vegan: boolean; readonly vegetarian: boolean; readonly assumed: readonly Assumed[];
  readonly findings: readonly Finding[]; readonly accepted: readonly Finding[]; readonly why?: Why;
}
