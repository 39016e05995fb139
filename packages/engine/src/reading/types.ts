import type { Path, Span, Splice } from '../document/types.ts';
import type { Grade, SourceKey } from '../provenance/types.ts';
import type { Role } from '../program/inputs.ts';

/** A figure as shown: nominal value, 95 % range, grade, method and sources. Unrounded. */
export interface Figure {
  readonly value: number; readonly unit: string; readonly low: number; readonly high: number; readonly skewed: boolean;
  readonly grade: Grade; readonly method: string; readonly sources: readonly SourceKey[];
}
export type FigureName = 'strength' | 'volume' | 'mass' | 'ethanol' | 'sugar' | 'acidity' | 'ph' | 'density' | 'brix' | 'temperature' | 'dilution' | 'energy' | 'cost';
/** Preps and stages carry further names: `pressure`, `overrun`, `foam_volume`, `dose`, `meeting_temperature`, `ice_left`, `freezing_point`, `frozen` … */
export type Figures = Readonly<Record<string, Figure>>;

export interface Balance { readonly drink: number; readonly melt: number; readonly ice: number; readonly vessel: number; readonly air: number; readonly mixing: number }
export interface Stage { readonly step: string; readonly path: Path; readonly figures: Figures; readonly balance_kJ?: Balance }
export interface PrepReading {
  readonly name: string; readonly method: string; readonly figures: Figures; readonly yield: Figure; readonly ready_after: string; readonly stages: readonly Stage[];
  /** what the finished liquid looks like through 10 mm, #rrggbb, and how cloudy (0 clear … 3 opaque) */
  readonly colour: string; readonly turbidity: number;
  /** for the drawing: vessel kind and what stands in it bottom to top, in mL */
  readonly vessel: 'jar' | 'bottle' | 'pan' | 'siphon' | 'tray' | 'freezer box';
  /** names of preps it takes from, with the amount in mL */
  readonly takes: readonly { readonly prep: string; readonly mL: number }[];
  /** of a prep under pressure */
  readonly gas?: PrepGas;
  /** of a prep that was strained */
  readonly cloth?: Cloth;
  /** of a prep that comes out of a freezer partly as ice */
  readonly frozen?: Frozen;
}
/** Of its water so much is ice, %; with that it pours, is slush, or does not pour at all. Its other figures are those of the whole, thawed. */
export interface Frozen { readonly ice: Figure; readonly state: 'pours' | 'slush' | 'solid' }
/** Pressure on the gauge in bar and the temperature it is told at: of a siphon at rest, of a carbonated liquid while it takes up its gas, of a closed bottle after its last step. Not a safety calculation: the makers' limits go first. */
export interface PrepGas {
  readonly kind: 'N2O' | 'CO2'; readonly pressure: Figure; readonly temperature: Figure;
  /** it stands in a bottle that was closed */
  readonly closed?: true;
  readonly siphon?: {
    readonly chargers: Figure; readonly gas: Figure;
    /** mL: what it holds to the brim, how full it is, what is free above */
    readonly gross: Figure; readonly fill: Figure; readonly headspace: Figure;
    /** bar as it is charged, and at which °C */
    readonly charged: Figure; readonly charged_at: Figure;
  };
}
/** What the cloths, papers and sieves of a prep hold in g: solids, and the liquid in them. */
export interface Cloth {
  readonly mass: Figure; readonly solids: Figure; readonly liquid: Figure;
  /** of the solids, where there is any */
  readonly casein?: Figure; readonly fat?: Figure;
  /** of a milk, what is in the clear liquid: it is milk for an allergy */
  readonly passed?: { readonly whey: Figure; readonly lactose: Figure };
  /** g: what was put in = what is kept + cloth + boiled off + what was never strained off */
  readonly balance_g: { readonly in: number; readonly kept: number; readonly cloth: number; readonly boiled_off: number; readonly left_in: number };
}
export interface Layer { readonly name: string; readonly kind: 'liquid' | 'foam' | 'gel'; readonly from_mm: number; readonly to_mm: number; readonly colour: string; readonly turbidity: number; readonly mL: number; readonly strength: number | null }
export interface GlassIce { readonly kind: string; readonly count: number; readonly mass_g: number; readonly size_mm: number | null; readonly clear: boolean; readonly from_mm: number; readonly to_mm: number }
export interface GlassReading {
  /** `washline_mm`: top of liquid and foam with the ice in them; `liquid_mm`: the level under the foam; `top_mm`: the highest point, ice that stands out included */
  readonly name: string; readonly brim_mL: number; readonly washline_mm: number; readonly liquid_mm: number; readonly top_mm: number;
  /** inner radius by height, [mm, mm] from the floor up to the brim; above the brim it goes on as a cylinder */
  readonly profile: readonly (readonly [number, number])[];
  /** outer dimensions for the drawing */
  readonly base_mm: number; readonly wall_mm: number; readonly stem_mm: number; readonly foot_mm: number;
  readonly layers: readonly Layer[]; readonly ice: readonly GlassIce[];
  readonly garnish: readonly string[];
  readonly washline: Figure;
  /** a foam that did not set, and the level it would have stood at */
  readonly unset?: { readonly name: string; readonly washline_mm: number };
}
export interface Allergen { readonly group: string; readonly from: Path; readonly certain: boolean; readonly hidden: boolean }
export interface Assumed { readonly key: string; readonly value: number | string; readonly unit: string; readonly low: number | null; readonly high: number | null; readonly grade: Grade; readonly source: SourceKey; readonly where: Place; readonly say: string; /** puts the words in, wherever they are wanted: what is assumed there is then written */ readonly splices: readonly Splice[] }
export interface Place { readonly path: Path; readonly span?: Span; readonly line?: number; readonly column?: number; readonly file?: string }

export type Severity = 'stop' | 'warn' | 'note';
export interface Margin { readonly value: number; readonly low: number; readonly high: number; readonly unit: string }
/** What the engine says of a limit: numbers and keys; the sentence is in `messages/`. */
export interface Finding {
  readonly code: string; readonly severity: Severity; readonly where: Place;
  readonly margin?: Margin; readonly odds?: number;
  /** fill the sentence `finding.<code>.<severity>`, else `finding.<code>` */
  readonly words: Readonly<Record<string, string | number>>;
  /** `remedy.<key>` is the sentence; each splice inserts the filled text of `remedy.<key>.<n>` or, with `literal`, the text itself */
  readonly remedy?: { readonly key: string; readonly words: Readonly<Record<string, string | number>>; readonly splices: readonly { readonly from: number; readonly to: number; readonly key?: string; readonly literal?: string }[] };
  readonly sources: readonly SourceKey[];
  /** why it was knowingly accepted, as the spec says; a stop about harm that is accepted carries it and stays */
  readonly reason?: string;
}
/** A value that a bench or a shelf had a say in: where it was taken from, and what was passed over. */
export interface Taken {
  readonly key: string; readonly from: 'line' | 'bench' | 'spec' | 'table'; readonly value: number | string; readonly unit: string; readonly low?: number; readonly high?: number;
  readonly over?: readonly { readonly from: 'line' | 'bench' | 'spec' | 'table'; readonly value: number | string }[];
}
/** The cost of the priced lines in whole coins, `digits` of them behind the point; `unpriced` are those it does not hold. */
export interface Cost {
  readonly currency: string; readonly digits: number; readonly assumed: boolean;
  readonly coins: number; readonly low: number; readonly high: number;
  /** some lines have no price, so that it is at least this */
  readonly partial: boolean;
  /** `currency`: it has a price, but in another currency */
  readonly unpriced: readonly { readonly path: Path; readonly thing: string; readonly currency?: string }[];
}
/** One input a figure hangs on. `row`: where its width stands; `from`: where its value stands, with the cell itself (`origin`); `slope`: figure per unit of the input, over its range. */
export interface WhyInput {
  readonly key: string; readonly value: number; readonly unit: string; readonly low: number; readonly high: number; readonly grade: Grade; readonly source: SourceKey;
  readonly role: Role; readonly row: string; readonly from?: string; readonly origin?: { readonly value: number; readonly grade: Grade; readonly source: SourceKey };
  readonly where: Place; readonly slope: number; readonly share: number;
  /** set where nothing was written: the words that would replace it */
  readonly say?: string;
}
/** What is left of a figure's range when one input is known exactly; `by`: the share of its width that goes. */
export interface Narrow { readonly key: string; readonly low: number; readonly high: number; readonly by: number; readonly role: Role; readonly say: string }
/** Why there is no number: the sentence is `absent.<code>` in the messages; `share` of the mass that is not known. */
export interface Absent { readonly code: string; readonly things: readonly string[]; readonly share?: number }
export interface Why {
  readonly figure: string; readonly of: string;
  /** a limit: its code; `through`: the figure that reading a line otherwise would move, whose inputs these are */
  readonly code?: string; readonly through?: string;
  readonly value?: number; readonly unit?: string; readonly low?: number; readonly high?: number; readonly grade?: Grade;
  readonly method: string; readonly sources: readonly SourceKey[]; readonly inputs: readonly WhyInput[];
  /** share of the variance of all inputs that are not listed */
  readonly rest: number;
  readonly narrow: readonly Narrow[];
  readonly absent?: Absent;
}

export interface Reading {
  readonly drink: string; readonly variant: string | null; readonly partial: boolean;
  readonly figures: Figures; readonly stages: readonly Stage[]; readonly preps: Readonly<Record<string, PrepReading>>;
  readonly glass: GlassReading | null;
  /** empty where the ethanol is not known */
  readonly standard_drinks: Readonly<Partial<Record<'US' | 'UK' | 'AU', number>>>;
  readonly allergens: readonly Allergen[];
  readonly vegan: boolean; readonly vegetarian: boolean;
  /** lines that keep it from being vegan or vegetarian, or leave it open */
  readonly diet: readonly { readonly path: Path; readonly vegan: 'no' | 'check'; readonly vegetarian: 'yes' | 'no' | 'check' }[];
  readonly assumed: readonly Assumed[]; readonly findings: readonly Finding[]; readonly accepted: readonly Finding[];
  /** where values came from that a bench or a shelf had a say in; empty where neither had */
  readonly taken?: readonly Taken[];
  readonly cost?: Cost;
  /** what volumes are shown in, where the bench says so */
  readonly shows?: 'ml' | 'oz';
  /** the drink left alone in its glass, so many minutes after it was poured: where it was asked for */
  readonly later?: readonly { readonly minutes: number; readonly figures: Figures; /** the glass as it stands then, where every minute was asked for */ readonly glass?: GlassReading }[];
  /** one for one figure asked, several in order for several */
  readonly why?: Why | readonly Why[];
}
