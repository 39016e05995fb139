/**
 * Dilution of a drink stirred on ice by the rule of thumb: melt over the volume before.
 * @param strength share of ethanol by volume before ice, 0.15..0.4
 * @returns share
 * @source dilution-rule stirred
 */
export function stirredDilutionByRule(strength: number): number {
  return -1.21 * strength * strength + 1.246 * strength + 0.145;
}

/**
 * The same for a shaken drink.
 * @param strength share of ethanol by volume before ice, 0.15..0.4
 * @returns share
 * @source dilution-rule shaken
 */
export function shakenDilutionByRule(strength: number): number {
  return -1.567 * strength * strength + 1.742 * strength + 0.203;
}

/**
 * Ice that melts to take up an amount of heat, worked as a sum: all ice first warms to 0 °C, what melts ends at the drink's temperature.
 * @param heat_J given up by the drink
 * @param ice_g,ice_C all the ice and its temperature, 0 °C or below
 * @param end_C temperature of the drink at the end
 * @param fusion_JPerG,iceCapacity,waterCapacity heat of fusion, J/g, and heat capacities, J/(g K)
 * @returns g, 0 where warming the ice takes it all
 * @source none - heat balance
 */
export function meltForHeat(heat_J: number, ice_g: number, ice_C: number, end_C: number, fusion_JPerG: number, iceCapacity: number, waterCapacity: number): number {
  return Math.max(0, (heat_J + ice_g * iceCapacity * ice_C) / (fusion_JPerG + waterCapacity * end_C));
}
