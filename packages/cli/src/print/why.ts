import { placeOfRow, type SaidInput, type SaidWhy } from '@washline/spec';
import { tablesBehind } from '../evidence.ts';
import type { Reading } from '../reader.ts';
import { named, say } from '../sentences.ts';
import { heading } from './heading.ts';
import type { Ink } from './ink.ts';
import { number, withSpread } from './numbers.ts';
import { wrap } from './text.ts';

/** A unit longer than this is said once, with the value. */
const LONG = 12;
/** Inputs with a smaller share are told together; the JSON has all. */
const SHOWN = 0.005;

/** What figures and limits hang on, down to the rows of tables and the print behind them. */
export function printWhy(why: Reading['why'], ink: Ink): string[] {
  if (!why) return [];
  const list: readonly SaidWhy[] = Array.isArray(why) ? why as readonly SaidWhy[] : [why as SaidWhy];
  const lines = list.flatMap((one, at) => [...(at > 0 ? [''] : []), ...oneWhy(one, ink)]);
  return [...heading('why', ink), ...lines, ...print(list)];
}

/** The sources that were named, as printed, each once. */
function print(list: readonly SaidWhy[]): string[] {
  const keys = new Set(list.flatMap((why) => [...(why.model?.sources ?? []), ...shownOf(why).flatMap((input) => [input.source, ...(input.origin ? [input.origin.source] : [])])]));
  const cited = [...keys].flatMap((key) => { const text = tablesBehind().cite(key); return text === undefined ? [] : wrap(`${key}: ${text}`, '    ', '      '); });
  return cited.length === 0 ? [] : [...wrap(say('why.sources'), '  ', '    '), ...cited];
}

const shownOf = (why: SaidWhy): readonly SaidInput[] => why.inputs.filter((input) => input.share >= SHOWN);

function oneWhy(why: SaidWhy, ink: Ink): string[] {
  const method = [
    ...wrap(say('why.method', { says: why.says }), '  ', '    '),
    ...(why.model ? [
      ...wrap(say('why.printed', { source: why.model.sources.join(', ') }), '    ', '      '),
      ...(why.model.data.length > 0 ? wrap(say('why.data', { files: why.model.data.join(', ') }), '    ', '      ') : []),
      ...wrap(say('why.model', { page: why.model.page }), '    ', '      '),
    ] : []),
  ];
  if (why.absent) return [...wrap(say(why.code === undefined ? 'why.absent' : 'why.silent', { figure: why.figure, message: why.absent.message }), '  ', '    ').map(ink.bold), ...(why.method === '' ? [] : method)];
  return [...head(why).map(ink.bold), ...method, ...inputs(why, ink), ...narrow(why, ink)];
}

function head(why: SaidWhy): string[] {
  const { value = 0, low = 0, high = 0, unit = '' } = why;
  const ends = { low: rounded(low, low, high), high: rounded(high, low, high), unit: named(unit) };
  if (why.code !== undefined && why.through === undefined) return wrap(say(value > 0 ? 'why.limit' : 'why.short', { figure: why.figure, value: rounded(Math.abs(value), low, high), ...ends }), '  ', '    ');
  return [
    ...(why.through === undefined ? [] : wrap(say('why.through', { code: why.figure, figure: why.through }), '  ', '    ')),
    ...wrap(say('why.head', { figure: why.through ?? why.figure, value: withSpread({ value, low, high, skewed: false }), unit: named(unit), grade: named(why.grade ?? '') }), '  ', '    '),
    ...(high > low ? wrap(say('why.range', ends), '    ', '      ') : []),
  ];
}

function inputs(why: SaidWhy, ink: Ink): string[] {
  if (why.inputs.length === 0) return wrap(say('why.exact'), '  ', '    ');
  const shown = shownOf(why), others = why.inputs.slice(shown.length);
  const rest = others.reduce((sum, input) => sum + input.share, why.rest);
  return [
    ...wrap(say('why.inputs'), '  ', '    '), ...shown.flatMap((input) => oneInput(input, why.unit ?? '', ink)),
    ...(others.length > 0 ? wrap(say('why.rest', { count: others.length, share: number(Number((rest * 100).toPrecision(2))) }), '         ', '         ') : []),
  ];
}

function oneInput(input: SaidInput, unit: string, ink: Ink): string[] {
  const { because } = tablesBehind();
  const width = placeOfRow(input.row), value = input.from === undefined ? null : placeOfRow(input.from);
  const why = because(input.row);
  const place = input.where.line === undefined ? '' : `; ${say('why.at', { line: input.where.line })}`;
  const slope = slopeOf(input, unit);
  const dim = (text: string): string[] => wrap(text, '         ', '           ').map(ink.dim);
  const cell = input.origin;
  return [
    ...wrap(`${say('why.input', { words: input.words, value: valueOf(input) })}${slope === '' ? '' : `; ${slope}`}`, `${percent(input.share).padStart(6)} % `, '           '),
    ...dim(`${input.source === 'bench' ? say('why.bench') : width ? say('why.row', { file: width.file, row: width.row }) : say('why.written')}${place}; ${say('why.source', { grade: named(input.grade), source: input.source })}`),
    ...(value && (cell || input.from !== input.row) ? dim(cell ? say('why.cell', { file: value.file, row: value.row, value: number(cell.value), grade: named(cell.grade), source: cell.source }) : say('why.from', { file: value.file, row: value.row })) : []),
    ...(why === undefined ? [] : dim(say('why.because', { why }))),
  ];
}

function narrow(why: SaidWhy, ink: Ink): string[] {
  return why.narrow.flatMap((one, at) => {
    const how = one.say === '' ? say('why.do', { do: one.do }) : say('why.write', { say: one.say, do: one.do });
    const words = { words: one.words, low: rounded(one.low, one.low, one.high), high: rounded(one.high, one.low, one.high), unit: named(why.unit ?? ''), by: Math.round(one.by * 100), how };
    const [first = '', ...rest] = wrap(say(one.by > 0.999 ? 'why.narrow.all' : at === 0 ? 'why.narrow' : 'why.narrow.mine', words), '  ', '    ');
    return [ink.bold(first), ...rest];
  });
}

/** A factor about 1 stands on the cell it is of; all else has its number. */
function valueOf(input: SaidInput): string {
  const { value, low, high, unit } = input;
  if (value === 1 && unit === 'share') return say('why.share', { low: rounded(low, low, high), high: rounded(high, low, high) });
  const words = { value: rounded(value, low, high), unit: named(unit), low: rounded(low, low, high), high: rounded(high, low, high) };
  return say(high > low ? 'why.spread' : 'why.value', words);
}

/** What a step of the input does: of a size that it may be off by. */
function slopeOf({ low, high, unit, slope }: SaidInput, of: string): string {
  const half = (high - low) / 2;
  if (!(half > 0) || !Number.isFinite(slope)) return '';
  const step = 10 ** Math.floor(Math.log10(half) + 1e-9), effect = slope * step;
  const told = unit === 'share' ? `${number(step * 100)} %` : `${number(step)} ${unit.length > LONG ? '' : named(unit)}`.trim();
  return say('why.slope', { step: told, effect: `${effect < 0 ? '-' : '+'}${number(Number(Math.abs(effect).toPrecision(2)))} ${named(of)}` });
}

function percent(share: number): string { return share >= 0.0995 ? String(Math.round(share * 100)) : number(Number((share * 100).toPrecision(1))); }

/** To two digits of the range it stands in. */
function rounded(value: number, low: number, high: number): string {
  if (!(high > low)) return number(Number(value.toPrecision(4)));
  const unit = 10 ** (Math.floor(Math.log10(high - low)) - 1);
  return number(Number((Math.round(value / unit) * unit).toPrecision(12)));
}
