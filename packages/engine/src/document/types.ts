/**
 * What was written, as the engine takes it: sections of lines, each action with its place in the text.
 * `spec` makes it from text; nothing here is computed and nothing is a sentence.
 */

/** Offsets in UTF-16 code units into the decoded text with its byte order mark; `to` is past the end. */
export interface Span { readonly from: number; readonly to: number }

/** Where a thing stands in a spec: `['build', 4]`, `['preps', 'pineapple cloud', 2]`, with a third number for a later action of one line. */
export type Path = readonly (string | number)[];

/** Keys of `data/vocabulary/units.tsv`, column `unit` (`ml`, `oz`, `barspoon`, `piece`, `sheet` …). */
export type UnitKey = string;
/** Keys of `data/vocabulary/verbs.tsv`, column `verb` as the engine names them: the first word of the action (`stir`, `shake`, `strain`, `hold` …). */
export type Verb = string;
/** METHODS of the contract, in English: `mix`, `fat wash`, `siphon foam` … */
export type Method = string;
/** An id of the larder. */
export type LarderId = string;

/** A written amount. `low` = `high` unless a range was written; words such as "scant" widen it through `factorLow`, `factorHigh`. */
export interface Amount {
  readonly low: number;
  readonly high: number;
  readonly unit: UnitKey | null;
  /** the system settled on when a unit has several (`us`, `uk`, `au`, `metric`, `us-1910`), and whether that was assumed */
  readonly system?: string;
  readonly systemAssumed?: boolean;
  readonly factorLow?: number;
  readonly factorHigh?: number;
  /** "1.500 l", "1,000 ml": the other custom of writing numbers reads a thousand times more or less */
  readonly otherCustom?: boolean;
  /** the number or numbers alone, as one span: what a drag or a remedy overwrites */
  readonly number: Span;
  readonly unitSpan?: Span;
  /** a size of one: "1 (14 oz) can" */
  readonly each?: boolean;
  /** a second writing of the same amount, in brackets or after a slash */
  readonly twin?: Amount;
  /** "1 oz + 1 barspoon": added amounts */
  readonly plus?: readonly Amount[];
}

/** A share of other lines: `0.8 % gelatin`, `agar, 2 g per kg of juice`, `sugar, same weight as the juice`, `50 g/L citric acid`. */
export interface Share {
  readonly value: number;
  /** `mass`: g per g of the others; `mass of whole`: g per g of everything; `g per L`: g per litre of the others; `volume`: ml per ml */
  readonly basis: 'mass' | 'mass of whole' | 'g per L' | 'volume';
  /** what it is a share of; absent: every other line of the section */
  readonly of?: readonly Thing[];
  readonly number: Span;
}

/** What a line is about. Exactly one link. */
export interface Thing {
  /** the words as understood, treatments taken off, in the spelling of the text */
  readonly words: string;
  readonly span: Span;
  readonly link:
    | { readonly kind: 'prep'; readonly prep: string }                                   // the prep's printed name, lower case
    | { readonly kind: 'shelf'; readonly shelf: string; readonly larder: LarderId | null }
    | { readonly kind: 'larder'; readonly id: LarderId; readonly assumed: boolean; readonly others: readonly LarderId[]; /** the name that means nothing else, where the written one may */ readonly name?: string }
    | { readonly kind: 'unknown'; readonly nearest: readonly { readonly id: LarderId; readonly name: string }[] };
}

/** Keys of `data/vocabulary/words.tsv`, group `treatment` (`fresh`, `canned`, `strained`, `melted`, `soaked` …). */
export interface Treatment { readonly key: string; readonly span: Span; readonly seconds?: number; readonly celsius?: number }

export interface Temperature { readonly celsius: number; readonly word?: string; readonly span: Span }

export interface Ratio { readonly a: number; readonly b: number; readonly by: 'weight' | 'volume'; readonly byWritten: boolean; readonly span: Span }

interface At { readonly path: Path; readonly span: Span }

/** One thing put in: `60 ml white rum 40 %`. */
export interface Measure extends At {
  readonly kind: 'measure';
  readonly amount: Amount | null;
  readonly share?: Share;
  /** `all`: "all of the cloud"; `rest`: "the rest of the syrup"; a number: "2/3 of the tea" */
  readonly portion?: 'all' | 'rest' | number;
  readonly thing: Thing;
  readonly strength?: { readonly value: number; readonly span: Span };                   // % vol
  /** "saline 20 %", "lime acid 6 %": per cent by weight */
  readonly concentration?: { readonly value: number; readonly span: Span };
  readonly ratio?: Ratio;
  /** quinine as the label states it, mg per kg: "tonic cordial, quinine 250 mg/kg" */
  readonly quinine?: { readonly value: number; readonly span: Span };
  readonly treatments: readonly Treatment[];
  readonly temperature?: Temperature;
  /** "held 5 min at 85 °C" */
  readonly held?: { readonly seconds: number; readonly celsius: number; readonly span: Span };
  /** the liquid it goes in with: "0.75 g agar in 75 ml water", "dispersed in 40 ml water at 85 °C"; its path is the line's */
  readonly carrier?: Measure;
  readonly alternatives?: readonly Thing[];
  readonly optional: boolean;
}

/** A fact of the kitchen or of a fruit that the head gives: `room: 22 °C`, `a lime gives: 28 ml`; `key` is that of the assumption it replaces, the value in mL, g, °C, kPa, or a share. */
export interface Given { readonly key: string; readonly value: number; readonly span: Span; readonly line: number }

export interface IceWritten {
  readonly kind: 'cubes' | 'crushed' | 'pebble' | 'block' | 'sphere' | 'spear' | 'cracked' | 'large cube' | 'shaved';
  readonly mass?: Amount;
  readonly count?: number;
  readonly size_mm?: number;
  readonly clear?: boolean;
  /** "dry cubes" have no water on them, "wet ice" has */
  readonly wet?: boolean;
  readonly temperature?: Temperature;
  readonly span: Span;
  /** the words of its kind alone */
  readonly named?: Span;
}

/** "top with 90 ml soda", "float 10 ml rum": a measure with a way in. */
export interface Fill extends At {
  readonly kind: 'fill';
  readonly verb: Verb;                                                                   // top, fill, float, lengthen, crown, sink
  readonly measure: Measure | null;                                                      // null: "fill with ice" (see ice)
  readonly ice?: IceWritten;
  /** "top with the tonic": the measure above that is poured here, and of which `measure` is no other */
  readonly again?: Path;
  /** the glass or vessel that ice is put into, where it is named */
  readonly into?: { readonly key: string; readonly span: Span };                         // group `glass` of words.tsv
}

/** Something done. Every number of the line is in one of these fields. */
export interface Step extends At {
  readonly kind: 'step';
  readonly verb: Verb;
  readonly seconds?: { readonly low: number; readonly high: number; readonly span: Span; readonly word?: string };
  readonly temperature?: Temperature;
  readonly times?: number;                                                               // strokes, turns, passes
  readonly ice?: IceWritten;                                                             // "over 200 g cubes at -5 °C"
  readonly through?: { readonly key: string; readonly times: number; readonly span: Span };   // group `sieve` of words.tsv
  readonly into?: { readonly key: string; readonly span: Span };                         // group `glass` of words.tsv
  readonly vessel_mL?: { readonly value: number; readonly span: Span };                  // "a 500 ml siphon"
  readonly gas?: { readonly kind: 'N2O' | 'CO2'; readonly chargers?: number; readonly span: Span };
  readonly pressure_kPa?: { readonly value: number; readonly absolute: boolean; readonly span: Span };
  /** a spin: times the earth's pull, or turns a minute */
  readonly speed?: { readonly value: number; readonly unit: 'g' | 'rpm'; readonly span: Span };
  /** "reduce to 200 ml", "reduce by a third" (share kept), "cool to 20 °C" is `temperature` */
  readonly to?: { readonly amount: Amount } | { readonly share: number; readonly span: Span };
  /** "dilute with 100 ml water", "return the first 200 ml over the curd", "float" of matter */
  readonly measure?: Measure;
  /** "add the rum": the measure above that is poured here */
  readonly again?: Path;
  readonly flags: readonly ('dry' | 'covered' | 'closed' | 'fine' | 'double' | 'chilled' | 'hard' | 'first' | 'frozen')[];
}

export interface Garnish extends At { readonly kind: 'garnish'; readonly thing: Thing; readonly amount: Amount | null }
export interface Note extends At { readonly kind: 'note' }
/** Not understood; a problem stands at its column. */
export interface Unread extends At { readonly kind: 'unread' }

export type Action = Measure | Fill | Step | Garnish;

/** One line of the text that holds something; notes have no path of their own (the path of the line above them). */
export interface Line {
  readonly path: Path;
  readonly line: number;                                                                 // from 1
  readonly span: Span;
  readonly text: string;
  readonly actions: readonly Action[];
  readonly kind: 'measure' | 'fill' | 'step' | 'garnish' | 'note' | 'unread';
}

/** A price is `minor` of the smallest coin for `per_mL` or `per_g`: 24.00 per 700 ml is 2400 and 700. Without `currency` (ISO 4217) it is in hundredths. `size`: what one bottle or bag holds. */
export interface ShelfEntry { readonly name: string; readonly larder: LarderId | null; readonly strength?: number; readonly price?: { readonly minor: number; readonly per_mL?: number; readonly per_g?: number; readonly currency?: string }; readonly size?: { readonly mL?: number; readonly g?: number }; readonly span: Span }
export interface AcceptEntry { readonly code: string; readonly at: string; readonly reason: string; readonly span: Span }

export interface Section {
  readonly kind: 'build' | 'prep' | 'shelf' | 'accept';
  readonly name: string;                                                                 // printed; '' for the build
  readonly key: string;                                                                  // lower case, how paths and things name it
  readonly variant: string | null;
  readonly method: Method;                                                               // `mix` where none was written
  readonly methodWritten: boolean;
  readonly heading: Span | null;
  readonly headingLine: number | null;
  readonly lines: readonly Line[];
  readonly shelf?: readonly ShelfEntry[];
  readonly accept?: readonly AcceptEntry[];
}

/** A thing wrong with the text, with its place. `code` has a sentence in `messages/`; `numbers` and `words` fill it. */
export interface Problem {
  readonly code: string;
  readonly path: Path | null;
  readonly line: number;
  readonly column: number;
  readonly span: Span;
  readonly words: Readonly<Record<string, string | number>>;
}

export interface Document {
  readonly text: string;
  readonly name: string;
  readonly head: Readonly<Partial<Record<'about' | 'glass' | 'source' | 'serves' | 'measures' | 'language' | 'one' | 'part', { readonly value: string; readonly span: Span; readonly line: number }>>>;
  /** facts the head gives beside its keys */
  readonly given?: readonly Given[];
  /** what `glass:` was understood as: a key of group `glass`, a brim volume, or both */
  readonly glass?: ({ readonly key: string; readonly brim_mL?: number } | { readonly brim_mL: number }) & { readonly cold?: 'chilled' | 'frozen' };
  readonly serves: number;
  readonly sections: readonly Section[];
  readonly variants: readonly string[];
  readonly problems: readonly Problem[];
  /** a limit was passed and not everything was read */
  readonly cut: boolean;
}

/** The only way to change a text: replace [from, to) by `insert`. */
export interface Splice { readonly from: number; readonly to: number; readonly insert: string }
