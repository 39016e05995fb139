import { reach } from '../numeric/index.ts';
import type { Compiled } from '../program/compile.ts';
import type { Input } from '../program/inputs.ts';
import { absentOf } from './absent.ts';
import type { Askable } from './asked.ts';
import { figureOf } from './figure.ts';
import { narrowOf } from './narrow.ts';
import { place } from './place.ts';
import { partAt, type Spreads } from './spread.ts';
import type { Why, WhyInput } from './types.ts';

/** Inputs with a smaller share of the variance are told together. */
const SEEN = 0.0005;

/**
 * Why a figure or margin is what it is: its method and the inputs it hangs on, down to the rows of tables, and what would narrow it most. Where there is
 * no number, why not.
 * @param a what is asked, out of `askables`
 * @param whole as the spreads were made
 * @returns inputs with at least a twentieth of a per cent of the variance, the most telling first; `rest` is the share of all others
 * @source none - definition
 */
export function whyOf(c: Compiled, s: Spreads, a: Askable, whole = true): Why {
  const k = a.probe;
  const told = { figure: a.name, of: a.of, ...(a.code === undefined ? {} : { code: a.code }), ...(a.through === undefined ? {} : { through: a.through }) };
  if (k < 0 || !Number.isFinite(s.value[k]!)) return { ...told, method: k < 0 ? '' : c.program.probes[k]!.method, sources: [], inputs: [], rest: 0, narrow: [], absent: absentOf(c, a) };
  const row = k * c.program.inputs.length, all = s.variance[k]!;
  const { value, unit, low, high, grade, method, sources } = figureOf(c, s, k);
  const inputs = c.program.inputs.map((input, i) => inputOf(c, input, s.down[row + i]!, s.up[row + i]!, all > 0 ? partAt(s, row + i) / all : 0))
    .filter((i) => i.share > SEEN).sort((x, y) => y.share - x.share);
  return { ...told, value, unit, low, high, grade, method, sources, inputs, rest: all > 0 ? Math.max(0, 1 - inputs.reduce((t, i) => t + i.share, 0)) : 0, narrow: narrowOf(c, s, k, whole) };
}

function inputOf(c: Compiled, input: Input, down: number, up: number, share: number): WhyInput {
  const { low, high } = reach(input.spread, input.value);
  const { key, value, unit, grade, source, role, row, from, at } = input;
  return {
    key, value, unit, low, high, grade, source, role, row, ...(from === undefined ? {} : { from, ...originOf(c, from) }), where: place(c.ctx.document, at ?? []),
    slope: high > low ? (up - down) / (high - low) : 0, share, ...(input.assumed && role !== 'model' && input.assumed.say !== '' ? { say: input.assumed.say } : {}),
  };
}

/** The cell of the larder a nominal value stands in. */
function originOf(c: Compiled, from: string): Pick<WhyInput, 'origin'> {
  const [table, id = '', column = ''] = from.split(' ');
  const cell = table === 'ingredients' || table === 'craft' ? c.ctx.tables.ingredient(id)?.cells[column] : undefined;
  return cell ? { origin: { value: cell.value, grade: cell.grade, source: cell.source } } : {};
}
