import table from '../../../../data/physics/curdle.json' with { type: 'json' };
import { milkMixPH } from './milk.ts';

const { fresh, ultra, temperature, calcium: CALCIUM, citrate: CITRATE } = table;

/** How the milk was heated, as a number for the loop: raw or pasteurised, or ultra-pasteurised and boiled. @source none - definition */
export const FRESH = 0, ULTRA = 1;
/** Severity: nothing settles, a haze, feathers, curds. @source none - definition */
export const HAZE = 1, FEATHERS = 2, CURDS = 3;

/**
 * pH below which milk curdles at a strength: pH0 + k Emax atanh(E/Emax), with its shifts.
 * ethanol: mL per 100 mL of the mix without fat, 0 to 51.9 (held there), volumes added; celsius: 4 to 90 (held there), its shift fading out to 25 % vol (judged: it was
 * only seen without ethanol); heat: FRESH or ULTRA; calcium: mM of calcium salts added; citrate: mM of citrate salts added beyond the milk's own.
 * ± 0.15 pH; between 10 and 30 % vol interpolated.
 * @source davies-white-1958 80-84 % solutions; acid-casein onset 5.1-5.2; horne-parker-1981 salts; ricotta-recipes heat
 */
export function criticalPH(ethanol: number, celsius = 20, heat: number = FRESH, calcium = 0, citrate = 0): number {
  const row = heat === ULTRA ? ultra : fresh;
  return row.pH0 + row.k * row.Emax * Math.atanh(Math.min(Math.max(ethanol, 0), row.Emax - 0.1) / row.Emax) + shift(ethanol, celsius, calcium, citrate);
}

function shift(ethanol: number, celsius: number, calcium: number, citrate: number): number {
  const t = Math.min(Math.max(celsius, temperature.low_C), temperature.high_C);
  const fade = Math.min(Math.max(1 - ethanol / temperature.fades_at_pct, 0), 1);
  const salts = CALCIUM.per_mM * Math.max(calcium, 0) + Math.max(CITRATE.at_most, CITRATE.per_mM * Math.max(0, citrate - CITRATE.beyond_mM));
  return temperature.per_K * (t - temperature.reference_C) * fade + salts;
}

/**
 * Ethanol, mL per 100 mL without fat, at which milk of a pH curdles at 20 °C: Emax tanh((pH - pH0)/(k Emax)).
 * pH: aqueous; 0 where acid alone curdles it. ± 4 % vol. heat: FRESH or ULTRA.
 * @source davies-white-1958 80-84 % solutions, equal volumes
 */
export function criticalEthanol(pH: number, heat: number = FRESH): number {
  const row = heat === ULTRA ? ultra : fresh;
  return Math.max(0, row.Emax * Math.tanh((pH - row.pH0) / (row.k * row.Emax)));
}

/** Share of milks that curdle at a margin (critical pH less pH): 0.5 at 0, 0.95 at 0.35. @source memory width 0.12 pH, met by ten thousand draws of the coefficients */
export function curdleOdds(margin: number): number {
  return 1 / (1 + Math.exp(-margin / table.scale.value));
}

/** How bad it looks by the casein of the mix in g/L: HAZE below 3, FEATHERS to 8, CURDS above. @source common-practice judged */
export function curdleSeverity(casein_g_L: number): number {
  return casein_g_L > table.severity.curds_g_L ? CURDS : casein_g_L >= table.severity.feathers_g_L ? FEATHERS : HAZE;
}

/** Whether anything is known there: false above both 30 °C and 25 % vol, where micelles may dissolve instead. @source oconnell-2001 35 % vol above 30 °C */
export function curdleKnown(ethanol: number, celsius: number): boolean {
  return !(celsius > table.unknown.above_C && ethanol > table.unknown.above_pct);
}

/** Below this pH the curd parts cleanly from the whey. @source acid-casein complete at 4.6 */
export const CLEAN_PH = table.clean_below_pH.value;
/** Below this pH, shaken hard in the glass, casein stays a fine dispersion instead of curds, ± 0.3. @source common-practice a shaken sour with cream */
export const OVER_ACID_PH = table.over_acid_below_pH.value;
/** Below this pH a cream drink of 17 % vol flocculates within weeks. @source cream-liqueur-1989 */
export const STORAGE_PH = table.storage_pH.value;

/** Places written by `curdleInto`, from `at`. @source none - definition */
export const MIX_PH = 0, CRITICAL_PH = 1, MARGIN = 2, ODDS = 3, SERUM_ETHANOL = 4;
export const CURDLING = 5;

/**
 * Whether dairy curdles with what is put to it, without the words: out gets MIX_PH, CRITICAL_PH, MARGIN (critical less mix, positive curdles), ODDS, SERUM_ETHANOL from `at`.
 * serum_mL: dairy without its fat; strength, own: of its buffer and pH as in `milkMixPH`; acids, from, strong: mol brought by all else; other_mL: volume of all else, its
 * ethanol included; ethanol_mL; celsius; heat; calcium, citrate: mM of salts added. NaN margin where nothing is known. Allocates nothing.
 * @source davies-white-1958, milk-buffer-peak
 */
export function curdleInto(
  out: Float64Array, at: number, serum_mL: number, strength: number, own: number, acids: ArrayLike<number>, from: number, strong: number,
  other_mL: number, ethanol_mL: number, celsius: number, heat: number, calcium: number, citrate: number,
): void {
  const whole = serum_mL + other_mL;
  const ethanol = whole > 0 ? (100 * ethanol_mL) / whole : 0;
  const pH = milkMixPH(serum_mL / 1000, strength, own, acids, from, strong, whole / 1000);
  const critical = criticalPH(ethanol, celsius, heat, calcium, citrate);
  const margin = curdleKnown(ethanol, celsius) ? critical - pH : NaN;
  out[at + MIX_PH] = pH;
  out[at + CRITICAL_PH] = critical;
  out[at + MARGIN] = margin;
  out[at + ODDS] = curdleOdds(margin);
  out[at + SERUM_ETHANOL] = ethanol;
}

/** Dairy and what goes to it. Volumes in mL, acids and charge in mol. */
export interface Curdling {
  readonly serum_mL: number;
  /** casein of the dairy in g; its buffer follows from it (27 g/L of serum is milk) */
  readonly casein_g: number;
  readonly own_pH?: number;
  readonly acids_mol: ArrayLike<number>;
  readonly strong_mol?: number;
  readonly other_mL: number;
  readonly ethanol_mL?: number;
  readonly celsius?: number;
  readonly ultra?: boolean;
  readonly calcium_mM?: number;
  readonly citrate_mM?: number;
}

const scratch = new Float64Array(CURDLING);

/**
 * `curdleInto` as an object, with its severity and whether anything is known there.
 * @source davies-white-1958, milk-buffer-peak
 */
export function curdle(what: Curdling): { readonly pH: number; readonly critical_pH: number; readonly margin: number; readonly odds: number; readonly ethanol_pct: number; readonly severity: number; readonly known: boolean; readonly clean: boolean } {
  const celsius = what.celsius ?? 20;
  const strength = what.serum_mL > 0 ? (1000 * what.casein_g) / what.serum_mL / table.casein_in_serum.value : 0;
  curdleInto(scratch, 0, what.serum_mL, strength, what.own_pH ?? 6.7, what.acids_mol, 0, what.strong_mol ?? 0, what.other_mL, what.ethanol_mL ?? 0, celsius, what.ultra ? ULTRA : FRESH, what.calcium_mM ?? 0, what.citrate_mM ?? 0);
  const pH = scratch[MIX_PH]!, ethanol_pct = scratch[SERUM_ETHANOL]!;
  return {
    pH, critical_pH: scratch[CRITICAL_PH]!, margin: scratch[MARGIN]!, odds: scratch[ODDS]!, ethanol_pct,
    severity: curdleSeverity((1000 * what.casein_g) / (what.serum_mL + what.other_mL || 1)), known: curdleKnown(ethanol_pct, celsius), clean: pH < CLEAN_PH,
  };
}
