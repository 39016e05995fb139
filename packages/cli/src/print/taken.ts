import type { LineAt, Reading } from '../reader.ts';
import { say } from '../sentences.ts';
import { sayAssumed } from './assumed.ts';
import { heading } from './heading.ts';
import type { Ink } from './ink.ts';
import { number } from './numbers.ts';
import { wrap } from './text.ts';

/** Where values came from that a bench or a shelf had a say in, and what was passed over. */
export function printTaken(list: Reading['taken'], ink: Ink): string[] {
  if (!list || list.length === 0) return [];
  const rows = list.flatMap((taken) => {
    const over = (taken.over ?? []).map((one) => say('taken.over', { from: say(`taken.${one.from}`), value: shown(one.value) })).join(', ');
    const what = nameOfTaken(taken);
    return wrap(`${what} ${say(`taken.as.${taken.from}`)}${over === '' ? '' : ` (${over})`}`, '  ', '    ');
  });
  return [...heading('taken', ink), ...rows];
}

const shown = (value: number | string): string => (typeof value === 'number' ? number(Number(value.toPrecision(4))) : value);

function nameOfTaken(taken: NonNullable<Reading['taken']>[number]): string {
  const bottle = /^bottle\/(.+)\/(strength|price)$/.exec(taken.key), unit = /^unit\/(.+)$/.exec(taken.key);
  const value = `${shown(taken.value)} ${taken.unit}`.trim();
  if (bottle) return say(`taken.${bottle[2]}`, { bottle: bottle[1] ?? '', value });
  if (unit) return say('taken.unit', { unit: unit[1] ?? '', value: `${value} (${shown(taken.low ?? 0)} to ${shown(taken.high ?? 0)})` });
  return sayAssumed({ key: taken.key, value: taken.value, unit: taken.unit, low: taken.low ?? null, high: taken.high ?? null });
}

/** Which lines the cost does not hold. */
export function printCost(cost: Reading['cost'], lineAt: LineAt = () => undefined): string[] {
  if (!cost) return [];
  const lines = cost.unpriced.map((one) => { const line = lineAt(one.path); return say(one.currency === undefined ? 'cost.line' : 'cost.line.other', { thing: one.thing, line: line?.line ?? '?', currency: one.currency ?? '' }); });
  return [
    ...(cost.partial ? wrap(say('cost.partial', { lines: lines.join(', ') }), '', '  ') : []),
    ...(cost.assumed ? wrap(say('cost.assumed', { currency: cost.currency }), '', '  ') : []),
  ];
}
