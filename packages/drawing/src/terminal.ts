import type { Reading } from './reading.ts';
import { brimHeight, radiusAt } from './glass/profile.ts';
import { shown, unitShown, decimalsFor } from './pen/numbers.ts';

const INK: Readonly<Record<string, string>> = { liquid: '░', foam: 'o', gel: '=' };
const PLAIN: Readonly<Record<string, string>> = { liquid: '.', foam: 'o', gel: '=' };

/**
 * The glass in characters for a terminal: section to scale, layers, ice, the washline with its level and the strength.
 * `width` and `height` in characters, at least 30 and 8; `ascii` keeps to ASCII. Empty where nothing stands in a glass.
 */
export function terminalGlass(reading: Reading, size: { readonly width: number; readonly height: number; readonly ascii?: boolean }): string[] {
  const { glass } = reading;
  if (glass === null || size.width < 30 || size.height < 8) return [];
  const brim = brimHeight(glass.profile), widest = Math.max(...glass.profile.map(([, r]) => r));
  // A character is about twice as tall as wide: two columns to the millimetres of a row.
  const column = 24, inner = size.width - column - 4;
  const rows = Math.max(6, Math.min(size.height - 1, Math.round((brim / (2 * widest)) * inner * 0.5)));
  const mm = brim / rows, across = (2 * mm) ** -1;
  const half = Math.min(Math.floor(inner / 2), Math.round(widest * across * 4));
  const k = half / widest, ink = size.ascii === true ? PLAIN : INK;
  const [wall, lineInk, ice, corner, floor] = size.ascii === true ? ['|', '=', '#', '+', '-'] : ['│', '━', '▒', '╰', '─'];
  const strength = reading.figures['strength'];
  const washRow = Math.round(glass.washline_mm / mm);
  const out: string[] = [];
  for (let row = rows; row >= 1; row -= 1) {
    const h = (row - 0.5) * mm, r = Math.max(1, Math.round(radiusAt(glass.profile, h) * k));
    const layer = glass.layers.find((l) => h >= l.from_mm && h < l.to_mm);
    const inside = Array.from({ length: 2 * r }, (_, i) => {
      const x = (i + 0.5 - r) / k;
      if (glass.ice.some((p) => h >= p.from_mm && h < p.to_mm && Math.abs(x) < (p.count > 1 ? radiusAt(glass.profile, h) * 0.8 : (p.size_mm ?? 30) / 2))) return ice;
      return layer === undefined ? ' ' : ink[layer.kind] ?? ' ';
    }).join('');
    const pad = ' '.repeat(half - r + 1), body = `${pad}${wall}${inside}${wall}${pad}`;
    const above = row === washRow + 1, at = row === washRow;
    const right = above ? ` ${shown(glass.washline_mm, 1)} mm` : at ? ` ${(lineInk ?? '=').repeat(column - 3)}` : row === washRow - 1 && strength !== undefined ? ` ${shown(strength.value, Math.max(1, decimalsFor(strength.low, strength.high)))} ${unitShown(strength.unit)}` : noteAt(reading, row, mm);
    const text = at ? body.replaceAll(' ', (c) => c) : body;
    out.push(`${text}${right}`.slice(0, size.width).trimEnd());
  }
  const r0 = Math.max(1, Math.round(radiusAt(glass.profile, 0) * k));
  out.push(`${' '.repeat(half - r0 + 1)}${corner}${(floor ?? '-').repeat(2 * r0)}${size.ascii === true ? '+' : '╯'}`);
  return out;
}

/** A layer's own words stand at its middle. */
function noteAt(reading: Reading, row: number, mm: number): string {
  const layer = reading.glass?.layers.find((l) => Math.round((l.from_mm + l.to_mm) / 2 / mm + 0.5) === row);
  if (layer === undefined) return '';
  return ` ${shown(layer.mL, 0)} ml ${layer.name}`.slice(0, 23);
}
