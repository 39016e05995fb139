/** Figures beside what they measure: shelves in one column, leaders that never cross and never share a place. */

export interface Anchored { readonly x: number; readonly y: number }
export interface Shelf { readonly index: number; readonly y: number }

/** Heights for items in a given order: as near to their wishes as the pitch allows, inside [top, bottom]; squeezed evenly where the room is short. */
export function spread(wishes: readonly number[], pitch: number, top: number, bottom: number): number[] {
  const n = wishes.length;
  if (n === 0) return [];
  const gap = n === 1 ? pitch : Math.min(pitch, Math.max(0, (bottom - top) / (n - 1)));
  // Isotonic regression of wish minus place gives the least squared distance for one order.
  const blocks: { sum: number; count: number }[] = [];
  for (const [i, wish] of wishes.entries()) {
    blocks.push({ sum: wish - i * gap, count: 1 });
    for (;;) {
      const b = blocks.at(-1), a = blocks.at(-2);
      if (a === undefined || b === undefined || a.sum / a.count <= b.sum / b.count) break;
      blocks.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  }
  const out: number[] = [];
  for (const block of blocks) for (let i = 0; i < block.count; i += 1) {
    const at = Math.min(bottom - (n - 1) * gap, Math.max(top, block.sum / block.count));
    out.push(at + out.length * gap);
  }
  return out;
}

/** Do two leaders (one oblique leg each, to shelves that begin at `shelfX`) cross? */
export function cross(a: Anchored, ay: number, b: Anchored, by: number, shelfX: number): boolean {
  const from = Math.max(a.x, b.x);
  if (from >= shelfX) return (a.y - b.y) * (ay - by) < 0;
  const at = (p: Anchored, y: number): number => p.y + ((y - p.y) * (from - p.x)) / (shelfX - p.x);
  const first = at(a, ay) - at(b, by), last = ay - by;
  return first * last <= 0;
}

/** One shelf for each anchor: the order without crossings that moves them least. */
export function shelves(anchors: readonly Anchored[], shelfX: number, pitch: number, top: number, bottom: number): Shelf[] {
  const n = anchors.length;
  const byHeight = anchors.map((_, i) => i).sort((p, q) => (anchors[p] as Anchored).y - (anchors[q] as Anchored).y || p - q);
  let best: { order: number[]; ys: number[]; crossings: number; moved: number } | null = null;
  for (const order of n <= 6 ? permutations(byHeight) : [byHeight]) {
    const ys = spread(order.map((i) => (anchors[i] as Anchored).y), pitch, top, bottom);
    let crossings = 0;
    for (let i = 0; i < n; i += 1) for (let j = i + 1; j < n; j += 1) {
      if (cross(anchors[order[i] as number] as Anchored, ys[i] as number, anchors[order[j] as number] as Anchored, ys[j] as number, shelfX)) crossings += 1;
    }
    const moved = order.reduce((sum, i, k) => sum + Math.abs((anchors[i] as Anchored).y - (ys[k] as number)), 0);
    if (best === null || crossings < best.crossings || (crossings === best.crossings && moved < best.moved - 1e-9)) best = { order, ys, crossings, moved };
  }
  return (best?.order ?? []).map((index, k) => ({ index, y: best?.ys[k] ?? 0 }));
}

function permutations(items: readonly number[]): number[][] {
  if (items.length <= 1) return [[...items]];
  return items.flatMap((item, i) => permutations([...items.slice(0, i), ...items.slice(i + 1)]).map((rest) => [item, ...rest]));
}
