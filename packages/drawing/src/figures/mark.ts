import type { Figure } from '@washline/engine';
import { decimalsFor, figureShown, leastDecimals, shown } from '../pen/numbers.ts';
import { inUnits } from '../pen/units.ts';
import { words } from '../words.ts';
import type { FigureMark } from '../shapes.ts';

export function markOf(reading: string, name: string, figure: Figure): FigureMark {
  return { reading, name, value: figure.value, unit: figure.unit, low: figure.low, high: figure.high };
}

/** What a figure is called aloud: name, of what, value, range, grade. */
export function figureName(of: string, name: string, told: Figure): string {
  const figure = inUnits(told), decimals = decimalsFor(figure.low, figure.high, leastDecimals(figure.unit));
  return words('aloud.figure', {
    figure: words(`figure.${name}`, {}), of: of === 'drink' ? words('of.drink', {}) : of, value: figureShown(figure, decimals),
    spread: figure.high > figure.low ? words('aloud.spread', { low: shown(figure.low, decimals), high: shown(figure.high, decimals) }) : '', grade: words(`grade.${figure.grade}`, {}),
  });
}
