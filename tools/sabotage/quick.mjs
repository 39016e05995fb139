// Cells of the sheets against print and against what cannot be, row by row: the functions of tests/print that its tests run over every row.
import { bundle } from './bundle.mjs';
import { NUMBER } from './numbers.mjs';
import { exportsOf } from './sandbox.mjs';

const CELLS = 'tests/print/cells';
const WORDS = 'tests/print/words';

/** What notices a shifted cell at once; null where print has nothing to say of it. */
export async function quick() {
  const { differs, impossible, impossibleCraft } = exportsOf(await bundle(`${CELLS}.ts`));
  const { differsFromUnits, impossibleWord, outOfOrder } = exportsOf(await bundle(`${WORDS}.ts`));
  /** What each test asks of a row, by sheet. */
  const asked = {
    'larder/ingredients.tsv': [[CELLS, impossible]], 'larder/craft.tsv': [[CELLS, impossibleCraft]], 'assumptions.tsv': [[WORDS, outOfOrder]],
    'vocabulary/words.tsv': [[WORDS, impossibleWord]], 'vocabulary/units.tsv': [[WORDS, differsFromUnits]],
  };
  return (number, by) => {
    if (!number.row) return null;
    const name = number.file.replace(/^data\//, '');
    let part = 0;
    const cell = number.row[number.column].replace(NUMBER, (written) => (part++ === number.part ? String(Number((number.value + by).toPrecision(15))) : written));
    const row = { ...number.row, [number.column]: cell };
    for (const [test, of] of [[CELLS, (one) => differs(name, one)], ...(asked[name] ?? [])]) {
      const said = of(row)[0];
      if (said) return { file: `${test}.test.ts`, test: name, said };
    }
    return null;
  };
}
