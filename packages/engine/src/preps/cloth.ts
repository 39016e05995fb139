import { addBlock, wholeMass } from '../matter/block.ts';
import { BLOCK, at } from '../matter/constituents.ts';
import type { Context, PrepBuilt } from '../program/context.ts';

/** What a prep lost, apart by where it went: offsets of blocks, -1 where nothing went that way; and of the g of sugar that stayed dry in a sieve. */
export interface Losses { cloth: number; boiled: number; readonly dry: number }
/** A prep that has lost nothing yet; `sieved`: sugar may stay dry in its sieve. */
export function nothingLost(ctx: Context, sieved: boolean): Losses {
  const dry = sieved ? ctx.layout.take(1) : -1;
  if (sieved) ctx.ops.push(({ s }) => { s[dry] = 0; });
  return { cloth: -1, boiled: -1, dry };
}

/** Runs a step and writes down what it loses. @source none - definition */
export function booked(ctx: Context, losses: Losses, where: 'cloth' | 'boiled', lose: () => void): void {
  if (losses[where] < 0) losses[where] = ctx.layout.take(BLOCK);
  const to = losses[where], { lost } = ctx;
  ctx.ops.push(({ s }) => addBlock(s, to, lost, -1));
  lose();
  ctx.ops.push(({ s }) => addBlock(s, to, lost, 1));
}

/** What no clear liquid carries: it lies in the cloth. */
const LIES = [at.casein, at.fat, at.fibre, at.pectin, at.insolubles];
const GELS = [at.agar, at.gelatin];
/** Methods that take a gel's agent with it, and those that bind tannin to curd. */
const GELLED = /^clarify with (agar|gelatin|enzyme|gravity)$/, CURDLED = /^(milk wash|clarify with milk)$/;

/**
 * What stays in the cloths, papers and sieves of a prep, in g, and where all went that was put in: figures of `cloth:` and the prep's key.
 * Solids are what no clear liquid carries, with a cleared prep its agent and with a milk wash its tannin; all else is liquid they hold.
 * Where there was milk, what of its whey protein and lactose passed.
 * @source none - mass balance
 */
export function tellCloth(ctx: Context, prep: PrepBuilt): void {
  const { losses: { cloth, boiled, dry }, content, puts, soaked } = prep;
  if (cloth < 0) return;
  const of = `cloth:${prep.section.key}`, { method } = prep.section, liquid = content.phase('liquid');
  const lies = [...LIES, ...(GELLED.test(method) ? GELS : []), ...(CURDLED.test(method) ? [at.tannin] : [])];
  const pieces = (['solids', 'fat'] as const).filter((kind) => content.has(kind)).map((kind) => content.phase(kind));
  const solids = (s: Float64Array): number => { let g = dry < 0 ? 0 : s[dry]!; for (let i = 0; i < lies.length; i++) g += s[cloth + lies[i]!]!; return g; };
  const tell = (name: string, f: (s: Float64Array) => number): void => ctx.probe(name, of, 'g', 'mass-balance', ['common-practice'], ({ s }, out, i) => { out[i] = f(s); });
  tell('mass', (s) => wholeMass(s, cloth));
  tell('solids', solids);
  tell('liquid', (s) => Math.max(0, wholeMass(s, cloth) - solids(s)));
  tell('casein', (s) => s[cloth + at.casein]!);
  tell('fat', (s) => s[cloth + at.fat]!);
  if (CURDLED.test(method)) {
    tell('whey_passed', (s) => s[liquid + at.whey]!);
    tell('lactose_passed', (s) => s[liquid + at.lactose]!);
  }
  tell('in', (s) => {
    let g = 0;
    for (let i = 0; i < puts.length; i++) g += s[puts[i]!.g]!;
    for (let i = 0; i < soaked.length; i++) g += wholeMass(s, soaked[i]!);
    return g;
  });
  tell('kept', (s) => s[prep.yield_g]!);
  tell('boiled_off', (s) => (boiled < 0 ? 0 : wholeMass(s, boiled)));
  tell('left_in', (s) => { let g = 0; for (let i = 0; i < pieces.length; i++) g += wholeMass(s, pieces[i]!); return g; });
}
