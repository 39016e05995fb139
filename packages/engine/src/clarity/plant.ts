import table from '../../../../data/physics/curdle.json' with { type: 'json' };
import { ACIDS } from '../acids/index.ts';
import { milkBuffer, released } from './milk.ts';

export type PlantMilk = keyof typeof table.plant;

/**
 * pH below which a plant drink comes apart. kind: `soy`, `coconut`, `almond`, `oat`; celsius: 60 and more counts as hot (soy curds sooner). Ethanol: no data for any.
 * @source soy-curdling tofu practice 5.7-6.4; coconut-stability 3.5-6.0; memory almond; common-practice oat
 */
export function plantCriticalPH(kind: PlantMilk, celsius = 20): number {
  const row = table.plant[kind];
  return celsius >= 60 ? row.hot_pH : row.critical_pH;
}

/** What it does below that pH: `curd`, `floc` or, where there is too little protein, a `haze`. @source common-practice */
export function plantVerdict(kind: PlantMilk): string {
  return table.plant[kind].below;
}

/** The pH between which it is not certain what a plant drink does: surely apart below `low`, surely whole above `high`. @source soy-precipitation, soymilk-gel soy; coconut-stability; oat-precipitation; memory almond */
export function plantBand(kind: PlantMilk): { readonly low: number; readonly high: number } {
  const { low, high } = table.plant[kind];
  return { low, high };
}

const { plant_buffer: BUFFER } = table;
/** Share of the calcium salts that has dissolved at a pH. */
const gone = (pH: number): number => Math.min(1, Math.max(0, (BUFFER.dissolves_from_pH - pH) / (BUFFER.dissolves_from_pH - BUFFER.dissolves_to_pH)));

/**
 * Acid in mmol that brings a plant drink from its own pH to another: its protein straight in the pH, its carbonate and phosphate of calcium as they dissolve.
 * protein_g and calcium_mmol: of all of it; own, pH: 2 to 8. A factor of two either way.
 * @source common-practice judged: no titration of any was found
 */
export function plantBuffer(protein_g: number, calcium_mmol: number, own: number, pH: number): number {
  return BUFFER.mmol_per_g_pH * protein_g * (own - pH) + BUFFER.per_mol_calcium * calcium_mmol * (gone(pH) - gone(own));
}

/** What is put together with a plant drink: mol of acids by kind, mol of strong cations less anions, litres; dairy as in `milkMixPH`. */
export interface PlantMix { readonly acids: ArrayLike<number>; readonly strong: number; readonly water_L: number; readonly serum_L: number; readonly strength: number }

/**
 * Aqueous pH of a plant drink with what was put to it, by the balance of protons; 1 to 10. `times`: how much more or less it takes up than `plantBuffer` says, 0 for none.
 * @source goldberg-2002 acids; common-practice the drink's own buffer
 */
export function plantMixPH(protein_g: number, calcium_mmol: number, own: number, times: number, mix: PlantMix): number {
  const { acids, strong, water_L, serum_L, strength } = mix;
  let low = 1, high = 10;
  for (let i = 0; i < 50; i++) {
    const pH = (low + high) / 2, h = 10 ** -pH;
    // protons left over: rises with pH
    let free = -strong - water_L * (h - 10 ** -own) - 1e-3 * times * plantBuffer(protein_g, calcium_mmol, own, pH) - 1e-3 * serum_L * strength * (milkBuffer(pH) - milkBuffer(6.7));
    for (let k = 0; k < ACIDS; k++) if (acids[k]! > 0) free += acids[k]! * released(k, h);
    if (free > 0) high = pH; else low = pH;
  }
  return (low + high) / 2;
}
