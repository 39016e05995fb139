import { describe, expect, it } from 'vitest';
import { parse } from './parse.ts';

/** Of the last line: what each of its actions is, and which line above it pours. */
const last = (...lines: string[]) => parse(['Again', '', 'Build:', ...lines].join('\n')).sections[0]!.lines.at(-1)!.actions.map((a) => [a.kind === 'step' || a.kind === 'fill' ? a.verb : a.kind, a.kind === 'step' || a.kind === 'fill' ? a.again?.at(-1) : undefined]);

describe('what a line above has measured', () => {
  it.each([
    [['50 ml white rum', 'add the rum to a mixing glass with ice'], [['add', 0]]],
    [['50 ml white rum', '100 ml soda water', 'top with soda water'], [['top', 1]]],
    [['50 ml white rum', '100 ml soda', 'pour in the rum and top with soda'], [['pour', undefined], ['top', 1]]],
    [['50 ml Gin', '150 ml Tonic', 'mit Tonic auffüllen'], [['top', 1]]],
    [['50 ml white rum', '20 ml simple syrup', 'add the syrup to the shaker'], [['add', 1]]],
  ])('%j: %j', (lines, actions) => { expect(last(...lines)).toEqual(actions); });

  it.each([
    // nothing above has it, it has an amount of its own, two lines have it, it was poured before
    [['50 ml white rum', 'top with soda water'], [['top', undefined]]],
    [['50 ml white rum', '30 ml soda water', 'top with 60 ml soda water'], [['top', undefined]]],
    [['50 ml white rum', '20 ml aged rum', 'add the rum'], [['measure', undefined]]],
    [['50 ml white rum', '90 ml soda water', 'top with soda water', 'top with soda water'], [['top', undefined]]],
    [['50 ml white rum', '50 ml pineapple juice', 'add mint'], [['measure', undefined]]],
  ])('%j is none of it', (lines, actions) => { expect(last(...lines)).toEqual(actions); });

  it.each([['heat 100 ml of the rum', 0], ['heat 100 ml rum', undefined]])('%s: of the line above %s', (line, at) => { expect(last('300 ml rum', line)).toEqual([['heat', at]]); });

  it('is poured where the line stands that says so, and has its amount where it is listed', () => {
    const [rum, tonic, top] = parse('Again\n\n50 ml rum\n150 ml tonic water\ntop with tonic water').sections[0]!.lines.map((l) => l.actions[0]!);
    expect(rum).toMatchObject({ kind: 'measure' });
    expect(tonic).toMatchObject({ kind: 'measure', amount: { low: 150 } });
    expect(top).toMatchObject({ kind: 'fill', again: tonic!.path, measure: { amount: null } });
  });
});
