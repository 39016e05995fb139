import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { compile } from '@washline/engine';
import { parse, readText } from '@washline/spec';
import { tables } from '@washline/tables';

const read = (text: string, later = true) => readText(text, { tables, later: later ? 'alone' : null, quick: true }).reading;
const at = (text: string, minutes: number, name: string) => read(text).later!.find((l) => l.minutes === minutes)!.figures[name]!.value;
const input = (text: string, key: string) => compile(parse(text), tables, null, [], 'alone').program.inputs.find((i) => i.key === key)!.value;
const TONIC = 'A\nglass: highball\n50 ml gin 40 %\nbuild over 150 g cubes at -5 °C\ntop with 100 ml tonic water';
const WATER = 'A\nglass: highball\n200 ml water at 4 °C\nserve';

// Newton's law of cooling for two lumped bodies, any textbook of heat transfer: stepped here a tenth of a second at a time, heat capacity of water 4.19 J/(g K).
it('water without ice warms as two lumped bodies do', () => {
  const mass = 200 * 0.9982, capacity = mass * 4.19, filled = 0.2 + (0.8 * 200) / compile(parse(WATER), tables, null, [], 'alone').build!.glass.brim_mL;
  const glass = input(WATER, 'glass/mass/highball') * 0.84 * filled, room = input(WATER, 'place/room');
  const inner = input(WATER, 'conductance/drink to still glass'), outer = input(WATER, 'conductance/vessel to air');
  let drink = 4, vessel = input(WATER, 'start/serving glass');
  for (let i = 1; i <= 18000; i++) {
    const in_ = inner * (vessel - drink), out = outer * (room - vessel);
    drink += (0.1 * in_) / capacity;
    vessel += (0.1 * (out - in_)) / glass;
    for (const minutes of [2, 10, 30]) if (i === minutes * 600) expect(Math.abs(at(WATER, minutes, 'temperature') - drink)).toBeLessThan(0.1);
  }
});
// Heat of fusion of ice 333.6 J/g, CRC Handbook: what melts has taken it from drink, glass and room, and from nothing else.
it('what melts is paid for by drink, glass and room', () => {
  const start = read(TONIC, false).figures['temperature']!.value, room = input(TONIC, 'place/room'), outer = input(TONIC, 'conductance/vessel to air');
  const glass = input(TONIC, 'glass/mass/highball') * 0.84;
  for (const minutes of [2, 5, 10, 20, 30]) {
    const t = at(TONIC, minutes, 'temperature');
    const most = 150 * 4.19 * (start - t) + glass * (room - t) + outer * (room - t) * minutes * 60 + 400;
    expect(at(TONIC, minutes, 'melted') * 333.6).toBeLessThan(most);
  }
});
it('on ice strength falls and volume grows from minute to minute, and ice never comes back', () => {
  const rows = read(TONIC).later!;
  for (let i = 1; i < rows.length; i++) {
    expect(rows[i]!.figures['strength']!.value).toBeLessThan(rows[i - 1]!.figures['strength']!.value);
    expect(rows[i]!.figures['volume']!.value).toBeGreaterThan(rows[i - 1]!.figures['volume']!.value);
    expect(rows[i]!.figures['ice_left']!.value).toBeLessThan(rows[i - 1]!.figures['ice_left']!.value);
  }
});
it('water on ice at 0 °C stays within a few kelvins of it for half an hour (common practice, no source)', () => {
  for (const minutes of [10, 20, 30]) expect(Math.abs(at('A\nglass: highball\n150 ml water at 4 °C\nbuild over 150 g cubes at 0 °C', minutes, 'temperature'))).toBeLessThan(3);
});
it('ice and what melted of it are the ice there was', () => {
  for (const minutes of [2, 10, 30]) expect(at(TONIC, minutes, 'ice_left') + at(TONIC, minutes, 'melted')).toBeCloseTo(read(TONIC, false).glass!.ice[0]!.mass_g, 6);
});
it('one large cube keeps a drink less cold and melts less than crushed ice of the same mass', () => {
  const with_ = (ice: string) => `A\nglass: double rocks\n60 ml white rum 40 %\n30 ml water\nserve over ${ice}`;
  expect(at(with_('1 clear cube 50 mm'), 5, 'melted')).toBeLessThan(at(with_('115 g crushed'), 5, 'melted'));
});
it('a glass from the freezer keeps a drink colder', () => {
  const up = (glass: string) => `A\nglass: ${glass}\n60 ml gin 40 %\n20 ml dry vermouth\nstir 30 s over 200 g cubes\nstrain`;
  expect(at(up('frozen coupe'), 5, 'temperature')).toBeLessThan(at(up('coupe'), 5, 'temperature'));
});
it('asked or not, all else of the reading is the same', () => {
  for (const file of ['gin-and-tonic.drink', 'daiquiri.drink', 'three-floors.drink']) {
    const text = readFileSync(new URL(`../../demo/${file}`, import.meta.url), 'utf8');
    const asked = read(text), plain = read(text, false);
    expect(plain.later).toBeUndefined();
    expect(asked.figures).toEqual(plain.figures);
    expect(asked.findings).toEqual(plain.findings);
    for (const { figures } of asked.later!) for (const f of Object.values(figures)) for (const n of [f.value, f.low, f.high]) expect(Number.isFinite(n)).toBe(true);
  }
});

// Heat of a hand: skin of 33 °C, common practice, no source; here as one lumped body between skin and room, any textbook of heat transfer.
it('a hand warms a tumbler and leaves a stemmed glass alone', () => {
  const after = (glass: string, later: 'alone' | 'hand') => readText(`A\nglass: ${glass}\n120 ml rum 40 % at -5 °C\nserve`, { tables, later, quick: true }).reading.later!.map((l) => l.figures['temperature']!.value);
  const alone = after('rocks', 'alone'), held = after('rocks', 'hand');
  held.forEach((t, i) => { expect(t).toBeGreaterThan(alone[i]! + 0.3); });
  expect(held[4]).toBeGreaterThan(input(WATER, 'place/room'));
  expect(held[4]).toBeLessThan(33);
  expect(after('coupe', 'hand')).toEqual(after('coupe', 'alone'));
});
it('ice goes sooner in a hand', () => {
  const ice = (later: 'alone' | 'hand') => readText(TONIC, { tables, later, quick: true }).reading.later!.map((l) => l.figures['ice_left']!.value);
  const alone = ice('alone');
  ice('hand').forEach((g, i) => { expect(g).toBeLessThan(alone[i]!); });
});
