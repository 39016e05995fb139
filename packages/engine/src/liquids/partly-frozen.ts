import { at } from '../matter/constituents.ts';
import { capacityNow, enthalpyWith, takeBeside, temperatureWith } from './enthalpy.ts';
import { freezingPointWith, isLiquidWith, takeDissolved } from './freezing.ts';
import { enthalpyOfIce, heatCapacityOfIce } from './ice.ts';

/** Colder than this nothing is followed: the end of what `enthalpyOfIce` is meant for, °C. */
const LOWEST_C = -60;
/** The ice is found within this share of the water, and never in more steps than this. */
const CLOSE = 1e-11, MOST_STEPS = 80;

const point = new Float64Array(2);

/**
 * Enthalpy of a liquid of whose water so much is ice, all at one temperature.
 * @param block grams by constituent from `offset`, the ice counted as its water
 * @param celsius -60..0 °C where there is ice, else as in `enthalpy`
 * @param ice_g 0 up to the water of the block
 * @returns J, counted as in `enthalpy`
 * @source crc-ice; melinder2010
 */
export function enthalpyWithIce(block: Float64Array, offset: number, celsius: number, ice_g: number): number {
  takeBeside(block, offset);
  return enthalpyWith(block[offset + at.water]! - ice_g, celsius) + (ice_g > 0 ? ice_g * enthalpyOfIce(celsius) : 0);
}

/**
 * Temperature at which a liquid with so much ice in it stands in balance with that ice.
 * @param block grams by constituent from `offset`, the ice counted as its water
 * @param ice_g 0 up to the water of the block
 * @param factor by how much the freezing point differs from the model's
 * @returns °C, -60 or above
 * @source ross1975 eq. 3; clegg-aw eq. 1
 */
export function balanceWithIce(block: Float64Array, offset: number, ice_g: number, factor = 1): number {
  takeDissolved(block, offset);
  return balanced(block[offset + at.water]! - ice_g, factor);
}
function balanced(water_g: number, factor: number): number {
  freezingPointWith(water_g, 0, point);
  return Math.max(LOWEST_C, factor * point[0]!);
}

/**
 * What a liquid that holds this enthalpy is when it has come to rest with ice of its own: how warm, and how much of its water is ice.
 * @param block grams by constituent from `offset`, the ice counted as its water
 * @param enthalpy_J as `enthalpy` counts it
 * @param factor as in `balanceWithIce`
 * @param near °C to start from
 * @param out °C and g of ice; 0 g where it holds too much heat for any
 * @source none - balance of heat, and of ice and liquid as in `balanceWithIce`
 */
export function restWithIce(block: Float64Array, offset: number, enthalpy_J: number, factor: number, near: number, out: Float64Array): void {
  const all = block[offset + at.water]!;
  takeBeside(block, offset);
  out[0] = temperatureWith(all, enthalpy_J, near);
  out[1] = 0;
  if (!(all > 0) || !(out[0] < 0)) return;
  takeDissolved(block, offset);
  if (isLiquidWith(all, out[0] / factor)) return;
  // the more ice, the less heat: the false position, kept between its ends
  let low = 0, high = all, over = heatOver(all, 0, factor, enthalpy_J), under = heatOver(all, all, factor, enthalpy_J), ice = high, side = 0;
  for (let i = 0; under < 0 && i < MOST_STEPS && high - low > CLOSE * all; i++) {
    ice = low + ((high - low) * over) / (over - under);
    // where it creeps along one end it is halved
    if (i % 4 === 3) ice = (low + high) / 2;
    const off = heatOver(all, ice, factor, enthalpy_J);
    if (Math.abs(off) < 1e-9) break;
    if (off > 0) { low = ice; over = off; if (side === 1) under /= 2; side = 1; } else { high = ice; under = off; if (side === -1) over /= 2; side = -1; }
  }
  // with so much ice: as warm as the heat makes it
  let t = Math.max(LOWEST_C, balanced(all - ice, factor));
  for (let i = 0; i < 20; i++) {
    const off = enthalpyWith(all - ice, t) + ice * enthalpyOfIce(t) - enthalpy_J, step = off / (capacityNow(t) + ice * heatCapacityOfIce(t));
    t -= step;
    if (Math.abs(step) < 1e-9) break;
  }
  out[0] = t;
  out[1] = ice;
}
function heatOver(all: number, ice: number, factor: number, enthalpy_J: number): number {
  const t = balanced(all - ice, factor);
  return enthalpyWith(all - ice, t) + ice * enthalpyOfIce(t) - enthalpy_J;
}
