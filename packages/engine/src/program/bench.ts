import type { AssumptionRow, Bench, Tables } from '../larder/types.ts';
import { reach } from '../numeric/index.ts';
import { givenFor, givenInput } from './given.ts';

/**
 * Tables that answer from the maker's bench first: everything that looks a value up finds the maker's own, and nothing else need know.
 * @param tables as the data has them
 * @param bench its `values` stand for rows of the assumptions, `spreads` for rows of the spreads, `units` for units, `given` for facts in the words of a head
 * @returns tables with the bench; `under` are those beneath it
 * @source none - definition
 */
export function withBench(tables: Tables, bench: Bench): Tables {
  return {
    ingredient: tables.ingredient, hazard: tables.hazard, glass: tables.glass, version: tables.version,
    get ids() { return tables.ids; },
    get glasses() { return tables.glasses; },
    spread: (key) => bench.spreads.get(key) ?? tables.spread(key),
    assumption: (key) => bench.values.get(key) ?? factOf(tables, bench, key) ?? tables.assumption(key),
    unit: (unit, system) => bench.units.get(unit) ?? tables.unit(unit, system),
    bench, under: tables,
  };
}

function factOf(tables: Tables, bench: Bench, key: string): AssumptionRow | undefined {
  const given = givenFor(bench, key), row = given && tables.assumption(key);
  if (!given || !row) return undefined;
  const { value, spread } = givenInput(tables, key, key, row, given, 'nature');
  return { ...row, value, ...reach(spread, value), grade: 'own', source: 'bench' };
}
