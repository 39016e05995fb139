import { BLOCK, at } from '../matter/constituents.ts';
import { enthalpy, enthalpyOfIce, freezingPoint, temperatureOf, temperatureOfIce } from '../liquids/index.ts';
import { coreConductance, iceArea } from './solid.ts';

/**
 * Time passes for a liquid, its ice and its vessel in their surroundings: three bodies, three temperatures.
 * Heat goes drink to ice surface (at the freezing point of the drink as diluted), surface to the ice's middle, drink to vessel,
 * vessel to air. Each exchange is solved exactly for its step and the exchanges are taken in symmetric order, so that
 * energy closes by construction and no step can overshoot.
 */

/** Where a body stands in the buffer. `vessel`: °C, J/K. `ice`: g, °C, g at the start, m² at the start. */
export interface Bodies { readonly liquid: number; readonly enthalpy: number; readonly celsius: number; readonly vessel: number; readonly ice: number }
/** Offsets of the surroundings: °C, agitation W/(m² K), drink to vessel W/K, vessel to air W/K. */
export const SURROUNDINGS = 4;
/** Offsets of the account: J taken from the air, g melted (less frozen), J of fusion. */
export const ACCOUNT = 3;

const STEP = 0.25;
const WATER_J_GK = 4.19;
/** Colder than this no ice of a bar gets; a syrup with next to no water would ask for less. */
const LOWEST_C = -45;
/** Water at 0 °C against water at 25 °C, J/g, by the same heat capacity as mixtures. */
const WATER_0_J_G = enthalpy(Float64Array.of(1, ...new Array<number>(BLOCK - 1).fill(0)), 0, 0);

/**
 * Lets `seconds` pass (0 or more). Changes the liquid's water and enthalpy, the ice, the vessel; adds to the account.
 * The number of steps follows from the largest rate. Two calls in a row agree with one within 0.02 K and 0.05 g.
 * @param s buffer in which all offsets lie; grams by constituent from `b.liquid`, enthalpy in J at `b.enthalpy`
 * @source none - heat balance of lumped bodies
 */
export function advance(s: Float64Array, b: Bodies, surroundings: number, seconds: number, account: number): void {
  if (!(seconds > 0)) return;
  const water = b.liquid + at.water;
  const ambient = s[surroundings]!, agitation = s[surroundings + 1]!, toVessel = s[surroundings + 2]!, toAir = s[surroundings + 3]!;
  const vesselHeat = s[b.vessel + 1]!;
  if (!(s[b.ice]! > 0)) { withoutIce(s, b, surroundings, seconds, account); return; }
  let remaining = seconds;
  let guard = 0;
  while (remaining > 1e-9 && guard++ < 4000) {
    // what the liquid is now: temperature, heat capacity, partial enthalpy of water, freezing point and its slope
    let drink = temperatureOf(s, b.liquid, s[b.enthalpy]!, s[b.celsius]);
    let heat = enthalpy(s, b.liquid, drink + 0.5) - enthalpy(s, b.liquid, drink - 0.5);
    if (!(heat > 1e-6)) return;
    let ice = s[b.ice]!;
    if (!(ice > 0)) { s[b.celsius] = drink; withoutIce(s, b, surroundings, remaining, account); return; }
    const h0 = enthalpy(s, b.liquid, drink), f0 = Math.max(LOWEST_C, freezingPoint(s, b.liquid));
    s[water]! += 1;
    const partial = enthalpy(s, b.liquid, drink) - h0, slope = Math.max(LOWEST_C, freezingPoint(s, b.liquid)) - f0;
    s[water]! -= 1;
    let freezing = f0;
    const area = iceArea(ice, s[b.ice + 2]!, s[b.ice + 3]!);
    const rate = (agitation * area) / heat + (vesselHeat > 0 ? toVessel * (1 / heat + 1 / vesselHeat) + toAir / vesselHeat : 0);
    // a stretch of at most six steps between looks at the liquid, shorter while it melts fast
    const dtMax = rate > 0 ? STEP / rate : remaining;
    const stretch = Math.min(remaining, dtMax * 6);
    const n = Math.max(1, Math.ceil(stretch / dtMax - 1e-9));
    const dt = stretch / n;
    for (let i = 0; i < n; i++) {
      drink = exchange(s, b, drink, heat, ambient, toVessel, toAir, dt / 2, account, true);
      if (ice > 0) {
        const a = iceArea(ice, s[b.ice + 2]!, s[b.ice + 3]!);
        const core = s[b.ice + 1]!;
        const intoSurface = heat * (drink - freezing) * (1 - Math.exp((-agitation * a * dt) / heat));
        const held = enthalpyOfIce(freezing), capacity = (ice * (held - enthalpyOfIce(core))) || 0;
        const conducts = coreConductance(ice, a), cp = freezing !== core ? capacity / (freezing - core) : ice * 2.1;
        const intoCore = capacity * (1 - Math.exp((-conducts * dt) / cp));
        const latent = WATER_0_J_G + WATER_J_GK * freezing - held;
        let melted = (intoSurface - intoCore) / latent;
        let taken = intoSurface;
        if (melted >= ice) { melted = ice; taken = melted * latent + ice * (held - enthalpyOfIce(core)); }
        const waterEnthalpy = WATER_0_J_G + WATER_J_GK * freezing;
        s[b.enthalpy]! += melted * waterEnthalpy - taken;
        s[water]! += melted;
        drink += (melted * (waterEnthalpy - partial) - taken) / heat;
        heat += melted * WATER_J_GK;
        freezing += slope * melted;
        if (melted >= ice) { ice = 0; s[b.ice + 1] = 0; } else {
          const left = ice * enthalpyOfIce(core) + intoCore - melted * held;
          ice -= melted;
          s[b.ice + 1] = temperatureOfIce(left / ice);
        }
        s[b.ice] = ice;
        s[account + 1]! += melted;
      }
      drink = exchange(s, b, drink, heat, ambient, toVessel, toAir, dt / 2, account, false);
    }
    s[b.celsius] = drink;
    remaining -= stretch;
  }
  s[b.celsius] = temperatureOf(s, b.liquid, s[b.enthalpy]!, s[b.celsius]);
}

/**
 * Two bodies and the air, no ice: the linear pair solved exactly over the whole time, however long.
 * a, b: drink and vessel towards each other; c: vessel towards the air, 1/s.
 */
function withoutIce(s: Float64Array, b: Bodies, surroundings: number, seconds: number, account: number): void {
  const ambient = s[surroundings]!, toVessel = s[surroundings + 2]!, toAir = s[surroundings + 3]!;
  const vesselHeat = s[b.vessel + 1]!;
  const drink = temperatureOf(s, b.liquid, s[b.enthalpy]!, s[b.celsius]);
  s[b.celsius] = drink;
  const before = enthalpy(s, b.liquid, drink);
  const heat = enthalpy(s, b.liquid, drink + 0.5) - enthalpy(s, b.liquid, drink - 0.5);
  if (!(heat > 1e-6) || !(vesselHeat > 0)) return;
  const a = toVessel / heat, bb = toVessel / vesselHeat, c = toAir / vesselHeat;
  const half = (a + bb + c) / 2, root = Math.sqrt(Math.max(0, half * half - a * c));
  const fast = -(half + root), slow = root >= half ? 0 : -(half - root);
  const d0 = drink - ambient, v0 = s[b.vessel]! - ambient;
  // d' = -a d + a v: the solution through (d0, d0') with the two rates
  const slope0 = a * (v0 - d0);
  const p = fast === slow ? 0 : (slope0 - slow * d0) / (fast - slow), q = d0 - p;
  const ef = Math.exp(fast * seconds), es = Math.exp(slow * seconds);
  const d1 = p * ef + q * es, slope1 = p * fast * ef + q * slow * es;
  const vesselNext = a > 0 ? ambient + d1 + slope1 / a : ambient + v0 * Math.exp(-c * seconds);
  const after = enthalpy(s, b.liquid, ambient + d1);
  s[account]! += after - before + vesselHeat * (vesselNext - s[b.vessel]!);
  s[b.enthalpy]! += after - before;
  s[b.celsius] = ambient + d1;
  s[b.vessel] = vesselNext;
}

/** Drink with vessel and vessel with air, for `dt`; the order turns round between the two halves. Returns the drink's temperature. */
function exchange(s: Float64Array, b: Bodies, drink: number, heat: number, ambient: number, toVessel: number, toAir: number, dt: number, account: number, airFirst: boolean): number {
  const vesselHeat = s[b.vessel + 1]!;
  if (!(vesselHeat > 0)) return drink;
  let vessel = s[b.vessel]!;
  if (airFirst) vessel = withAir(s, vessel, vesselHeat, ambient, toAir, dt, account);
  const joint = (heat * drink + vesselHeat * vessel) / (heat + vesselHeat);
  const left = Math.exp(-toVessel * (1 / heat + 1 / vesselHeat) * dt);
  const next = joint + (drink - joint) * left;
  vessel = joint + (vessel - joint) * left;
  s[b.enthalpy]! += heat * (next - drink);
  if (!airFirst) vessel = withAir(s, vessel, vesselHeat, ambient, toAir, dt, account);
  s[b.vessel] = vessel;
  return next;
}

function withAir(s: Float64Array, vessel: number, heat: number, ambient: number, toAir: number, dt: number, account: number): number {
  const gained = heat * (ambient - vessel) * (1 - Math.exp((-toAir * dt) / heat));
  s[account]! += gained;
  return vessel + gained / heat;
}
