import { describe, expect, it } from 'vitest';
import { readText } from '@washline/spec';
import { tables } from '@washline/tables';

const drink = (line: string) => readText(`Cold\nglass: rocks\n\nBuild:\n60 ml rum 40 %\n30 ml lime juice\nshake 12 s over 150 g cubes\n${line}\nstrain into the glass\n`, { tables, quick: true, later: 'alone' as const });
const figures = (line: string) => Object.fromEntries(Object.entries(drink(line).reading.figures).map(([name, { value }]) => [name, value]));

describe('a glass that is chilled between two steps', () => {
  it.each(['chilled glass', 'chill the glass', 'chill the glass 30 min', 'freeze the glass', 'put the glass in the freezer 10 min', 'chill a rocks glass in the freezer', 'put a coupe in the freezer'])('%s: the drink stays in the tin as it is', (line) => { expect(figures(line)).toEqual(figures('# nothing')); });

  it('the glass is as cold as one that the head calls so', () => {
    const start = (line: string) => drink(line).reading.assumed.find(({ key }) => key.startsWith('start/') && key.includes('glass') && !key.includes('mixing'))?.key;
    expect(start('# nothing')).toBe('start/serving glass');
    expect(start('chill the glass')).toBe('start/chilled glass');
    expect(start('put the glass in the freezer')).toBe('start/frozen glass');
    // a bottle, and the shaker, are no glass that is served in
    expect(start('chill the shaker')).toBe('start/serving glass');
  });

  it('what is drunk is chilled where no glass is named', () => { expect(figures('put it in the fridge 30 min')['temperature']).not.toBeCloseTo(figures('# nothing')['temperature']!, 1); });
});

describe('a bottle that is shaken under its gas', () => {
  const co2 = (how: string): number => readText(`Soda\nSoda (carbonate):\n700 ml water\n${how}\n\nBuild:\n120 ml soda\n`, { tables, quick: true }).reading.preps['soda']!.figures['co2']!.value;
  // common practice, no source: shaken while the gas is on, it takes it up; poured out and shaken, it loses it
  it('loses none of it', () => { expect(co2('carbonate at 3 bar, 2 °C, shake')).toBeCloseTo(co2('carbonate at 3 bar, 2 °C'), 9); });
  it('loses it where it is opened before', () => { expect(co2('carbonate at 3 bar, 2 °C\nstrain\nshake')).toBeLessThan(0.7 * co2('carbonate at 3 bar, 2 °C')); });
});

describe('how long a prep keeps', () => {
  const cordial = (...last: string[]) => readText(['Cordial', 'Cordial (cordial):', '200 ml lime juice', '200 g sugar', 'stir until dissolved', ...last, '', 'Build:', '20 ml cordial'].join('\n'), { tables, quick: true }).reading;
  it('is not how long it is waited for, and is still held to what it keeps', () => {
    for (const last of ['bottle and keep in the fridge for up to 2 weeks', 'keeps 2 weeks', 'store in the fridge 14 days']) {
      expect(cordial(last).preps['cordial']!.ready_after).toBe('PT5M');
      expect(cordial(last).findings.map(({ code }) => code)).toContain('keeps-short');
    }
    expect(cordial('store in the fridge 2 days', 'strain').preps['cordial']!.ready_after).toMatch(/^P(2D|T48H)/);
  });
});

describe('a stir by turns', () => {
  const dilution = (line: string): number => readText(`Stir\n60 ml gin 40 %\n30 ml red vermouth\n${line} over 200 g cubes\nstrain\n`, { tables, quick: true }).reading.figures['dilution']!.value;
  // common practice, no source: a turn of a bar spoon is a little under a second
  it('of ten turns is one of eight seconds', () => { expect(dilution('stir 10 times')).toBeCloseTo(dilution('stir 8 s'), 9); });
  it('that is quick is one of five seconds', () => { expect(dilution('quick stir')).toBeCloseTo(dilution('stir 5 s'), 9); });
  it('of more turns makes more water, and a quick one less than one of unsaid length', () => {
    const all = [dilution('stir once'), dilution('quick stir'), dilution('stir 20 times'), dilution('stir')];
    expect(all).toEqual([...all].sort((a, b) => a - b));
  });
});

describe('the glass that a step names', () => {
  const glass = (head: string, ...lines: string[]) => readText(['Glass', head, 'Build:', '60 ml rum 40 %', '30 ml lime juice', ...lines].join('\n'), { tables, quick: true }).reading;
  it('is the glass of the drink where the head names none', () => {
    expect(glass('', 'shake 12 s over 150 g cubes', 'strain into a highball').glass!.name).toBe('highball glass');
    expect(glass('', 'fill a collins glass with ice', 'shake 12 s over 150 g cubes', 'strain into the glass').glass!.name).toBe('collins glass');
    expect(glass('', 'stir in a mixing glass 20 s over 150 g cubes', 'strain into a coupe').glass!.name).toBe('coupe');
    expect(glass('glass: rocks\n', 'shake 12 s over 150 g cubes', 'strain into a highball').glass!.name).toBe('rocks');
  });
  it('is not assumed, and holds its ice while something is stirred apart', () => {
    const read = glass('', 'fill a rocks glass with 120 g cubes', 'stir 20 s over 150 g cubes', 'strain into the glass');
    expect(read.assumed.map(({ key }) => key).filter((key) => key.startsWith('glass/') && !key.startsWith('glass/brim') && !key.startsWith('glass/mass'))).toEqual([]);
    expect(read.glass!.ice.length).toBeGreaterThan(0);
  });
  it('ice put into the shaker is what is shaken over', () => {
    const read = (...lines: string[]) => glass('glass: coupe\n', ...lines).figures['dilution']!.value;
    expect(read('add everything to a shaker over 150 g cubes', 'shake 12 s', 'strain')).toBeCloseTo(read('shake 12 s over 150 g cubes', 'strain'), 9);
  });
});

describe('what is listed first and poured on top', () => {
  const figures = (...lines: string[]) => { const { figures, findings } = readText(['Long', 'glass: highball, 400 ml', 'Build:', ...lines].join('\n'), { tables, quick: true }).reading; return { ...Object.fromEntries(['strength', 'volume', 'co2', 'sugar', 'temperature'].map((name) => [name, figures[name]!.value])), findings: findings.map(({ code }) => code).filter((code) => code !== 'jigger-too-coarse') }; };
  // the same drink in the two ways a recipe is written: common practice, no source
  it('is the drink that says so in one line', () => {
    const one = figures('50 ml gin 40 %', '20 ml simple syrup 1:1 by weight', 'shake 10 s over 150 g cubes', 'strain', 'top with 120 ml tonic water'), two = figures('50 ml gin 40 %', '20 ml simple syrup 1:1 by weight', '120 ml tonic water', 'shake 10 s over 150 g cubes', 'strain', 'top with tonic water');
    expect(two).toEqual(one);
    expect(two.findings).not.toContain('gas-lost');
    expect(figures('50 ml gin 40 %', '20 ml simple syrup 1:1 by weight', '120 ml tonic water', 'shake 10 s over 150 g cubes', 'strain').findings).toContain('gas-lost');
  });
});

describe('ice that nobody weighed', () => {
  const found = (ice: string, tonic = 160) => readText(`Full\n50 ml gin 40 %\nfill a highball with ${ice}\ntop with ${tonic} ml tonic water\n`, { tables, quick: true }).reading.findings.find(({ code }) => code === 'glass-overfull')?.severity;
  // who puts in ice by eye puts in what fits: common practice, no source
  it('warns that the glass runs over, and stops where it was weighed or where it would run over without', () => { expect([found('ice'), found('200 g cubes'), found('ice', 400)]).toEqual(['warn', 'stop', 'stop']); });
});

describe('what is put together before it is mixed', () => {
  const read = (...lines: string[]) => readText(['Mixed', 'glass: coupe', 'Build:', '60 ml rum 40 %', '30 ml lime juice', '20 ml simple syrup 1:1 by weight', ...lines].join('\n'), { tables, quick: true }).reading.figures;
  // put together, it is shaken once: common practice, no source
  it.each(['combine all ingredients in a shaker with ice', 'mix everything in a shaker', 'alle Zutaten vermischen', 'stir', 'add everything to a shaker with ice'])('%s: it is the shake that dilutes', (line) => {
    expect(read(line, 'shake 12 s over 150 g cubes', 'strain')['dilution']!.value).toBeCloseTo(read('shake 12 s over 150 g cubes', 'strain')['dilution']!.value, 9);
  });
  it('is stirred where nothing else mixes it', () => { expect(read('combine with 150 g cubes', 'strain')['dilution']!.value).toBeCloseTo(read('stir with 150 g cubes', 'strain')['dilution']!.value, 9); });
  it('a stir that has a time is one of its own', () => { expect(read('stir 20 s', 'shake 12 s over 150 g cubes', 'strain')['dilution']!.value).toBeGreaterThan(read('shake 12 s over 150 g cubes', 'strain')['dilution']!.value + 5); });
  it('in a bottle there is no ice', () => { expect(read('combine everything in a bottle', 'chill 4 h')['dilution']).toBeUndefined(); });
});

describe('a part of what is listed', () => {
  const foam = (line: string) => readText(['Foam', 'Foam (foam):', '300 ml orange juice at 5 °C', '100 ml water at 5 °C', '4 g gelatin', line, '', 'Build:', '60 ml foam'].join('\n'), { tables, quick: true }).reading.preps['foam']!;
  it('is no more of it, and warms the whole by its own share', () => {
    const part = foam('heat 100 ml of the orange juice to 60 °C'), whole = foam('heat to 60 °C'), more = foam('heat 100 ml orange juice to 60 °C');
    expect(part.yield.value).toBeCloseTo(whole.yield.value, 0);
    expect(more.yield.value).toBeCloseTo(part.yield.value + 100, 0);
    // by hand: a quarter of 400 ml at 60 °C and three quarters at 5 °C, the heat capacity of juice and water taken as one
    expect(part.stages.at(-1)!.figures['temperature']!.value).toBeCloseTo(5 + (60 - 5) / 4, 0);
  });
});

describe('egg with a part of what is listed made hot', () => {
  const codes = (line: string) => readText(['Nog', 'Nog (mix):', '2 eggs', '300 ml milk', line, '', 'Build:', '60 ml nog'].join('\n'), { tables, quick: true }).reading.findings.map(({ code }) => code);
  // food codes ask that the egg itself is hot; hot milk in cold egg is not that
  it('is still raw', () => {
    expect(codes('heat 100 ml of the milk to 80 °C')).toContain('egg-raw');
    expect(codes('heat to 80 °C')).not.toContain('egg-raw');
  });
});

describe('gelatine counted in sheets', () => {
  const sheets = (line: string) => { const { findings, assumed } = readText(['Foam', 'Foam (foam):', '300 ml orange juice', line, 'soak 10 min in cold water', 'heat to 60 °C', '', 'Build:', '60 ml foam'].join('\n'), { tables, quick: true }).reading; return [findings.some(({ code }) => code === 'measure-vague'), assumed.find(({ key }) => key.startsWith('larder/word/'))?.value]; };
  it('is sheets, of a grade that is assumed, however it is written', () => {
    for (const line of ['2 sheets gelatine', '2 sheets of gelatin', '2 leaves of gelatine', '2 gelatine sheets']) expect(sheets(line), line).toEqual([false, 'gold gelatin sheet']);
    expect(sheets('2 Blatt Gelatine')).toEqual(sheets('2 Gelatineblätter'));
    expect(sheets('4 g gelatine')).toEqual([false, undefined]);
  });
});
