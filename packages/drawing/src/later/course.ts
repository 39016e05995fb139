import type { Figure } from '@washline/engine';
import type { Reading } from '../reading.ts';
import { inUnits } from '../pen/units.ts';

export type CourseName = 'temperature' | 'strength' | 'volume' | 'ice_left' | 'co2';
/** One figure of a drink that is left alone in its glass, minute by minute as the reading tells it. */
export interface Course { readonly name: CourseName; readonly points: readonly { readonly minutes: number; readonly figure: Figure }[] }

const NAMES: readonly CourseName[] = ['temperature', 'strength', 'ice_left', 'co2', 'volume'];

/**
 * How a drink warms and waters: its figures by the minute, those alone that are told at two times or more. What it is when poured stands
 * first where it is the same liquid: strength and volume of the whole drink count a foam or gel that the later ones leave out.
 */
export function coursesOf(reading: Reading): Course[] {
  const { later = [], glass, figures } = reading;
  const alone = glass !== null && glass.layers.every((layer) => layer.kind === 'liquid');
  return NAMES.flatMap((name) => {
    const told = later.flatMap(({ minutes, figures: then }) => { const figure = then[name]; return figure === undefined ? [] : [{ minutes, figure }]; });
    const poured = name === 'temperature' || name === 'co2' || (alone && name !== 'ice_left') ? figures[name] : undefined;
    const first = poured === undefined || told[0] === undefined || told[0].minutes <= 0 ? [] : [{ minutes: 0, figure: poured }];
    // a drink without alcohol has no course of its strength
    const nothing = name === 'strength' && told.every(({ figure }) => figure.high < 0.05);
    return told.length < 2 || nothing ? [] : [{ name, points: [...first, ...told].map(({ minutes, figure }) => ({ minutes, figure: inUnits(figure) })) }];
  });
}

/** The lowest and the highest of a course with its ranges. */
export function reachOf({ points }: Course): readonly [number, number] {
  return [Math.min(...points.map((p) => p.figure.low)), Math.max(...points.map((p) => p.figure.high))];
}

/** A value between told times, on a straight line. */
export function between(course: Course, minutes: number, of: 'low' | 'value' | 'high'): number | null {
  const { points } = course, k = points.findIndex((p) => p.minutes >= minutes);
  const b = points[k], a = points[k - 1];
  if (b === undefined) return null;
  if (b.minutes === minutes) return b.figure[of];
  if (a === undefined) return null;
  return a.figure[of] + ((b.figure[of] - a.figure[of]) * (minutes - a.minutes)) / (b.minutes - a.minutes);
}
