import { at } from '../matter/constituents.ts';
import { WATER_0_J_G, capacityNow, enthalpyOfIce, enthalpyWith, freezingPointWith, heatCapacityOfIce, momentWith, takeBeside, takeDissolved, temperatureOfIce, temperatureWith } from '../liquids/index.ts';
import { pair, pass, type Pair } from './pair.ts';
import { coreConductance, iceArea } from './solid.ts';

/**
 * Time passes for a liquid, its ice and its vessel in their surroundings: three bodies, three temperatures.
 * Heat goes drink to ice surface (at the freezing point of the drink as diluted), surface to the ice's middle, drink to vessel,
 * vessel to air. Within a step the pair of drink and vessel is solved exactly, whatever its rates; a step ends where so much has melted
 * that the coefficients are no longer the same, and takes them at its middle. Energy closes by construction.
 */

/** Where a body stands in the buffer. `vessel`: °C, J/K. `ice`: g, °C, g at the start, m² at the start. */
export interface Bodies { readonly liquid: number; readonly enthalpy: number; readonly celsius: number; readonly vessel: number; readonly ice: number }
/** Offsets of the surroundings: °C, agitation W/(m² K), drink to vessel W/K, vessel to air W/K. */
export const SURROUNDINGS = 4;
/** Offsets of the account: J taken from the air, g melted (less frozen), J of fusion. */
export const ACCOUNT = 3;

/** So much may melt in a step, as a share of the ice, of the drink's heat capacity, in K of its freezing point; never less than so many g. */
const OF_ICE = 0.1, OF_HEAT = 0.06, OF_FREEZING = 0.8, LEAST_G = 0.02;
/** In so many steps at least, so that two calls in a row are as one: where little melts the vessel and the middle of the ice still come to rest. */
const PARTS = 7;
/** So many steps are as short as the melting asks; the time that is left then takes no more than as many again: a drop on a bucket of ice would ask for millions. */
const MOST_STEPS = 400;
/** Ice whose middle is this far from its surface, K, may give or take more there than the drink does; it then goes no further at once than this share of its own time. */
const FAR_K = 2, AT_ONCE = 0.3;
const WATER_J_GK = 4.19, ICE_0_J_G = enthalpyOfIce(0);
/** Colder than this no ice of a bar gets; a syrup with next to no water would ask for less. */
const LOWEST_C = -45;

/** What stands in a step for drink, vessel and ice. In one record: as arguments and answers they would each be put on the heap. */
interface Meeting extends Pair {
  /** g, °C, m², g/s that melt */ ice: number; core: number; area: number; melting: number;
  /** by how much of its heat of fusion melt water comes in colder than the drink */ surplus: number;
  /** J that go from the surface into the middle of the ice */ inward: number;
}
const now: Meeting = { ...pair(), ice: 0, core: 0, area: 0, melting: 0, surplus: 0, inward: 0 }, moment = new Float64Array(4), point = new Float64Array(2);

/**
 * Lets `seconds` pass (0 or more). Changes the liquid's water and enthalpy, the ice, the vessel; adds to the account.
 * Steps are as long as the melting allows. Two calls in a row agree with one within 0.1 % of the heat that the ice took up, within 0.1 K for next to no drink on much ice.
 * @param s buffer in which all offsets lie; grams by constituent from `b.liquid`, enthalpy in J at `b.enthalpy`
 * @source none - heat balance of lumped bodies
 */
export function advance(s: Float64Array, b: Bodies, surroundings: number, seconds: number, account: number): void {
  if (!(seconds > 0)) return;
  const water = b.liquid + at.water, agitation = s[surroundings + 1]!, vesselHeat = s[b.vessel + 1]! > 0 ? s[b.vessel + 1]! : 0;
  const mass0 = s[b.ice + 2]!, area0 = s[b.ice + 3]!;
  now.ambient = s[surroundings]!; now.toVessel = s[surroundings + 2]!; now.toAir = s[surroundings + 3]!; now.vesselHeat = vesselHeat;
  const toVessel = vesselHeat > 0 ? now.toVessel : 0;
  let remaining = seconds, freezing = 0, steps = 0, least = 0;
  // of the liquid only the water changes here
  takeBeside(s, b.liquid);
  if (s[b.ice]! > 0) takeDissolved(s, b.liquid);
  while (remaining > 1e-9 && s[b.ice]! > 0) {
    const wet = s[water]!, ice = s[b.ice]!, core = s[b.ice + 1]!;
    // what the liquid is now: temperature, heat capacity, partial enthalpy of water, freezing point and its slope
    momentWith(wet, s[b.enthalpy]!, s[b.celsius]!, moment);
    const drink = moment[0]!, heat = moment[1]!;
    if (!(heat > 1e-6)) return;
    freezingPointWith(wet, freezing, point);
    const slope = point[0]! > LOWEST_C ? point[1]! : 0;
    freezing = Math.max(LOWEST_C, point[0]!);
    const area = iceArea(ice, mass0, area0), toIce = agitation * area, latent = latentAt(freezing), surplus = moment[2]! - waterAt(freezing);
    const outer = Math.abs(toIce * (drink - freezing)), conducts = coreConductance(ice, area), gap = Math.abs(freezing - core), flow = outer + conducts * gap
      + (toVessel > 0 ? now.toAir * Math.abs(now.ambient - freezing) : 0);
    const melts = Math.max(LEAST_G, Math.min(OF_ICE * ice, OF_FREEZING / (Math.abs(slope) + 1e-9)));
    // the vessel moves the drink too, and with it its heat capacity
    const travel = flow + toVessel * Math.abs(drink - s[b.vessel]!);
    const due = Math.min((melts * latent) / (flow + 1e-12), Math.max(LEAST_G, (OF_HEAT * heat) / WATER_J_GK) * latent / (travel + 1e-12));
    if (++steps === MOST_STEPS) least = remaining / MOST_STEPS;
    // ice that is far from its surface's temperature melts on that alone for a while
    const alone = gap > FAR_K && conducts * gap > outer ? (AT_ONCE * ice * heatCapacityOfIce(0)) / conducts : Infinity;
    const dt = Math.min(remaining, Math.max(least, Math.min(due, alone, seconds / PARTS)));
    // half a step with what is known at its start says what holds at its middle
    now.seconds = dt / 2; now.surface = freezing; now.vessel = s[b.vessel]!; now.drink = drink; now.heat = heat; now.toIce = toIce; now.surplus = surplus / latent;
    now.ice = ice; now.core = core; now.area = area; now.melting = 0;
    intoCore();
    cooling();
    const { above, inward: intoHalf } = now;
    // what melts moves the surface itself: without it a small cold drink would freeze past its own freezing point
    const takes = (heat * (1 - Math.exp((-toIce * dt) / (2 * heat))) + (freezing === core ? 0 : intoHalf / (freezing - core))) / latent;
    const half = Math.max(-wet / 4, Math.min(ice / 2, ((toIce * above - intoHalf) / latent) * relaxed(takes * slope)));
    const surface = freezing + slope * half, nearer = iceArea(ice - half, mass0, area0), from = agitation * nearer, fusion = latentAt(surface);
    const later = surplus + WATER_J_GK * (now.drink - surface - drink + freezing) + moment[3]! * half;
    const held = enthalpyOfIce(surface);
    now.seconds = dt; now.surface = surface; now.vessel = s[b.vessel]!; now.drink = drink; now.heat = heat + half * WATER_J_GK; now.toIce = from; now.surplus = later / fusion;
    now.ice = ice - half; now.area = nearer; now.melting = half / (dt / 2);
    intoCore();
    cooling();
    let { inward } = now, taken = from * now.above, melted = (taken - inward) / fusion;
    // in the second half the surface moves on, and the ice's middle follows it: the less it melts for that, the less it moves
    const pull = (follows(ice - half, nearer, dt) * 2 * slope) / fusion, after = (pull * (melted - half)) / (1 + pull);
    inward += after * fusion;
    melted -= after;
    if (melted >= ice) { melted = ice; taken = melted * fusion + ice * (held - enthalpyOfIce(core)); }
    else if (melted < -wet / 2) { melted = -wet / 2; taken = melted * fusion + inward; }
    s[b.enthalpy]! += melted * waterAt(surface) - taken + (vesselHeat > 0 ? now.fromAir - vesselHeat * (now.vessel - s[b.vessel]!) : 0);
    s[b.vessel] = now.vessel;
    s[account]! += now.fromAir;
    let left = melted < ice ? ice - melted : 0, keeps = left > 0 ? ice * enthalpyOfIce(core) + inward - melted * held : 0;
    // a middle that is warmer than its surface may be left with more heat than ice can hold: so much of it melts as well
    if (keeps > left * ICE_0_J_G) {
      const more = Math.min(left, (keeps - left * ICE_0_J_G) / (WATER_0_J_G - ICE_0_J_G)), heat = more < left ? more * WATER_0_J_G : keeps;
      s[b.enthalpy]! += heat;
      melted += more; left -= more; keeps -= heat;
    }
    s[account + 1]! += melted;
    s[water] = wet + melted;
    s[b.celsius] = now.drink;
    s[b.ice] = left;
    s[b.ice + 1] = left > 0 ? temperatureOfIce(keeps / left) : 0;
    remaining -= dt;
  }
  if (remaining > 1e-9) withoutIce(s, b, remaining, account);
  else s[b.celsius] = temperatureWith(s[water]!, s[b.enthalpy]!, s[b.celsius]!);
}

/** Share of what a change would be at its first rate that it comes to when it takes its own ground away, `k` of it for each of itself. */
const relaxed = (k: number): number => (k > 1e-6 ? (1 - Math.exp(-k)) / k : 1);

/** Enthalpy of water at the ice's surface, and what a gram of ice takes up to become it, J/g. */
const waterAt = (celsius: number): number => WATER_0_J_G + WATER_J_GK * celsius;
const latentAt = (celsius: number): number => waterAt(celsius) - enthalpyOfIce(celsius);

/**
 * Lets the step pass for the pair, of whose K s above the surface those are left that ice takes. Melt water comes in colder than the drink by `surplus` of its heat
 * of fusion: of what the ice takes so much goes on top, save where the middle of the ice takes `inward` J and nothing melts of them.
 */
function cooling(): void {
  const { surplus, seconds } = now, taking = now.toIce * Math.max(0.2, 1 + surplus), lift = taking > 0 ? (now.inward * surplus) / (taking * seconds) : 0;
  now.toIce = taking; now.surface += lift;
  pass(now);
  now.above += lift * seconds;
}

/** What goes from the surface into the middle of the ice, the surface staying as it is; what melts takes warm ice away and leaves the cold. */
function intoCore(): void {
  const { ice, core, surface, seconds } = now, gap = surface - core;
  now.inward = 0;
  if (gap === 0) return;
  const conducts = coreConductance(ice, now.area), capacity = (ice * (enthalpyOfIce(surface) - enthalpyOfIce(core))) / gap;
  const z = capacity > 0 ? (conducts / capacity - now.melting / ice) * seconds : 0;
  now.inward = conducts * gap * seconds;
  if (Math.abs(z) >= 1e-6) now.inward *= (1 - Math.exp(-z)) / z;
}

/**
 * J by which the middle of the ice follows, for each K that its surface moves evenly through `dt`: half the capacity of the ice where it keeps up, none where it
 * is slow. The quotient is 1/2 - 1/z + exp(-z) (1/2 + 1/z) within a tenth.
 */
function follows(ice: number, area: number, dt: number): number {
  const capacity = ice * heatCapacityOfIce(0), z = (coreConductance(ice, area) * dt) / capacity;
  return (capacity * z * z) / (12 + 6 * z + 2 * z * z);
}

/** The pair alone, its heat capacity taken where it stands, however long; what surrounds it stands in `now`. */
function withoutIce(s: Float64Array, b: Bodies, seconds: number, account: number): void {
  const water = s[b.liquid + at.water]!, { vesselHeat } = now;
  const drink = temperatureWith(water, s[b.enthalpy]!, s[b.celsius]!), heat = capacityNow(drink);
  s[b.celsius] = drink;
  if (!(heat > 1e-6) || !(vesselHeat > 0)) return;
  now.drink = drink; now.vessel = s[b.vessel]!; now.heat = heat; now.toIce = 0; now.surface = drink; now.seconds = seconds;
  pass(now);
  const gained = enthalpyWith(water, now.drink) - s[b.enthalpy]!;
  s[account]! += gained + vesselHeat * (now.vessel - s[b.vessel]!);
  s[b.enthalpy]! += gained;
  s[b.celsius] = now.drink;
  s[b.vessel] = now.vessel;
}
