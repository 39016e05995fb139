import table from '../../../../data/physics/gas.json' with { type: 'json' };
import { carbonDioxideMolar } from './dissolved.ts';

const { share, at_g_L, at_C, power, per_K } = table.lost_on_pouring;

/**
 * Which share of its CO2 a drink loses as it is poured into a glass: more the fuller of gas and the warmer it is. Straight down loses more, along the wall less, each a factor of 1.4 or so;
 * ice, which breaks out more, is not in it.
 * @param g_L CO2 in it before, g/L, 0 to 15
 * @param celsius its temperature, 0 to 25 °C
 * @returns 0..0.9
 * @source champagne-serving-2010 three temperatures, two ways; pmc-beer-co2 champagne and lager: eight points
 */
export function lostOnPouring(g_L: number, celsius: number): number {
  return Math.min(0.9, share * (Math.max(0, g_L) / at_g_L) ** power * Math.exp(per_K * (celsius - at_C)));
}

/** g/L of CO2 that water keeps once it was shaken or whisked in the open: at most what it holds under an atmosphere of its own gas. celsius: 0 to 80. @source carroll-1991; common-practice */
export function leftWhenShaken(celsius: number): number {
  return carbonDioxideMolar(celsius, 101.325) * table.molar_mass.CO2;
}
