import table from '../../../../data/physics/acids.json' with { type: 'json' };
import type { AcidConstants } from './constants.ts';

const { groups, colloidal } = table.casein;
const of = (id: string) => groups.find((row) => row.id === id)!;
const [ASP, GLU, SERP, HIS] = ['aspartic', 'glutamic', 'phosphoserine', 'histidine'].map(of) as [typeof groups[0], typeof groups[0], typeof groups[0], typeof groups[0]];
/** mol of a group in a gram of casein. */
const N_ASP = ASP.mmol_per_g / 1000, N_GLU = GLU.mmol_per_g / 1000, N_SERP = SERP.mmol_per_g / 1000, N_HIS = HIS.mmol_per_g / 1000;
/** Half of each group is charged where h is this. */
const K_ASP = 10 ** -ASP.pK, K_GLU = 10 ** -GLU.pK, K_SERP = 10 ** -SERP.pK, K_HIS = 10 ** -HIS.pK;
/** Lysine and arginine carry their charge at every pH of food, phosphoserine its first. */
const ALWAYS = (of('lysine').mmol_per_g + of('arginine').mmol_per_g) / 1000;
const N_CCP = colloidal.mmol_per_g / 1000, MOST = colloidal.most_of_phosphate, CHARGE = colloidal.charge, K_CCP = 10 ** -colloidal.half_pH;
/** The same phosphate once dissolved, at the ionic strength of milk. */
const K_P1 = 10 ** -colloidal.free_pK[0]!, K_P2 = 10 ** -colloidal.free_pK[1]!;

/**
 * Charge that casein brings to a balance, mol/L, with the calcium phosphate of its micelles beyond what the same phosphate has when dissolved.
 * out, from `at`: negative charge, its fall with ln h, positive charge, its rise with ln h; h: activity of the proton; k: its `lift` moves the groups
 * that ethanol moves; casein: g/L; phosphate: mol/L of all phosphate, which stands among the acids, half of it at most in the micelles.
 * Without the micelles' phosphate both are equal near pH 4.6. Whey proteins are not in it. Allocates nothing.
 * @source swaisgood-1992 residues of four caseins, 10 : 2.6 : 9.3 : 3.3; milk-buffer-peak colloidal phosphate dissolving about pH 5.1
 */
export function caseinInto(out: Float64Array, at: number, h: number, k: AcidConstants, casein: number, phosphate: number): void {
  const raised = h * k.lift;
  const a = raised / K_ASP, g = raised / K_GLU, s = raised / K_SERP, b = h / K_HIS;
  const ia = 1 / (1 + a), ig = 1 / (1 + g), is = 1 / (1 + s), ib = 1 / (1 + b);
  // two protons go in together: the solid is there or is not
  const c = (raised / K_CCP) * (raised / K_CCP), ic = 1 / (1 + c);
  const p = raised / K_P1, q = raised / K_P2, ip = 1 / (1 + p), iq = 1 / (1 + q);
  const beyond = CHARGE - ip - iq, held = N_CCP * casein, most = MOST * phosphate, solid = held < most ? held : most;
  out[at] = casein * (N_ASP * ia + N_GLU * ig + N_SERP * (1 + is)) + solid * beyond * ic;
  out[at + 1] = casein * (N_ASP * a * ia * ia + N_GLU * g * ig * ig + N_SERP * s * is * is) + solid * (2 * beyond * c * ic * ic - ic * (p * ip * ip + q * iq * iq));
  out[at + 2] = casein * (ALWAYS + N_HIS * b * ib);
  out[at + 3] = casein * N_HIS * b * ib * ib;
}
