import type { SourDose } from '@washline/engine';
import { say } from '../sentences.ts';
import { number } from './numbers.ts';
import { fit } from './text.ts';

const tenths = (value: number): string => number(Number(value.toFixed(1)));
const WAY = 36, NUMBER = 10;
const row = (way: string, cells: readonly string[]): string => `${fit(way, WAY)}${cells.map((cell) => cell.padStart(NUMBER)).join('')}`;

/** How sour an ingredient is, and what makes a litre of it as sour as lime and as lemon. */
export function soursShown(acidity: number | undefined, doses: readonly SourDose[]): string[] {
  if (acidity === undefined || acidity < 0.05) return [];
  const lines = [`  ${say('larder.acidity', { acidity: tenths(acidity) })}`];
  for (const fruit of ['lime', 'lemon'] as const) {
    const own = doses.filter(({ to }) => to === fruit);
    if (own.length > 0) lines.push(row(`  ${say(`larder.sour.${fruit}`)}`, ['citric', 'monohydrate', 'malic', 'then'].map((word) => say(`larder.sour.${word}`))));
    for (const dose of own) {
      const way = say(dose.by === 'fruit' ? `larder.by.${fruit}` : `larder.by.${dose.by}`, { aim: tenths(dose.aim_g_l ?? 0) });
      lines.push(row(`    ${way}`, [dose.citric_g, dose.citric_monohydrate_g, dose.malic_g, dose.acidity_g_l].map(tenths)));
    }
  }
  return lines;
}
