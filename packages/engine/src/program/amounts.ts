import type { Amount, Measure, Path } from '../document/types.ts';
import { toolFor } from '../larder/index.ts';
import type { Tables, UnitRow } from '../larder/types.ts';
import type { Context, Source } from './context.ts';
import { insteadOf, insteadOfAmount, plain } from './words.ts';
import { choose, meaning, ounce, sayInHead, systemOf } from './meanings.ts';
import { eachOf, isDry, spooned } from './pieces.ts';

export { countedAs } from './pieces.ts';

/** One amount as the run takes it: a number, times shares, times a factor. */
export interface Poured {
  /** index of the input for what was poured, weighed or counted */
  readonly input: number;
  /** inputs it is multiplied with: the unit's size, the jigger's own error, a spoonful's weight */
  readonly shares: readonly number[];
  readonly factor: number;
  readonly of: 'ml' | 'g';
}

/** Which tool measures an amount: chosen from what is written, the same while a level is dragged. */
function toolOf(unit: string, of: 'ml' | 'g', amount: number, tables: Tables): { row: string; shared?: string } {
  if (unit === 'tsp' || unit === 'tbsp') return { row: 'tool/tsp pour' };
  const row = toolFor(of, amount, tables);
  return row === 'tool/jigger' ? { row: 'tool/pour into jigger', shared: row } : { row };
}

/** Units without a definition whose width the table of spreads has. */
const WIDTH: Readonly<Record<string, string>> = { barspoon: 'tool/bar spoon', pinch: 'tool/pinch', drop: 'tool/drop', dropper: 'tool/dropper full' };
/** Vague units that are the hand's or the spoon's, the same for every thing; of the others each thing has its own. */
const OF_THE_HAND = new Set(['barspoon', 'pinch', 'drop', 'dropper', 'splash', 'spray', 'rinse', 'float', 'glug', 'finger', 'ladle', 'scoop', 'saltspoon', 'messerspitze', 'liqueur-glass', 'tumbler', 'teacup', 'wineglass', 'shot', 'dram', 'espresso-shot']);
/** Things that hold something: a size written beside them counts. */
const HOLDERS = new Set(['can', 'bottle', 'packet', 'carton', 'bag', 'half-bottle', 'magnum', 'split', 'fifth', 'bottle-wine', 'stick-butter']);
/** Two writings of one amount that are this near each other agree. */
const AGREE = 0.05;

/**
 * A written amount as inputs, amounts added to it ("1 oz + 1 barspoon") behind it. Volumes are at 20 °C. Pieces go by the unit's row, the
 * fruit's yield or the row's own unit mass; null where the piece is not known.
 */
export function pour(ctx: Context, m: Measure, amount: Amount, source: Source, occurrence: string): readonly Poured[] | null {
  const out: Poured[] = [];
  for (const [i, one] of [amount, ...(amount.plus ?? [])].entries()) {
    const poured = pourOne(ctx, m, one, source, i === 0 ? occurrence : `${occurrence}+${i}`);
    if (!poured) return null;
    out.push(poured);
    saidPlainly(ctx, one, poured);
  }
  for (const thing of m.alternatives ?? []) {
    ctx.book.word({ key: `swap/${m.thing.words.toLowerCase()}`, value: m.thing.words, grade: 'trade', source: 'written', at: m.path, say: thing.words });
  }
  return out;
}

/** What a spoon, a dash or a leaf is taken for is replaced by the amount itself, in mL or g. */
function saidPlainly(ctx: Context, written: Amount, { input, shares, of, factor }: Poured): void {
  const { list } = ctx.book, amount = shares.reduce((t, i) => t * list[i]!.value, list[input]!.value * factor), words = `${plain(amount)} ${of}`;
  for (const i of shares) {
    const said = list[i]!.assumed;
    if (said && !said.say.includes(': ')) ctx.book.say(i, { say: words, splices: HOLDERS.has(written.unit ?? '') && written.unitSpan ? insteadOf({ from: written.unitSpan.to, to: written.unitSpan.to }, ` (${words})`) : insteadOfAmount(written, words) });
  }
}

function pourOne(ctx: Context, m: Measure, written: Amount, source: Source, occurrence: string): Poured | null {
  const amount = plainest(ctx, written, source);
  const factorLow = amount.factorLow ?? 1, factorHigh = amount.factorHigh ?? 1;
  const range = { low: amount.low * factorLow, high: amount.high * factorHigh };
  const value = (range.low + range.high) / 2;
  const { system, settled } = systemOf(ctx, amount);
  let unit = amount.unit ?? 'piece';
  if (unit === 'part') return part(ctx, m, value, range, occurrence);
  if (unit === 'oz' && isDry(source.ingredient, source.form)) unit = 'oz-weight';
  if (unit === 'dash' && isDry(source.ingredient, source.form)) unit = 'dash-dry';
  if (unit === 'shot' && /^espresso/.test(source.ingredient?.id ?? '')) unit = 'espresso-shot';
  const row = ctx.tables.unit(unit, system);
  if (!row) return null;
  if (row.of === 'piece' || row.of === 'mm') {
    // a length of root goes by the centimetre
    const each = eachOf(ctx, m, row.of === 'mm' ? 'cm' : unit, source);
    if (!each) return null;
    return { input: count(ctx, m, value * row.factor * (row.of === 'mm' ? 0.1 : 1), range, row.factor * (row.of === 'mm' ? 0.1 : 1), occurrence), shares: each.inputs, of: each.of, factor: 1 };
  }
  if (row.of !== 'ml' && row.of !== 'g') return null;
  const filled = amount === written.twin && HOLDERS.has(written.unit ?? '') && row.of === 'ml';
  const tool = filled ? { row: fillOf(value * row.factor) } : toolOf(unit, row.of, value * row.factor, ctx.tables);
  const bias = tool.shared ? [ctx.spread(`${tool.shared}/bias`, tool.shared, 1, 'share', 'tool')] : [];
  const packed = row.of === 'ml' ? spooned(ctx, m, source) : -1;
  const of = packed >= 0 ? 'g' : row.of, dry = packed >= 0 ? [packed] : [];
  const size = meaning(ctx, m, written, unit, row, settled);
  if (size >= 0) return { input: relative(ctx, m, tool.row, value, range, unit, occurrence), shares: [size, ...bias, ...dry], of, factor: 1 };
  if (row.low < row.high) return { input: count(ctx, m, value, range, 1, occurrence), shares: [vague(ctx, m, unit, row, source), ...dry], of, factor: 1 };
  const two = unit === 'oz-weight' && amount.systemAssumed === true ? ounce(ctx, m, written, source) : -1;
  const input = range.low !== range.high
    ? ctx.about(`pour/${occurrence}`, value * row.factor, range.low * row.factor, range.high * row.factor, row.of === 'ml' ? 'mL' : 'g', 'measure', { at: m.path, row: 'written' })
    : ctx.spread(`pour/${occurrence}`, tool.row, value * row.factor, row.of === 'ml' ? 'mL' : 'g', 'measure', { at: m.path, bounds: { min: 0 } });
  return { input, shares: [...bias, ...dry, ...(two >= 0 ? [two] : [])], of, factor: 1 };
}

/** Of two writings of an amount the one that is plain: "1 (14 oz) can", "1 cup (250 ml)", "3 limes (90 ml)". */
function plainest(ctx: Context, amount: Amount, source: Source): Amount {
  const { twin } = amount;
  if (!twin || twin.unit === null) return amount;
  const other = ctx.tables.unit(twin.unit, systemOf(ctx, twin).system);
  if (!other || other.low !== other.high || (other.of !== 'ml' && other.of !== 'g')) return amount;
  if (twin.each === true) return { ...twin, low: twin.low * amount.low, high: twin.high * amount.high };
  const { system, settled } = systemOf(ctx, amount);
  const own = ctx.tables.unit(amount.unit ?? 'piece', system);
  const unsure = !own || own.of === 'piece' || own.of === 'mm' || own.low !== own.high || HOLDERS.has(amount.unit ?? '');
  if (unsure) return twin;
  // "1 cup (250 ml)" says which cup; "4 oz (113 g) sugar" says which ounce
  const agree = own.of === other.of && Math.abs((twin.low * other.factor) / (amount.low * own.factor) - 1) < AGREE;
  if (!settled && (!agree || (amount.unit === 'oz' && isDry(source.ingredient, source.form)))) return twin;
  return settled || !agree ? amount : { ...amount, system: amount.system ?? 'us', systemAssumed: false };
}

/** How true a bottle or can is filled to its label. */
function fillOf(mL: number): string {
  return `label/volume/bottle ${mL <= 100 ? 'to 100 ml' : mL <= 375 ? '101-375 ml' : mL < 1000 ? '376-999 ml' : '1 l and more'}`;
}

/** So many, exact as counted, or as wide as it is written. */
function count(ctx: Context, m: Measure, value: number, range: { low: number; high: number }, factor: number, occurrence: string): number {
  return range.low !== range.high ? ctx.about(`pour/${occurrence}`, value, range.low * factor, range.high * factor, 'pieces', 'measure', { at: m.path, row: 'written' })
    : ctx.exact(`pour/${occurrence}`, value, 'pieces', 'measure', { at: m.path });
}

/** So many of a unit, as wide as the tool that measures them. */
function relative(ctx: Context, m: Measure, tool: string, value: number, range: { low: number; high: number }, unit: string, occurrence: string): number {
  return range.low !== range.high ? count(ctx, m, value, range, 1, occurrence) : ctx.spread(`pour/${occurrence}`, tool, value, unit, 'measure', { at: m.path, bounds: { min: 0 } });
}

/** What a bottle is sold of, by class of thing: the word alone says 330 or 750. */
const BOTTLED: Readonly<Record<string, string>> = { 'soft-drink': 'soft drink', water: 'soft drink', beer: 'beer', wine: 'wine', fortified: 'wine', spirit: 'spirit', liqueur: 'spirit' };

/** The size of a unit that has no definition, with its range. */
function vague(ctx: Context, m: Measure, unit: string, row: UnitRow, source: Source): number {
  const words = m.thing.words.toLowerCase(), name = row.of === 'ml' ? 'mL' : 'g';
  // the maker's own spoon or dasher is the same for every thing
  if (row.source === 'bench') return ctx.about(`unit/${unit}`, row.factor, row.low, row.high, name, 'measure', { at: m.path, grade: 'own', source: 'bench', row: `bench ${unit}` });
  const tincture = unit === 'drop' && /^(spirit|liqueur|bitters)$/.test(source.ingredient?.category ?? '') ? ctx.tables.assumption('measure/drop of tincture') : undefined;
  if (tincture && tincture.low !== null && tincture.high !== null) {
    return ctx.about('unit/drop of tincture', Number(tincture.value), tincture.low, tincture.high, name, 'measure', { at: m.path, grade: tincture.grade, source: tincture.source, row: 'assumptions measure/drop of tincture', assumed: { say: tincture.say } });
  }
  const of = `measure/bottle of ${BOTTLED[source.ingredient?.category ?? ''] ?? ''}`, bottle = unit === 'bottle' ? ctx.tables.assumption(of) : undefined;
  if (bottle && bottle.low !== null && bottle.high !== null) {
    return ctx.about(`unit/bottle/${words}`, Number(bottle.value), bottle.low, bottle.high, name, 'measure', { at: m.path, grade: bottle.grade, source: bottle.source, row: `assumptions ${of}`, assumed: { say: `${bottle.say} ${words}` } });
  }
  const key = OF_THE_HAND.has(unit) ? `unit/${unit}` : `unit/${unit}/${words}`;
  const more = { at: m.path, assumed: { say: `${Number(row.factor.toPrecision(2))} ${row.of} ${words}` } };
  const width = WIDTH[unit];
  if (width !== undefined && ctx.tables.spread(width)) return ctx.spread(key, width, row.factor, name, 'measure', { ...more, bounds: { min: 0 } });
  return ctx.about(key, row.factor, row.low, row.high, name, 'measure', { ...more, source: row.source, row: `units ${unit}` });
}

/** A part: of the size the head gives, else assumed; fractions that make up one are of a whole drink. */
function part(ctx: Context, m: Measure, value: number, range: { low: number; high: number }, occurrence: string): Poured {
  const one = partOf(ctx);
  const whole = one === null && isWhole(ctx, m.path);
  const usual = one ?? Number(ctx.tables.assumption(whole ? 'measure/whole drink' : 'measure/part')?.value ?? 30);
  const tool = toolOf('part', 'ml', value * usual, ctx.tables);
  const bias = tool.shared ? [ctx.spread(`${tool.shared}/bias`, tool.shared, 1, 'share', 'tool')] : [];
  const input = relative(ctx, m, tool.row, value, range, 'part', occurrence);
  if (one !== null) return { input, shares: bias, of: 'ml', factor: one };
  const size = ctx.assume(whole ? 'measure/whole drink' : 'measure/part', m.path, 'measure');
  const { low, high } = ctx.tables.assumption(whole ? 'measure/whole drink' : 'measure/part')!;
  choose(ctx, {
    code: 'ratio-unclear', at: m.path, input: size, sources: ['common-practice'], words: { degree: 'part', as: usual, low: low ?? usual, high: high ?? usual },
    remedy: { key: 'say-part', words: { mL: usual }, splices: sayInHead(ctx.document, 'part', `one part: ${usual} ml`) },
  });
  return { input, shares: [...bias, size], of: 'ml', factor: 1 };
}

/** mL of a part, as `one part:` says; null where it does not, or not so that it is understood. */
function partOf(ctx: Context): number | null {
  const said = /^\s*(?:about |ca\.? ?)?([\d.,]+)\s*(ml|cl|oz)\b/i.exec(ctx.document.head.part?.value ?? ctx.document.head.one?.value ?? '');
  const row = said ? ctx.tables.unit(said[2]!.toLowerCase(), null) : undefined;
  const number = Number(said?.[1]?.replace(',', '.'));
  return row && number > 0 ? number * row.factor : null;
}

/** Do the parts of a section, fractions all, make up one? */
function isWhole(ctx: Context, path: Path): boolean {
  const section = ctx.sections.find((s) => (path[0] === 'preps' ? s.kind === 'prep' && s.key === path[1] : s.kind === path[0]));
  let sum = 0;
  for (const line of section?.lines ?? []) for (const a of line.actions) {
    if (a.kind !== 'measure' || a.amount?.unit !== 'part') continue;
    if (a.amount.high >= 1) return false;
    sum += (a.amount.low + a.amount.high) / 2;
  }
  return Math.abs(sum - 1) < 0.05;
}
