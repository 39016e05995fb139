import { shown, unitShown } from '../pen/numbers.ts';
import { inUnits } from '../pen/units.ts';
import { textBox, type Pad } from '../pen/pad.ts';
import type { Grip } from '../prep/flow.ts';
import { polygon } from '../pen/path.ts';
import type { LevelMark, Run } from '../shapes.ts';
import { words } from '../words.ts';

/** A level as something to take hold of, between two x: its triangle shows when a pointer or the keyboard is there. */
export function drawHandle(pad: Pad, mark: Omit<LevelMark, 'of' | 'unit'> & { readonly unit: 'mm' | 'mL'; readonly id: string; readonly within: string; readonly name: string }, at: { readonly y: number; readonly from: number; readonly to: number; readonly tall: number }): void {
  const told = inUnits({ value: mark.value, low: mark.value, high: mark.value, unit: mark.unit });
  const { id: of, within, name, value, unit, perPx } = mark, { y, from, to, tall } = at;
  pad.open({ id: `handle:${of}`, within, role: 'handle', level: { of, value, unit, perPx }, name: words('aloud.level', { name, value: shown(unit === 'mm' ? value : told.value, unit === 'mm' || told.unit !== 'mL' ? 1 : 0), unit: unit === 'mm' ? 'mm' : unitShown(told.unit) }) });
  pad.target({ x: from, y: y - tall / 2, width: to - from, height: tall });
  const x = to - 12;
  pad.path('hand', polygon([[x, y - 1], [x - 5.6, y - 11], [x + 5.6, y - 11]]));
}

/** The washline's own: at the triangle that always stands on it. */
export function drawScale(pad: Pad, value: number, perPx: number, at: { readonly x: number; readonly y: number; readonly tall: number }): void {
  pad.open({ id: 'handle:washline', within: 'glass', role: 'handle', level: { of: 'washline', value, unit: 'mm', perPx }, name: words('aloud.scale', { value: shown(value, 1) }) });
  pad.target({ x: at.x - at.tall / 2, y: at.y - at.tall / 2, width: at.tall, height: at.tall });
}

/**
 * Letters an amount that can be taken hold of and typed over: `x`, `y` as those of its text. Where nothing can be turned it is only lettered. The part that
 * was open before is not open after it.
 */
export function drawAmount(pad: Pad, grip: Grip | undefined, x: number, y: number, runs: readonly Run[], anchor: 'start' | 'middle' | 'end' = 'start', tall = 15): void {
  if (grip === undefined) { pad.text(x, y, runs, anchor); return; }
  const { path, value, unit, of } = grip, said = runs.map(({ text }) => text).join(''), box = textBox(x, y, runs, anchor);
  pad.open({ id: `amount:${path}`, within: null, role: 'amount', level: { of: `amount:${path}`, value, unit, perPx: 0 }, name: said.includes(of) ? said : `${said} ${of}` });
  pad.target({ x: box.x - 4, y: box.y + box.height / 2 - tall / 2, width: Math.max(24, box.width + 8), height: tall });
  pad.text(x, y, runs, anchor);
}
