import type { AssumptionRow, Cell, GlassShape, Grade, HazardRow, SpreadRow } from '@washline/engine';

const at = (list: readonly Cell[], code: string | undefined): Cell => list[parseInt(code ?? '', 36)] ?? { value: NaN, grade: 'memory', source: 'memory' };
const number = (text: string | undefined): number | null => (text === undefined || text === '' ? null : Number(text));

/** One row of the spreads. @source none - definition */
export function spreadOfLine(line: string, from: readonly Cell[]): SpreadRow {
  const [, kind, a, b, unit = '', code] = line.split('\t');
  const { grade, source } = at(from, code);
  return { kind: kind as SpreadRow['kind'], a: Number(a), b: number(b) ?? NaN, unit, grade, source };
}

/** One row of what is taken when nothing is written. @source none - definition */
export function assumptionOfLine(line: string, from: readonly Cell[]): AssumptionRow {
  const [, value = '', low, high, unit = '', code, say = ''] = line.split('\t');
  const { grade, source } = at(from, code);
  const asNumber = Number(value);
  return { value: value !== '' && Number.isFinite(asNumber) ? asNumber : value, low: number(low), high: number(high), unit, grade, source, say };
}

/** One glass: the profile is written `height,radius` in mm from the floor up. @source none - definition */
export function glassOfLine(line: string): GlassShape {
  const [key = '', name = '', profile = '', base, wall, stem, foot, mass, grade, source = ''] = line.split('\t');
  const points = profile.split(' ').map((point) => point.split(',').map(Number) as [number, number]);
  return { key, name, profile: points, base_mm: Number(base), wall_mm: Number(wall), stem_mm: Number(stem), foot_mm: Number(foot), mass_g: Number(mass), grade: grade as Grade, source };
}

/** One hazard with its limits. @source none - definition */
export function hazardOfLine(line: string): HazardRow {
  const [id = '', agent = '', severity = '', limits = '[]'] = line.split('\t');
  return { id, agent, severity, limits: JSON.parse(limits) as HazardRow['limits'] };
}
