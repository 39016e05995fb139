import table from '../../../../data/physics/curdle.json' with { type: 'json' };

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
