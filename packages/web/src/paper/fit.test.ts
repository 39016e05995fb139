import { describe, expect, it } from 'vitest';
import { settingOf, SHEET, type Said } from './fit.ts';

const lines = (n: number): Said[] => Array.from({ length: n }, (_, i) => ({ text: `${i + 1} ml something`, kind: 'line' }));

describe('the spec below its drawing on paper', () => {
  it('is set as large as is wanted where there is room, smaller where there are more lines, and never below what can be read', () => {
    const few = settingOf(lines(12), 90), many = settingOf(lines(100), 90), most = settingOf(lines(400), 90);
    expect(few.whole).toBe(true);
    expect(few.size).toBe(8.5);
    expect(many.whole).toBe(true);
    expect(many.size).toBeLessThan(few.size);
    expect(most).toEqual({ size: 5.5, leading: 5.5 * 1.28, columns: 4, whole: false });
  });
  it('stands in the room it was given: lines times leading, in so many columns', () => {
    for (const n of [5, 20, 40, 60, 80, 100, 120]) for (const room of [40, 70, 100]) {
      const { size, leading, columns, whole } = settingOf(lines(n), room);
      if (whole) expect(Math.ceil(n / columns) * leading * (25.4 / 72)).toBeLessThanOrEqual(room);
      expect(leading).toBeGreaterThan(size);
    }
  });
  it('counts a long line as the lines it breaks into, an empty one as half of one', () => {
    const long: Said[] = Array.from({ length: 30 }, () => ({ text: 'foaming methylcellulose of low viscosity, dispersed in hot water and left to swell over night', kind: 'line' }));
    expect(settingOf(long, 80).size).toBeLessThan(settingOf(lines(30), 80).size);
    expect(settingOf(Array.from({ length: 80 }, () => ({ text: '', kind: 'blank' as const })), 60).size).toBe(8.5);
  });
  it('is of A4 less a margin of a centimetre (ISO 216: 210 x 297 mm)', () => { expect(SHEET.width).toBe(210 - 20); expect(SHEET.height).toBeLessThan(297 - 20); });
});
