import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { spliced } from '../history.ts';
import { read, type Read } from '../read.ts';
import { feeders, reach, takeHold, turnLine, valueOf, type Stand } from './levels.ts';

const demo = (name: string): string => readFileSync(new URL(`../../../../demo/${name}.drink`, import.meta.url), 'utf8');
const glance = (text: string): Read => read(text, undefined, 'en', 'quick');
const stand = (text: string): Stand => ({ text, now: glance(text) });
const changed = (before: string, after: string): string[] => { const was = before.split('\n'); return after.split('\n').filter((line, i) => line !== was[i]); };

describe('a level under a hand', () => {
  const text = demo('clear-colada'), from = stand(text);

  it('hangs on the last measure poured that moves it', () => {
    const lineOf = (of: string): string => { const held = takeHold(from, of, glance)!; return changed(text, spliced(text, held.at(1, false).splices)).join(); };
    expect(lineOf('layer:0')).toBe('12.5 ml simple syrup 1:1');
    expect(lineOf('layer:1')).toBe('top with 16 g pineapple cloud');
    // the oil is poured last, but freezes and stays in the cloth
    expect(lineOf('prep:coconut rum')).toBe('310 ml white rum 40 %');
  });

  it('comes to the step nearest to where it is wanted, up and down, from wherever the hand is', () => {
    const held = takeHold(from, 'layer:0', glance)!, start = valueOf(from.now, 'layer:0')!;
    for (const [wanted, near] of [[start + 4, 0], [start - 1, 0], [start + 4, 9], [start, 7], [start + 0.3, 0]] as const) {
      const steps = reach(held, wanted, near, false), off = Math.abs(held.at(steps, false).value - wanted);
      for (const other of [steps - 1, steps + 1]) expect(Math.abs(held.at(other, false).value - wanted)).toBeGreaterThanOrEqual(off - 1e-9);
    }
    expect(reach(held, start, 0, false)).toBe(0);
  });

  it('stops at the brim, and at the last step of its measure', () => {
    const held = takeHold(from, 'layer:0', glance)!, brim = from.now.reading.glass!.profile.at(-1)![0];
    const most = reach(held, 1000, 0, false), least = reach(held, 0, 0, false);
    expect(glance(spliced(text, held.at(most, false).splices)).reading.glass!.washline_mm).toBeLessThanOrEqual(brim);
    expect(held.at(most + 1, false).over).toBe(true);
    expect(changed(text, spliced(text, held.at(least, false).splices)).join()).toBe('0.5 ml simple syrup 1:1');
  });

  it('of the whole drink turns every measure of the build by one share, and says by what', () => {
    const held = takeHold(from, 'washline', glance)!, steps = reach(held, 78, 0, false), next = spliced(text, held.at(steps, false).splices);
    expect(held.at(steps, false).words).toMatch(/^× 1\.\d+$/);
    expect(changed(text, next).length).toBe(5);
    // shares are kept as near as a hand's fine step allows: strength hardly moves
    const was = from.now.reading.figures['strength']!, is = glance(next).reading.figures['strength']!;
    expect(Math.abs(is.value - was.value)).toBeLessThan(0.8);
    expect(Math.abs(valueOf(glance(next), 'washline')! - 78)).toBeLessThan(1);
  });

  it('every level of every demo drink can be taken hold of, moves both ways and comes back', () => {
    const names = ['clear-colada', 'clear-colada.de', 'gin-and-tonic', 'tea-milk-punch', 'daiquiri', 'three-floors', 'pineapple-highball'];
    expect(names.length).toBeGreaterThanOrEqual(2);
    for (const name of names) {
      const one = stand(demo(name)), { glass, preps } = one.now.reading;
      for (const of of [...(glass?.layers.map((_, i) => `layer:${i}`) ?? []), 'washline', ...Object.keys(preps).map((key) => `prep:${key}`)]) {
        const held = takeHold(one, of, glance);
        expect(held, `${name} ${of}`).not.toBeNull();
        const up = held!.at(1, false), down = held!.at(-1, false), here = valueOf(one.now, of)!;
        expect(Math.abs(up.value - here) + Math.abs(down.value - here), `${name} ${of}`).toBeGreaterThan(0);
        expect(held!.at(0, false).splices).toEqual([]);
      }
    }
  });

  it('a line is turned where it stands, a heading or a step is not', () => {
    const lines = text.split('\n'), turned = (line: string): string => changed(text, spliced(text, turnLine(from.now, lines.indexOf(line) + 1, 1, false))).join();
    expect(turned('45 ml clear pineapple')).toBe('47.5 ml clear pineapple');
    expect(turned('Build:')).toBe('');
    expect(turned('break the gel')).toBe('');
  });

  it('without an amount, or in an empty glass, there is nothing to hold', () => {
    expect(takeHold(stand('Rum\n\nwhite rum\n'), 'layer:0', glance)).toBeNull();
    expect(takeHold(stand('Rum\n'), 'washline', glance)).toBeNull();
    expect(feeders(glance('Rum\n'), 'layer:0')).toEqual([]);
  });
});
