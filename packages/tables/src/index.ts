import type { Tables, UnitRow } from '@washline/engine';
import packedAssumptions from './generated/assumptions.json' with { type: 'json' };
import packedGlasses from './generated/glasses.json' with { type: 'json' };
import packedHazards from './generated/hazards.json' with { type: 'json' };
import packedLarder from './generated/larder.json' with { type: 'json' };
import packedSpreads from './generated/spreads.json' with { type: 'json' };
import packedUnits from './generated/units.json' with { type: 'json' };
import made from './generated/version.json' with { type: 'json' };
import { ingredientOf, provenance } from './ingredient.ts';
import { assumptionOfLine, glassOfLine, hazardOfLine, spreadOfLine } from './others.ts';
import { Rows } from './rows.ts';
import { unitOf, unitTable } from './units.ts';

const pairs = (text: string) => text.split('\n').map(provenance);
const spreadFrom = pairs(packedSpreads.provenance);
const assumedFrom = pairs(packedAssumptions.provenance);
const sheet = { numbers: packedLarder.numbers.split(' '), texts: packedLarder.texts.split(' '), provenance: pairs(packedLarder.provenance) };

const ingredients = new Rows(packedLarder.rows, (line) => ingredientOf(line, sheet));
const spreads = new Rows(packedSpreads.rows, (line) => spreadOfLine(line, spreadFrom));
const assumptions = new Rows(packedAssumptions.rows, (line) => assumptionOfLine(line, assumedFrom));
const hazards = new Rows(packedHazards.rows, hazardOfLine);
const glasses = new Rows(packedGlasses.rows, glassOfLine);
let units: ReturnType<typeof unitTable> | undefined;
let ids: readonly string[] | undefined;
let assumptionKeys: readonly string[] | undefined;
let spreadKeys: readonly string[] | undefined;
let glassKeys: readonly string[] | undefined;

/** All data the engine looks up. Rows are taken apart when first asked for. */
export const tables: Tables = {
  ingredient: (id) => ingredients.of(id),
  get ids() { return (ids ??= ingredients.keys); },
  spread: (key) => spreads.of(key),
  assumption: (key) => assumptions.of(key),
  hazard: (id) => hazards.of(id),
  glass: (key) => glasses.of(key),
  get glasses() { return (glassKeys ??= glasses.keys); },
  unit: (unit: string, system: string | null): UnitRow | undefined => unitOf((units ??= unitTable(packedUnits.rows)), unit, system),
  version: made.version,
};

/** Every key of the sheets that are looked up by key, for checks and for search. */
export const keys = {
  get assumptions() { return (assumptionKeys ??= assumptions.keys); },
  get spreads() { return (spreadKeys ??= spreads.keys); },
  get glasses() { return (glassKeys ??= glasses.keys); },
  get hazards() { return hazards.keys; },
};
