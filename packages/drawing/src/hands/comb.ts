/** Where each hand's level stands, mm (NaN where it is not known), and whether nothing stops that hand (1) or something does (0). */
export interface Tide { readonly levels: ArrayLike<number>; readonly holds: ArrayLike<number> }

/** A row of a comb: hands that hold and hands that fail, between two heights, counted from the line up or down. */
export interface CombRow { readonly row: number; readonly holds: number; readonly fails: number }

/** Hands that one mark of the comb stands for. */
export const A_MARK = 100;

/**
 * Marks by rows of `step` mm above (row 0, 1, ...) and below (row -1, -2, ...) a line: a mark where the count from below passes the middle of its hundred, so that
 * no hand is lost between rows and of ten thousand hands a hundred marks stand. `aMark`: hands a mark stands for. What is not known has no row.
 */
export function combOf({ levels, holds }: Tide, line: number, step: number, aMark = A_MARK): CombRow[] {
  const counts = new Map<number, [number, number]>();
  for (let i = 0; i < levels.length; i += 1) {
    const level = levels[i]!;
    if (!Number.isFinite(level)) continue;
    const row = Math.floor((level - line) / step + 1e-9), at = counts.get(row) ?? [0, 0];
    at[holds[i] === 1 ? 0 : 1] += 1;
    counts.set(row, at);
  }
  const rows: CombRow[] = [];
  let held = 0, failed = 0, dots = 0, dashes = 0;
  for (const row of [...counts.keys()].sort((a, b) => a - b)) {
    const [h, f] = counts.get(row)!;
    held += h; failed += f;
    // halves go up for the one and down for the other: together they are as many as the hands
    const upTo = Math.floor(held / aMark + 0.5), downTo = Math.ceil(failed / aMark - 0.5);
    if (upTo > dots || downTo > dashes) rows.push({ row, holds: upTo - dots, fails: downTo - dashes });
    dots = upTo; dashes = downTo;
  }
  return rows;
}

export interface Spread { readonly known: number; readonly hold: number; readonly low: number; readonly high: number }

/** How many are known, how many hold, and between which levels nineteen of twenty of those that hold lie, mm: NaN where none does. */
export function spreadOf(tide: Tide): Spread {
  let spread = spreads.get(tide);
  if (spread === undefined) { spread = spreadOfLevels(tide); spreads.set(tide, spread); }
  return spread;
}
/** A run is looked at in every frame, and does not change. */
const spreads = new WeakMap<Tide, Spread>();

function spreadOfLevels({ levels, holds }: Tide): Spread {
  const held = sorted({ levels, holds }, true);
  let hold = 0, known = 0;
  for (let i = 0; i < holds.length; i += 1) { if (holds[i] === 1) hold += 1; if (Number.isFinite(levels[i])) known += 1; }
  return { known, hold, low: quantile(held, 0.025), high: quantile(held, 0.975) };
}

/** Levels that are known, from the lowest; of those that hold alone where it is asked. */
export function sorted({ levels, holds }: Tide, held = false): Float64Array {
  const out: number[] = [];
  for (let i = 0; i < levels.length; i += 1) if (Number.isFinite(levels[i]) && (!held || holds[i] === 1)) out.push(levels[i]!);
  return Float64Array.from(out).sort();
}

/** The point below which a share of sorted values lies; NaN of none. @param share 0 to 1 */
export function quantile(values: Float64Array, share: number): number {
  if (values.length === 0) return NaN;
  const at = share * (values.length - 1), below = Math.floor(at), a = values[below]!, b = values[Math.min(values.length - 1, below + 1)]!;
  return a + (b - a) * (at - below);
}

/** A tenth of the hands, from the lowest level: between which levels it stands, and how many of it hold. */
export interface Tenth { readonly from: number; readonly to: number; readonly hands: number; readonly hold: number }

/** The hands whose level is known, in ten parts by their level. */
export function tenthsOf({ levels, holds }: Tide): Tenth[] {
  const order = Array.from({ length: levels.length }, (_, i) => i).filter((i) => Number.isFinite(levels[i])).sort((a, b) => levels[a]! - levels[b]! || a - b), n = order.length;
  if (n < 10) return [];
  return Array.from({ length: 10 }, (_, k) => {
    const part = order.slice(Math.round((n * k) / 10), Math.round((n * (k + 1)) / 10));
    return { from: levels[part[0]!]!, to: levels[part.at(-1)!]!, hands: part.length, hold: part.reduce((sum, i) => sum + (holds[i] === 1 ? 1 : 0), 0) };
  });
}
