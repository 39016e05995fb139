import { hatches } from '@washline/drawing';

const SVG = 'http://www.w3.org/2000/svg';

/** The tiles of all hatches as patterns; `mmPerPx` scales them so that they keep their px on every sheet. */
export function makeHatches(defs: SVGDefsElement): (mmPerPx: number) => void {
  const patterns: [SVGPatternElement, number][] = [];
  for (const [key, tile] of Object.entries(hatches)) {
    const pattern = element('pattern', { id: `h-${key}`, width: tile.width, height: tile.height, patternUnits: 'userSpaceOnUse' });
    const tone = key === 'glass' ? 'var(--cut)' : tile.tone === 'ink3' ? 'var(--hatch)' : `var(--${tile.tone})`;
    const g = element('g', tile.filled === true ? { fill: tone } : { fill: tile.grain === true ? 'var(--grain)' : 'none', stroke: tone, 'stroke-width': tile.stroke ?? 0.6, 'stroke-linecap': 'round' });
    for (const [cx = 0, cy = 0, r = 1] of tile.rounds ?? []) g.append(element('circle', { cx, cy, r }));
    for (const d of tile.paths ?? []) g.append(element('path', { d }));
    pattern.append(g);
    defs.append(pattern);
    patterns.push([pattern as SVGPatternElement, tile.turn]);
  }
  let last = 0;
  // a pattern that is set again, even to the same, is painted again
  return (mmPerPx) => {
    if (mmPerPx === last) return;
    last = mmPerPx;
    for (const [pattern, turn] of patterns) pattern.setAttribute('patternTransform', `scale(${mmPerPx}) rotate(${turn})`);
  };
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, String(value));
  return node;
}
