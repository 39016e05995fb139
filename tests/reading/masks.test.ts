import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compile, pointAt, Z95 } from '@washline/engine';
import { parse } from '@washline/spec';
import { tables } from '@washline/tables';

// Oracle: the whole program, run from the start with every probe. What the spread leaves out must not have moved.

const demo = readdirSync('demo').filter((f) => f.endsWith('.drink')).map((f) => [f, readFileSync(`demo/${f}`, 'utf8')] as const);

describe('an input moves nothing that stands before it', () => {
  it.each(demo)('%s', (_, text) => {
    const { program } = compile(parse(text), tables);
    const w = program.workspace(), n = program.probes.length, all = new Uint8Array(n).fill(1);
    const value = new Float64Array(n), out = new Float64Array(n);
    const x = Float64Array.from(program.nominal);
    program.run(x, value, all, w);
    program.inputs.forEach((input, i) => {
      x[i] = pointAt(input.spread, input.value, Z95);
      program.run(x, out, all, w);
      program.probes.forEach((probe, k) => {
        if (probe.after <= program.firstOp[i]!) expect(Object.is(out[k], value[k]), `${input.key} moves ${probe.of} ${probe.name}`).toBe(true);
      });
      x[i] = input.value;
    });
  });
});
