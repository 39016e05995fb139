import type { GlassReading } from '@washline/engine';

/** Rows of the drawing, and the most columns a glass may take. */
const ROWS = 12;
const COLUMNS = 26;
const HATCH = ['░', '▒', '▓'];
const FOAM = '∘';
const GEL = '▚';
const ICE = '▢';

export interface GlassPicture {
  /** rows of equal width, top to bottom */
  readonly rows: readonly string[];
  /** the row the washline lies on */
  readonly washline: number;
  /** what each mark stands for, bottom to top */
  readonly legend: readonly { readonly mark: string; readonly name: string; readonly mm: number }[];
}

/** The glass in section, in characters: walls, layers each with its own mark, ice, and the washline. A character is twice as high as it is wide. */
export function drawGlass(glass: GlassReading): GlassPicture {
  const height = Math.max(glass.profile.at(-1)?.[1] ?? 1, glass.washline_mm, 1);
  const widest = Math.max(...glass.profile.map(([radius]) => radius), 1);
  const row_mm = Math.max(height / ROWS, (4 * widest) / (COLUMNS - 2));
  const count = Math.max(3, Math.ceil(height / row_mm));
  const half = Math.ceil(widest / (row_mm / 2));
  const marks = marksOf(glass);
  const rows: string[] = [];
  for (let row = count - 1; row >= 0; row -= 1) rows.push(drawRow(glass, (row + 0.5) * row_mm, row_mm, half, marks));
  rows.push(floorRow(glass, row_mm, half));
  for (let stem = 0; stem < Math.min(3, Math.round(glass.stem_mm / (row_mm * 2))); stem += 1) rows.push(centred('││', half));
  if (glass.stem_mm > 0) rows.push(centred('─'.repeat(Math.max(2, 2 * Math.round(glass.foot_mm / row_mm))), half));
  const washline = Math.min(count - 1, Math.max(0, count - 1 - Math.floor((glass.washline_mm - 1e-9) / row_mm)));
  return { rows, washline, legend: legendOf(glass, marks) };
}

type Marks = ReadonlyMap<GlassReading['layers'][number], string>;

function marksOf(glass: GlassReading): Marks {
  let liquids = 0;
  return new Map(glass.layers.map((layer) => [layer, layer.kind === 'foam' ? FOAM : layer.kind === 'gel' ? GEL : HATCH[liquids++ % HATCH.length] ?? '░']));
}

function radiusAt(glass: GlassReading, mm: number): number {
  let [before] = glass.profile;
  if (!before) return 0;
  for (const point of glass.profile) {
    if (point[1] >= mm) return point[1] === before[1] ? point[0] : before[0] + ((point[0] - before[0]) * (mm - before[1])) / (point[1] - before[1]);
    before = point;
  }
  return before[0];
}

function drawRow(glass: GlassReading, mm: number, row_mm: number, half: number, marks: Marks): string {
  const inside = Math.max(1, Math.round(radiusAt(glass, mm) / (row_mm / 2)));
  const layer = glass.layers.find(({ from_mm, to_mm }) => mm >= from_mm && mm < to_mm);
  const fill = layer ? marks.get(layer) ?? ' ' : ' ';
  const line = [...fill.repeat(2 * inside)];
  for (const ice of glass.ice) if (mm >= ice.from_mm && mm < ice.to_mm) putIce(line, ice.size_mm ?? row_mm, row_mm, ice.count);
  const [left, right] = wallsAt(glass, mm, row_mm);
  return centred(left + line.join('') + right, half);
}

/** Ice of one kind across a row, at most as many pieces as go side by side, spread evenly. */
function putIce(line: string[], size_mm: number, row_mm: number, count: number): void {
  const width = Math.min(line.length, Math.max(1, Math.round(size_mm / (row_mm / 2))));
  const pieces = Math.max(1, Math.min(count, Math.floor(line.length / (width + 1)) || 1));
  for (let piece = 0; piece < pieces; piece += 1) {
    const from = Math.round(((piece + 0.5) * line.length) / pieces - width / 2);
    for (let at = Math.max(0, from); at < Math.min(line.length, from + width); at += 1) line[at] = ICE;
  }
}

function wallsAt(glass: GlassReading, mm: number, row_mm: number): [string, string] {
  const slope = radiusAt(glass, mm + row_mm / 2) - radiusAt(glass, mm - row_mm / 2);
  if (slope > row_mm / 3) return ['╲', '╱'];
  return slope < -row_mm / 3 ? ['╱', '╲'] : ['│', '│'];
}

function floorRow(glass: GlassReading, row_mm: number, half: number): string {
  const inside = Math.max(1, Math.round(radiusAt(glass, row_mm / 2) / (row_mm / 2)));
  return centred(`└${'─'.repeat(2 * inside)}┘`, half);
}

function centred(text: string, half: number): string {
  const width = 2 * half + 2;
  const left = Math.max(0, Math.floor((width - [...text].length) / 2));
  return (' '.repeat(left) + text).padEnd(width);
}

function legendOf(glass: GlassReading, marks: Marks): GlassPicture['legend'] {
  const layers = glass.layers.map((layer) => ({ mark: marks.get(layer) ?? '', name: layer.name, mm: layer.to_mm - layer.from_mm }));
  return [...layers, ...glass.ice.map((ice) => ({ mark: ICE, name: `${ice.count > 1 ? `${ice.count} ` : ''}${ice.kind}`, mm: ice.size_mm ?? 0 }))];
}
