import type { Cell, Grade, Ingredient } from '@washline/engine';

/** The columns of the larder's packed rows and the pairs "grade source" its numbers point to. */
export interface LarderSheet { readonly numbers: readonly string[]; readonly texts: readonly string[]; readonly provenance: readonly Cell[] }

const yesNoCheck = (text: string | undefined): 'yes' | 'no' | 'check' => (text === 'yes' || text === 'no' ? text : 'check');
const list = (text: string | undefined): readonly string[] => (text ? text.split(/[;, ]+/).filter(Boolean) : []);

/** "grade source" as a cell without its value. @source none - definition */
export function provenance(pair: string): Cell {
  const at = pair.indexOf(' ');
  return { value: NaN, grade: pair.slice(0, at) as Grade, source: pair.slice(at + 1) };
}

/** Which provenance each number has: the first code is the row's, `column:code` the exceptions, both in base 36. */
function codes(text: string): { readonly whole: number; readonly others: ReadonlyMap<number, number> } {
  const [whole = '0', ...others] = text.split(' ');
  return { whole: parseInt(whole, 36), others: new Map(others.map((part) => part.split(':').map((code) => parseInt(code, 36)) as [number, number])) };
}

/** One packed row taken apart. @source none - definition */
export function ingredientOf(line: string, sheet: LarderSheet): Ingredient {
  const cells = line.split('\t');
  const [id = '', name = '', category = ''] = cells;
  const where = codes(cells.at(-1) ?? '0');
  const numbers: Record<string, Cell | undefined> = {};
  sheet.numbers.forEach((column, i) => {
    const written = cells[3 + i];
    if (!written) return;
    const from = sheet.provenance[where.others.get(i) ?? where.whole];
    if (from) numbers[column] = { value: Number(written), grade: from.grade, source: from.source };
  });
  const texts: Record<string, string | undefined> = {};
  sheet.texts.forEach((column, i) => {
    const written = cells[3 + sheet.numbers.length + i];
    if (written) texts[column] = written;
  });
  return {
    id, name, category, cells: numbers, text: texts,
    acidsInCarb: texts['acids_in_carb'] !== 'no',
    vegan: yesNoCheck(texts['vegan']), vegetarian: yesNoCheck(texts['vegetarian']),
    allergens: list(texts['allergens_eu']).map((group) => ({ group: group.replace(/\?$/, ''), certain: !group.endsWith('?') })),
    hazards: list(texts['hazards']),
  };
}
