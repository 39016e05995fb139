import type { Completion } from '@washline/spec';
import { shown } from '@washline/drawing';
import en from '../language/kinds.en.json';
import de from '../language/kinds.de.json';

const UNITS: Readonly<Record<string, string>> = { ml: 'ml', g: 'g', mm: 'mm', s: 's', kPa: 'kPa' };

/** What a candidate is, in a few words: how strong, of what kind, how much. */
export function kindOf(one: Completion, language: 'en' | 'de'): string {
  const words: Readonly<Record<string, string>> = language === 'de' ? de : en, said = (key: string): string => words[key] ?? '';
  const percent = one.strength === undefined ? '' : `${shown(one.strength, one.strength % 1 === 0 ? 0 : 1)} % vol`;
  const amount = (unit: string): string => (one.low === undefined || one.high === undefined ? '' : one.low === one.high ? `${number(one.low)} ${unit}` : `${number(one.low)}–${number(one.high)} ${unit}`);
  switch (one.kind) {
    case 'prep': return one.of === '' ? said('kind.prep') : `${said('kind.prep')}, ${one.of}`;
    case 'bottle': return percent === '' ? said('kind.bottle') : `${said('kind.bottle')}, ${percent}`;
    case 'ingredient': return [said(`category.${one.of}`), percent].filter((part) => part !== '').join(', ');
    case 'unit': return UNITS[one.of] === undefined || (one.low === 1 && one.high === 1) ? '' : amount(UNITS[one.of] ?? '');
    case 'glass': return [said('kind.glass'), amount('ml')].filter((part) => part !== '').join(', ');
    case 'ice': return [said('kind.ice'), amount('mm')].filter((part) => part !== '').join(', ');
    default: return said(`kind.${one.kind}`);
  }
}

function number(value: number): string { return shown(value, value >= 100 || Number.isInteger(value) ? 0 : value >= 10 ? 1 : 2); }
