import table from '../../../../data/hands.json' with { type: 'json' };
import type { SpreadRow, Tables } from '../larder/types.ts';
import { type Input, spreadAbout } from '../program/inputs.ts';
import type { Program } from '../program/program.ts';
import type { Spread } from '../provenance/types.ts';

/** A row of a profile: as one of the spreads, for inputs whose width stands in `row`. */
interface Row extends Omit<SpreadRow, 'b'> {
  readonly row: string; readonly b?: number;
  /** the viewer's value, where it is another one than the maker's */
  readonly at?: number;
  /** nobody goes below this share of the value: a dose that a scale can hardly show is still put in */
  readonly least?: number;
}
const PROFILES: Readonly<Record<string, readonly Row[]>> = table.profiles as unknown as Readonly<Record<string, readonly Row[]>>;

/** Kitchens that can be drawn. @source none - definition */
export const KITCHENS: readonly string[] = Object.keys(PROFILES);

/** An input as it lies in a kitchen: as wide as it is there, about the value it has there. */
export type Kitchen = (input: Input) => Input;

/**
 * The kitchen of a profile. An input whose row the profile names is as wide as the profile says. What the maker measured of the own kitchen
 * (a bench, facts in the head of a spec) is as wide about it as where nobody measured. Every other input is as wide as for the maker.
 * @param name one of `KITCHENS`; any other gives the maker's own
 * @source common-practice data/hands.json
 */
export function kitchenOf(name: string, tables: Pick<Tables, 'spread' | 'assumption' | 'under'>): Kitchen {
  const profile = PROFILES[name];
  if (!profile) return (input) => input;
  const rows = new Map(profile.map((r) => [r.row, r])), under = tables.under ?? tables;
  return (input) => {
    const name = nameOf(input), row = rows.get(name);
    if (row?.at !== undefined) return { ...input, value: row.at, spread: bounded(spreadAbout(filled(row), row.at), input.spread) };
    if (input.spread.kind === 'exact') return input;
    const own = name.startsWith('spreads ') ? tables.spread(name.slice('spreads '.length)) : undefined;
    if (row) return { ...input, spread: atLeast(row, about(filled(row), own, input), input.value) };
    const measured = name !== input.row || input.source === 'bench';
    const usual = measured && name.startsWith('assumptions ') ? under.assumption(name.slice('assumptions '.length)) : undefined;
    if (usual && usual.low !== null && usual.high !== null) {
      const off = input.value - Number(usual.value);
      return { ...input, spread: bounded({ kind: 'range', low: usual.low + off, high: usual.high + off }, input.spread) };
    }
    const unmeasured = own?.source === 'bench' ? under.spread(name.slice('spreads '.length)) : undefined;
    return unmeasured ? { ...input, spread: about(unmeasured, own, input) } : input;
  };
}

/**
 * A program whose inputs lie as they do in a kitchen: the same operations, other values and widths.
 * @source none - definition
 */
export function inKitchen(program: Program, kitchen: Kitchen): Program {
  const inputs = program.inputs.map(kitchen);
  return { ...program, inputs, nominal: Float64Array.from(inputs, (i) => i.value) };
}

/** The row an input's width stands in; a fact of the head is told by the assumption it took the place of. */
function nameOf(input: Input): string {
  return input.row.startsWith('spreads given/') && input.at?.[0] === 'head' ? `assumptions ${String(input.at[1])}` : input.row;
}

const filled = (row: Row): SpreadRow => ({ ...row, b: row.b ?? NaN });

/** Held above the share of the value that everybody reaches, where the row knows one. */
function atLeast({ least }: Row, spread: Spread, value: number): Spread {
  return least === undefined ? spread : { ...spread, min: Math.max(spread.min ?? -Infinity, least * value) };
}

/** A row about an input. One in another unit than the input (a mould's mm for grams of ice, °Bx for a factor about 1) makes it as much wider as the row is than the maker's. */
function about(row: SpreadRow, own: SpreadRow | undefined, input: Input): Spread {
  const { spread } = input;
  if (row.unit === input.unit || row.unit === 'share' || row.unit === '%') return bounded(spreadAbout(row, input.value), spread);
  const wider = own && own.kind === row.kind && own.a > 0 ? row.a / own.a : 1;
  if (spread.kind === 'normal') return { ...spread, sd: spread.sd * wider };
  return spread.kind === 'lognormal' ? { ...spread, cv: spread.cv * wider } : spread;
}

/** Ends that an input has whatever its width. */
function bounded(spread: Spread, { min, max }: Spread): Spread {
  return { ...spread, ...(min !== undefined ? { min } : {}), ...(max !== undefined ? { max } : {}) };
}
