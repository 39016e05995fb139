import table from '../../../../data/physics/keeping.json' with { type: 'json' };

/** Coldest that hot food and warmest that cold food is held at, °C. @source food-code-holding 41 and 135 °F */
export const HOLDING = table.holding;
/** Hours that food which spoils may stand outside the cold when time is the control. @source food-code-holding 4 h */
export const STANDS_H = table.standing.hours;
/** The same in England, Wales and Northern Ireland. @source uk-chill */
export const HOLDING_UK = table.uk;

/**
 * Whether food wants assessing before it may stand outside the cold: its place in table A (heated and packed) or B (all else) of the food code.
 * which: `A` or `B`; aw: water activity 0 to 1; pH. True: product assessment needed, taken as time and temperature controlled until shown otherwise. Ethanol is no hurdle in either.
 * @source food-code tables A and B of the definition
 */
export function needsAssessment(which: 'A' | 'B', aw: number, pH: number): boolean {
  if (which === 'A') {
    const { aw: [a0, a1], pH: [p0, p1], assess } = table.foodCode.A as { aw: [number, number]; pH: [number, number]; assess: number[][] };
    return assess[aw <= a0 ? 0 : aw <= a1 ? 1 : 2]![pH <= p0 ? 0 : pH <= p1 ? 1 : 2] === 1;
  }
  const { aw_below, aw: [b0, b1], pH_below, pH: [q0, q1], assess } = table.foodCode.B as { aw_below: number; aw: [number, number]; pH_below: number; pH: [number, number]; assess: number[][] };
  return assess[aw < aw_below ? 0 : aw <= b0 ? 1 : aw <= b1 ? 2 : 3]![pH < pH_below ? 0 : pH <= q0 ? 1 : pH <= q1 ? 2 : 3] === 1;
}

/**
 * Stage at which cooling fails: 0 none, 1 not at 21 °C in 2 h (or, from 57 °C down, not at 5 °C in 4 h when started at room warmth), 2 not at 5 °C in 6 h.
 * start, after2h, after6h: °C; after6h is read at 4 h where it started below 57 °C.
 * @source food-code-cooling 3-501.14
 */
export function coolingFails(start: number, after2h: number, after6h: number): 0 | 1 | 2 {
  const { from_C, first_C, last_C } = table.cooling;
  if (start >= from_C && after2h > first_C) return 1;
  if (after6h > last_C) return start >= from_C ? 2 : 1;
  return 0;
}

/** Days food made on site keeps in the cold, the day it was made being the first; freezing stops but does not reset the count. @source date-marking */
export const DATE_MARK_DAYS = table.dateMark.days;

/** Day on which it is used up, from the day it was made, both counted 0 to 6 from any day. @source date-marking day 1 is the day it is made */
export function lastDay(made: number): number {
  return (made + DATE_MARK_DAYS - 1) % 7;
}
