import { describe, expect, it } from 'vitest';
import { CLEAR_COLADA } from '../test/readings.ts';
import { terminalGlass } from './terminal.ts';

describe('the glass in characters', () => {
  it('keeps to its width and says level and strength', () => {
    const lines = terminalGlass(CLEAR_COLADA, { width: 60, height: 18 });
    expect(Math.max(...lines.map((l) => l.length))).toBeLessThanOrEqual(60);
    expect(lines.join('\n')).toContain('74.1 mm');
    expect(lines.join('\n')).toContain('15.3 % vol');
    expect(lines.some((l) => l.includes('ooo'))).toBe(true);
  });
  it('is to scale, a character being twice as tall as wide', () => {
    const profile = CLEAR_COLADA.glass?.profile ?? [];
    const [height, width] = [profile.at(-1)?.[0] ?? 0, 2 * Math.max(...profile.map(([, r]) => r))];
    const lines = terminalGlass(CLEAR_COLADA, { width: 80, height: 14 });
    const drawn = Math.max(...lines.map((l) => l.lastIndexOf('│') - l.indexOf('│') - 1)) / (2 * (lines.length - 1));
    expect(Math.abs(drawn / (width / height) - 1)).toBeLessThan(0.08);
  });
  it('can keep to ASCII', () => {
    expect(terminalGlass(CLEAR_COLADA, { width: 60, height: 18, ascii: true }).join('')).toMatch(/^[ -~]*$/);
  });
  it('draws nothing where nothing stands in a glass', () => {
    expect(terminalGlass({ ...CLEAR_COLADA, glass: null }, { width: 60, height: 18 })).toEqual([]);
  });
});
