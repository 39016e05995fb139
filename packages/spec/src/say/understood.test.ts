import { describe, expect, it } from 'vitest';
import { parse } from '../document/parse.ts';
import { understood } from './understood.ts';

const read = (line: string, tongue: 'en' | 'de' = 'en', before = 'Harbour\n\nTea rum (infusion):\n100 ml white rum\n\nBuild:\n'): string[] => parse(before + line).sections.find((one) => one.kind === 'build')?.lines[0]?.actions.map((one) => understood(one, tongue)) ?? [];

describe('what a line was understood as', () => {
  it.each([
    ['60 ml white rum 40 %', ['60 ml white rum, 40 % vol']],
    ['2 oz light rum', ['2 oz = 59.1 ml white rum']],
    ['1½ oz lime juice, strained', ['1.5 oz = 44.4 ml lime juice, strained']],
    ['60 ml tea rum', ['60 ml tea rum (prep)']],
    ['60 ml zorble', ['60 ml zorble (not known)']],
    ['15 ml simple syrup 1:1', ['15 ml simple syrup, 1:1']],
    ['stir 25 s over 200 g cubes at -5 °C', ['stir 25 s over 200 g cubes at −5 °C']],
    ['shake 10 s and strain into a coupe', ['shake 10 s', 'strain into coupe']],
    ['strain through a paper filter', ['strain through paper filter']],
    ['juice of 1 lime', ['1 lime juice']],
  ])('%s', (line, said) => { expect(read(line)).toEqual(said); });
  it.each([
    ['2 oz light rum', ['2 oz = 59,1 ml weißer Rum']],
    ['stir 25 s over 200 g cubes at -5 °C', ['rühren 25 s auf 200 g eiswürfel bei −5 °C']],
  ])('%s in German', (line, said) => { expect(read(line, 'de').map((one) => one.toLowerCase())).toEqual(said.map((one) => one.toLowerCase())); });
  it('has words for every line of a whole spec, in both languages, without gaps', () => {
    const spec = 'Harbour\n\nA (siphon foam):\n1.5 gold gelatin sheets, soaked 10 min in cold water\n230 ml pineapple juice, held 5 min at 85 °C\ncharge 2 N2O in a 500 ml siphon\nchill 4 h at 4 °C\n\nBuild:\n60 ml white rum 40 %\nthe rest of the A\n10 ml lime acid 6 %\ntop with soda\ngarnish pineapple leaf\n';
    for (const tongue of ['en', 'de'] as const) for (const section of parse(spec).sections) for (const line of section.lines) for (const action of line.actions) expect(understood(action, tongue)).not.toMatch(/undefined|\bfalse\b|^\s*$| {2}/);
  });
});
