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
  it('can keep to ASCII', () => {
    expect(terminalGlass(CLEAR_COLADA, { width: 60, height: 18, ascii: true }).join('')).toMatch(/^[ -~]*$/);
  });
  it('draws nothing where nothing stands in a glass', () => {
    expect(terminalGlass({ ...CLEAR_COLADA, glass: null }, { width: 60, height: 18 })).toEqual([]);
  });
});
