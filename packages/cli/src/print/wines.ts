import type { WineResult } from '@washline/engine';
import { say } from '../sentences.ts';
import { number } from './numbers.ts';
import { fit } from './text.ts';

/** Measured wines against the bands worked for them, a line per figure and colour. */
export function winesShown({ groups, left_out }: WineResult): string[] {
  const rows = groups.map(({ colour, figure, cases, share, bias, rms, unit }) => {
    if (share === null || bias === null || rms === null) return `  ${fit(say(`verify.wine.${figure}`, { colour: say(`verify.wine.${colour}`) }), 34)} ${say('verify.wine.no')}`;
    const short = (value: number): string => number(Number(value.toPrecision(3)));
    return `  ${fit(say(`verify.wine.${figure}`, { colour: say(`verify.wine.${colour}`) }), 34)} ${say('verify.wine.row', { cases, share: number(Number((100 * share).toFixed(1))), bias: short(bias), rms: short(rms), unit: unit === 'kg/m3' ? 'kg/m³' : unit })}`;
  });
  return [say('verify.wines'), ...rows, say('verify.wine.left', { duplicates: left_out.duplicates, sugar: left_out.sugar })];
}
