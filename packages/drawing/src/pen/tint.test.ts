import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrast, iceTint, tint, toLch } from './tint.ts';

const INK = { light: '#10242b', dark: '#e8eee6' } as const;
const colours = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`);

describe('the tint of a liquid', () => {
  it('measures colours as print does', () => {
    // CSS Color Module Level 4 (W3C), section 10: sRGB red is oklch(0.627955 0.257683 29.2339); green (#008000) is oklch(51.975% 0.17686 142.495).
    const red = toLch('#ff0000'), green = toLch('#008000');
    expect(red.l).toBeCloseTo(0.627955, 3); expect(red.c).toBeCloseTo(0.257683, 3); expect(red.h).toBeCloseTo(29.2339, 1);
    expect(green.l).toBeCloseTo(0.51975, 3); expect(green.c).toBeCloseTo(0.17686, 3); expect(green.h).toBeCloseTo(142.495, 1);
  });
  it('measures contrast as WCAG 2 does', () => {
    // WCAG 2.2, definition of contrast ratio: black on white 21; #767676 on white is the grey that just passes 4.5 (Understanding 1.4.3).
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });
  it('keeps ink legible on any liquid, as a line (3 : 1) at least', () => {
    fc.assert(fc.property(colours, fc.constantFrom('light', 'dark'), fc.constantFrom('glass', 'upstream'), fc.boolean(), fc.double({ min: 0, max: 3, noNaN: true }), (colour, scheme, at, foam, turbidity) => {
      expect(contrast(tint(colour, { at, scheme, foam, turbidity }), INK[scheme])).toBeGreaterThan(4.5);
    }));
  });
  it('keeps the hue of a liquid that has one', () => {
    for (const colour of ['#c8545a', '#e0b580', '#7c9a3c', '#5a4632']) {
      const own = toLch(colour).h, shown = toLch(tint(colour, { at: 'glass', scheme: 'light' })).h;
      expect(Math.abs(((own - shown + 540) % 360) - 180)).toBeLessThan(4);
    }
  });
  it('lets a clear drink look clear, and paler than a cloudy or a coloured one', () => {
    const clear = toLch(tint('#f6f6f1', { at: 'glass', scheme: 'light', strength: 30 })), coloured = toLch(tint('#e0b060', { at: 'glass', scheme: 'light' })), cloudy = toLch(tint('#f6f6f1', { at: 'glass', scheme: 'light', turbidity: 3 }));
    expect(clear.l).toBeGreaterThan(0.91);
    expect(clear.c).toBeLessThan(coloured.c / 2);
    expect(clear.c).toBeLessThan(cloudy.c);
  });
  it('takes the hue of water without a colour to that of spirit by strength', () => {
    expect(toLch(tint('#ffffff', { at: 'glass', scheme: 'light', strength: 0, turbidity: 3 })).h).toBeCloseTo(125, -1);
    expect(toLch(tint('#ffffff', { at: 'glass', scheme: 'light', strength: 40, turbidity: 3 })).h).toBeCloseTo(203, -1);
  });
  it('tells ice from both sheets', () => {
    expect(iceTint('light', 'glass')).not.toBe(iceTint('dark', 'glass'));
  });
});
