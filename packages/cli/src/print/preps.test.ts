import type { Cloth, Figure, PrepGas } from '@washline/engine';
import { describe, expect, it } from 'vitest';
import { plainTerminal } from './ink.ts';
import { printCloth, printGas } from './preps.ts';
import { columns } from './text.ts';

const figure = (value: number, spread: number, unit: string): Figure => ({ value, unit, low: value - spread, high: value + spread, skewed: false, grade: 'trade', method: 'test', sources: ['common-practice'] });
/** Invented numbers: only how they are shown is checked. */
const SIPHON: PrepGas = {
  kind: 'N2O', pressure: figure(11.6, 2, 'bar'), temperature: figure(5, 4, '°C'),
  siphon: { chargers: figure(2, 0, ''), gas: figure(16, 0.5, 'g'), gross: figure(750, 118, 'mL'), fill: figure(322, 14, 'mL'), headspace: figure(428, 119, 'mL'), charged: figure(14.2, 3, 'bar'), charged_at: figure(20, 5, '°C') },
};
const CURD: Cloth = {
  mass: figure(93.3, 27, 'g'), solids: figure(16.2, 1.4, 'g'), liquid: figure(77, 27, 'g'), casein: figure(6.7, 0.7, 'g'), fat: figure(8.7, 1, 'g'),
  passed: { whey: figure(1.5, 0.2, 'g'), lactose: figure(12.1, 1, 'g') }, balance_g: { in: 1131.6, kept: 1034.5, cloth: 93.3, boiled_off: 3.8, left_in: 0 },
};
const said = (lines: readonly string[]): string => lines.join(' ').replace(/\s+/g, ' ').trim();

describe('what presses and what stays, in the terminal', () => {
  it('a siphon: how full of what it holds, chargers, pressure with its range at both temperatures, and the caution', () => {
    const text = said(printGas(SIPHON));
    for (const part of ['filled 322 (308 to 336) mL of 750 (632 to 868) mL', '428 (309 to 547) mL free above it', 'chargers 2', '12 ± 2 bar on the gauge at 5 ± 4 °C', '14 ± 3 bar as charged at 20 ± 5 °C', "makers win", 'Vent it before opening', 'never inhale']) expect(text).toContain(part);
  });
  it('a carbonated liquid: its pressure, and the limit of the bottle first', () => {
    const text = said(printGas({ kind: 'CO2', pressure: figure(2, 0.2, 'bar'), temperature: figure(2, 1, '°C') }));
    for (const part of ['on the gauge 2.0 ± 0.2 bar at 2 ± 1 °C', "bottle's maker wins", 'Vent it before opening']) expect(text).toContain(part);
  });
  it('a milk wash: curd, what passes, that it stays milk, and where all of it went', () => {
    const text = said(printCloth(CURD));
    for (const part of ['in the cloth 90 ± 30 g: 16 ± 1 g of solids (casein 6.7 ± 0.7 g, fat 9 ± 1 g), 80 ± 30 g of liquid', '1.5 ± 0.2 g of whey protein and 12 ± 1 g of lactose: still milk for an allergy', '1132 g in = 1035 g kept + 93 g in the cloth + 3.8 g boiled off']) expect(text).toContain(part);
  });
  it('a sieve that is only wet says no solids', () => { expect(said(printCloth({ mass: figure(2, 1, 'g'), solids: figure(0.004, 0.002, 'g'), liquid: figure(2, 1, 'g'), balance_g: { in: 300, kept: 298, cloth: 2, boiled_off: 0, left_in: 0 } }))).not.toContain('solids'); });
  it('keeps within 80 columns, and prints nothing of a prep without', () => {
    for (const line of [...printGas(SIPHON), ...printCloth(CURD)]) expect(columns(line), line).toBeLessThanOrEqual(80);
    expect([...printGas(undefined), ...printCloth(undefined)]).toEqual([]);
  });
});

describe('a terminal that is not UTF-8', () => {
  const world = (isTTY: boolean, env: Record<string, string>) => ({ stdin: (async function* () { /* nothing typed */ })(), stdout: { write: () => true, isTTY }, stderr: { write: () => true }, env });
  it.each([[true, { LANG: 'C' }, true], [true, { LANG: 'de_DE.ISO-8859-1' }, true], [true, { LANG: 'en_US.UTF-8' }, false], [true, { LANG: 'C', LC_ALL: 'C.utf8' }, false], [true, {}, false], [false, { LANG: 'C' }, false]] as const)('a terminal: %s, %o: ASCII %s', (tty, env, ascii) => {
    expect(plainTerminal(world(tty, env))).toBe(ascii);
  });
});
