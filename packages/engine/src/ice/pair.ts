/**
 * Two bodies that give heat to each other: the drink, which also gives to ice at its freezing point, and its vessel, which also takes from the air.
 * With coefficients that stand still both temperatures are known for any time: nothing is stepped here.
 */
export interface Pair {
  /** °C at the start; after `pass`, at the end */ drink: number; vessel: number;
  /** J/K; a vessel of 0 takes no part */ heat: number; vesselHeat: number;
  /** W/K drink to ice, drink to vessel, vessel to air */ toIce: number; toVessel: number; toAir: number;
  /** °C of the ice's surface and of the air */ surface: number; ambient: number;
  /** how long, 0 or more */ seconds: number;
  /** after `pass`: K s of the drink above the surface, and J that came from the air */ above: number; fromAir: number;
}

/** A pair with nothing in it. @source none - definition */
export const pair = (): Pair => ({ drink: 0, vessel: 0, heat: 0, vesselHeat: 0, toIce: 0, toVessel: 0, toAir: 0, surface: 0, ambient: 0, seconds: 0, above: 0, fromAir: 0 });

/**
 * Lets its `seconds` pass for a pair, however many.
 * @source none - solution of two linear equations with constant coefficients
 */
export function pass(b: Pair): void {
  const { heat, vesselHeat, toIce, toVessel, toAir, surface, ambient, seconds } = b;
  const p = toIce / heat;
  if (!(vesselHeat > 0) || !(toVessel > 0)) {
    const drink = surface + (b.drink - surface) * Math.exp(-p * seconds);
    b.above = p > 0 ? (b.drink - drink) / p : (b.drink - surface) * seconds;
    b.drink = drink;
    b.fromAir = 0;
    if (vesselHeat > 0) { const vessel = ambient + (b.vessel - ambient) * Math.exp((-toAir * seconds) / vesselHeat); b.fromAir = vesselHeat * (vessel - b.vessel); b.vessel = vessel; }
    return;
  }
  const q = toVessel / heat, r = toVessel / vesselHeat, c = toAir / vesselHeat;
  const det = p * (r + c) + q * c, half = (p + q + r + c) / 2;
  const root = Math.sqrt(Math.max(0, half * half - det));
  // where both come to rest: three conductances in a row, or one temperature for both where nothing leads away
  const over = toIce * (toVessel + toAir) + toVessel * toAir;
  const joint = (heat * b.drink + vesselHeat * b.vessel) / (heat + vesselHeat);
  const restDrink = over > 0 ? surface + ((ambient - surface) * toVessel * toAir) / over : joint;
  const restVessel = over > 0 ? surface + ((ambient - surface) * toAir * (toIce + toVessel)) / over : joint;
  const x0 = b.drink - restDrink, y0 = b.vessel - restVessel;
  // det / (half + root) is half - root without the difference of two nearly equal numbers
  const slow = Math.exp((-det / (half + root)) * seconds), fast = Math.exp(-(half + root) * seconds);
  const even = (slow + fast) / 2, odd = root > 1e-9 * half ? (slow - fast) / (2 * root) : seconds * slow;
  const x1 = even * x0 + odd * ((half - p - q) * x0 + q * y0), y1 = even * y0 + odd * (r * x0 + (half - r - c) * y0);
  const dx = x1 - x0, dy = y1 - y0;
  b.above = det > 0 ? (restDrink - surface) * seconds - ((r + c) * dx + q * dy) / det : 0;
  b.fromAir = det > 0 ? toAir * ((ambient - restVessel) * seconds + (r * dx + (p + q) * dy) / det) : 0;
  b.drink = restDrink + x1;
  b.vessel = restVessel + y1;
}
