import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile, Moves, pointAt, reachedBy, Z95, type Compiled, type Part, type Side } from '@washline/engine';
import { parse } from '@washline/spec';
import { tables } from '@washline/tables';
import specs from '../ranges/specs.json' with { type: 'json' };
import { runs, spec } from './specs.ts';

// Oracle: the whole program, run from its start for every input and side; and a buffer that writes down which of its places were looked at.
const LONG_MS = 180_000;
const demo = readdirSync('demo').filter((f) => f.endsWith('.drink')).map((f) => readFileSync(`demo/${f}`, 'utf8'));

/** Figures that a move was said not to reach, or was given another number than the whole program gives. */
function wrongMoves({ program }: Compiled): string[] {
  const again = program.workspace(), n = program.probes.length, all = new Uint8Array(n).fill(1), whole = new Float64Array(n);
  const moves = new Moves(program, all), x = Float64Array.from(program.nominal), wrong: string[] = [];
  let put: { readonly i: number; readonly value: number; readonly side: Side }[] = [];
  const check = () => {
    moves.run();
    for (const { i, value, side } of put) {
      x[i] = value;
      program.run(x, whole, all, again);
      x[i] = program.nominal[i]!;
      // what was not reached is as it was
      program.probes.forEach((p, k) => { if (side.out[k] !== whole[k] && !(Number.isNaN(side.out[k]) && Number.isNaN(whole[k]))) wrong.push(`${program.inputs[i]!.key} on ${p.of} ${p.name}: ${side.out[k]} for ${whole[k]}`); });
      moves.probes.forEach((list, q) => {
        for (const k of list.subarray(0, side.since[q])) if (!Object.is(side.out[k], program.usual.value[k])) wrong.push(`${program.probes[k]!.name} was reached and is not said to be`);
      });
      side.out.set(program.usual.value);
    }
    put = [];
  };
  program.inputs.forEach((input, i) => {
    for (const z of [-Z95, Z95]) {
      const value = pointAt(input.spread, input.value, z);
      if (value === input.value) continue;
      put.push({ i, value, side: moves.put(i, value) });
      if (moves.room === 0) check();
    }
  });
  check();
  return wrong;
}

/** Places a buffer was read and written at, told by index. */
function watched(s: Float64Array, reads: (at: number) => void, writes: (at: number) => void): Float64Array {
  const each = (from: number, to: number, tell: (at: number) => void): void => { for (let k = from; k < to; k += 1) tell(k); };
  const own = {
    fill: (value: number, from = 0, to = s.length) => { each(from, to, writes); s.fill(value, from, to); },
    set: (other: ArrayLike<number>, at = 0) => { each(at, at + other.length, writes); s.set(other, at); },
    copyWithin: (at: number, from: number, to = s.length) => { each(from, to, reads); each(at, at + to - from, writes); s.copyWithin(at, from, to); },
  };
  return new Proxy(s, {
    get: (_, name) => {
      if (typeof name === 'string' && /^\d+$/.test(name)) { reads(Number(name)); return s[Number(name)]; }
      if (name === 'length') return s.length;
      if (typeof name === 'string' && name in own) return own[name as keyof typeof own];
      throw new Error(`a buffer was asked for ${String(name)}`);
    },
    set: (_, name, value: number) => { writes(Number(name)); s[Number(name)] = value; return true; },
  });
}

/** Where a part reads or writes what it has not named. */
function unnamed({ program, ctx }: Compiled): string[] {
  const { parts, inputs } = program, wrong = new Set<string>(), raw = program.workspace();
  let part: Part = parts[0]!, operation = 0, read = new Set<number>(), adds = new Set<number>(), what = '';
  const s = watched(raw.s,
    (at) => { if ((at < part.start || at >= part.end) && !read.has(at)) wrong.add(`${what} reads place ${at} of ${parts.findIndex((p) => at >= p.start && at < p.end)}`); },
    (at) => { if ((at < part.start || at >= part.end) && !adds.has(at)) wrong.add(`${what} writes place ${at} of ${parts.findIndex((p) => at >= p.start && at < p.end)}`); });
  const x = watched(Float64Array.from(program.nominal), (i) => { if (!(part.uses[i]! >= 0 && part.uses[i]! <= operation)) wrong.add(`${what} reads ${inputs[i]!.key}`); }, () => wrong.add(`${what} writes an input`));
  const w = { s, x }, out = new Float64Array(program.probes.length);
  for (const [q, p] of parts.entries()) {
    [part, read, adds] = [p, new Set(p.reads), new Set(p.adds)];
    for (let k = p.from; k < p.to; k += 1) { operation = k; what = `part ${q}, operation ${k}`; ctx.ops[k]!(w); }
  }
  for (const [q, p] of parts.entries()) {
    [part, read, adds] = [p, new Set(p.reads), new Set()];
    operation = p.to;
    for (let k = p.first; k < p.last; k += 1) { what = `part ${q}, ${ctx.probes[k]!.probe.of} ${ctx.probes[k]!.probe.name}`; ctx.probes[k]!.op(w, out, k); }
  }
  return [...wrong];
}

describe('a part of a program', () => {
  it('is every prep, then of the drink what is measured, what comes on top, what is mixed apart and the glass, one behind the other with nothing between', () => {
    const { program, ctx } = compile(parse(demo[0]!), tables);
    expect(program.parts.length).toBe(ctx.preps.size + 4);
    program.parts.forEach((p, q) => { expect([p.from, p.start, p.first]).toEqual(q === 0 ? [0, 0, 0] : [program.parts[q - 1]!.to, program.parts[q - 1]!.end, program.parts[q - 1]!.last]); });
    expect(program.parts.at(-1)!.to).toBe(ctx.ops.length);
  });
  it('names whatever it reads of earlier ones, and writes to none but what it takes', () => {
    for (const text of [...demo, ...specs]) {
      const compiled = compile(parse(text), tables, null, [], 'alone', true);
      expect(unnamed(compiled), text).toEqual([]);
    }
  }, LONG_MS);
  it('does so in any drink', () => {
    fc.assert(fc.property(spec, (text) => { expect(unnamed(compile(parse(text), tables, null, [], 'hand'))).toEqual([]); }), { numRuns: runs(120) });
  }, LONG_MS);
});

/** Figures that a run of some inputs alone gives another number than the whole program does. */
function wrongAgain({ program }: Compiled, moved: Int32Array): string[] {
  const n = program.probes.length, all = new Uint8Array(n).fill(1), whole = new Float64Array(n), w = program.workspace();
  const told = Int32Array.from(program.probes.flatMap((p, k) => (p.of.includes('stage:') ? [] : [k]))), wrong: string[] = [];
  const points = [-1, 0.5, 2, 0], some = new Float64Array(told.length * points.length), { xs, run } = program.again(moved, told, points.length);
  // at once and in another order, so that nothing one run leaves behind can serve the next
  for (const order of [points, points.toReversed()]) {
    order.forEach((z, m) => moved.forEach((i, j) => { xs[m]![i] = pointAt(program.inputs[i]!.spread, program.nominal[i]!, j % 2 === 0 ? z : -z); }));
    run(points.length, some, 0);
    order.forEach((z, m) => {
      program.run(xs[m]!, whole, all, w);
      told.forEach((k, c) => { const got = some[m * told.length + c]!; if (!Object.is(got + 0, whole[k]! + 0)) wrong.push(`${program.probes[k]!.of} ${program.probes[k]!.name}: ${got} for ${whole[k]} at ${z}`); });
    });
  }
  return wrong;
}

describe('runs of some inputs alone', () => {
  it('give every figure as the whole program does, bit for bit, whichever they are', () => {
    fc.assert(fc.property(fc.constantFrom(...demo, ...specs.slice(0, 12)), fc.infiniteStream(fc.nat({ max: 3 })), (text, odds) => {
      const compiled = compile(parse(text), tables);
      expect(wrongAgain(compiled, Int32Array.from(compiled.program.inputs.keys()).filter(() => odds.next().value === 0))).toEqual([]);
    }), { numRuns: runs(80) });
  }, LONG_MS);
  it('leave out the preps that they cannot reach', () => {
    const { program } = compile(parse(demo.find((text) => text.startsWith('Clear colada'))!), tables), last = program.parts.at(-1)!;
    const late = program.inputs.findIndex((_, i) => last.uses[i]! >= 0 && program.parts.slice(0, -1).every((p) => p.uses[i]! < 0));
    expect([...reachedBy(Int32Array.of(late), program.parts, program.workspace().s.length)]).toEqual(program.parts.map((_, q) => (q === program.parts.length - 1 ? 1 : 0)));
  });
});

describe('an input that is moved', () => {
  it.each(demo.map((text) => [text.split('\n')[0]!, text] as const))('%s: gives every figure as the whole program does, bit for bit', (_, text) => {
    const compiled = compile(parse(text), tables);
    expect(compiled.program.inputs.length).toBeGreaterThan(5);
    expect(wrongMoves(compiled)).toEqual([]);
  });
  it('does so in any drink', () => {
    fc.assert(fc.property(spec, (text) => { expect(wrongMoves(compile(parse(text), tables))).toEqual([]); }), { numRuns: runs(80) });
  }, LONG_MS);
});
