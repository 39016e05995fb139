import type { Binding, Bindings } from '../types.ts';
import { densityOf, refractiveIndex, relativeSweetness } from '../../liquids/index.ts';
import { solution, SOLUTES } from './mixture.ts';
import { celsiusOf } from './quantities.ts';

/** Density and refractive index at 20 °C of each solute alone in water, as the handbook lists them, and sweetness. */
export const solutes: Bindings = {
  ...Object.fromEntries(Object.entries(SOLUTES).flatMap(([name, constituent]): [string, Binding][] => [
    [`${name}_density20`, (i) => 1000 * densityOf(solution(constituent, i.number('mass_pct', `${name}_mass_pct`)), 0, celsiusOf(i))],
    [`${name}_n20D`, (i) => refractiveIndex(solution(constituent, i.number('mass_pct', `${name}_mass_pct`)), 0)],
  ])),
  sweetness_range: (i) => {
    const name = i.text('sweetener', 'name');
    return name === undefined ? undefined : relativeSweetness(name)?.value;
  },
};
