/**
 * Clear liquid from a milk wash, mL: base + milk - what the curd keeps - what each paper keeps; 0 at least.
 * base_mL, milk_mL: 0 and up; kept: mL per mL of milk (0.20 to 0.40 unpressed, 0.20 drained, 0.14 pressed); papers: how many; paper_mL: 3 to 8 each.
 * @source common-practice yields of curd (cheese and ricotta recipes, drained 0.17-0.23, pressed 0.12-0.18)
 */
export function milkWashYield(base_mL: number, milk_mL: number, kept: number, papers: number, paper_mL: number): number {
  return Math.max(0, base_mL + milk_mL - kept * milk_mL - papers * paper_mL);
}

/**
 * What runs through after a loss by share and a fixed hold, same unit as `amount`; 0 at least.
 * share: yield 0 to 1; holds: how often; hold: what each keeps.
 * @source none - definition
 */
export function through(amount: number, share: number, holds: number, hold: number): number {
  return Math.max(0, amount * share - holds * hold);
}

/** Juice in a clear liquid when it was set with water: juice / (juice + water), by volume. @source agar-spin 100 mL water to 400 mL juice is 0.8 */
export function juiceShare(juice_mL: number, water_mL: number): number {
  return juice_mL + water_mL > 0 ? juice_mL / (juice_mL + water_mL) : 0;
}

/** Gelling agent in g for a mass of juice in g. share: per cent by weight (agar 0.2, gelatin 0.5). @source agar-quick 2 g/kg; gelatin-filtering 0.5 % */
export function clearingDose(juice_g: number, share: number): number {
  return (juice_g * share) / 100;
}

/** Curd in g from a mass of milk: drained 0.174 to 0.232 of it, pressed 0.12 to 0.18. share: 0 to 1. @source ricotta-recipes drained */
export function curdMass(milk_g: number, share: number): number {
  return milk_g * share;
}

/** Whole fruit (or packets) for an amount. amount, each: same unit, each above 0. @source none - definition */
export function wholePieces(amount: number, each: number): number {
  return Math.ceil(amount / each - 1e-9);
}

/** Milk in mL for a punch in mL at so many parts of punch to one of milk. @source common-practice 4 to 1, 3 to 1 for much colour */
export function milkForPunch(punch_mL: number, parts = 4): number {
  return punch_mL / parts;
}
