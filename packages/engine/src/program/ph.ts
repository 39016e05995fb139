import { ACIDS, ETHANOL_SHIFT, constantsAt, constantsInto, molarInto, near, pHInto } from '../acids/index.ts';
import { strengthIn } from '../liquids/index.ts';
import { at, slot } from '../matter/constituents.ts';
import type { Context } from './context.ts';

/** A liquid with less acid than this has no pH worth a number: mol/L. @source none - definition */
const LEAST_MOL_L = 1e-4;
/** A pH is withheld where more than this share of the mass has none of its own. @source none - definition */
const LIMIT = 0.05;
const AQUEOUS = constantsAt(20);

/**
 * The pH of a liquid at 20 °C, degassed: charge balance over its acids and strong ions, at its own strength. The doubt of the shift by ethanol and of the
 * activities are inputs of the model. Absent where more than a twentieth of the mass has no pH of its own, and where there is next to no acid.
 * @source goldberg-2002 constants; spana-davies activities; prenesti-2012 shift with ethanol
 */
export function phProbe(ctx: Context, of: string, block: number, volume: number, mass: number): void {
  const mol = new Float64Array(ACIDS);
  const k = constantsAt(20), start = near();
  const activities = ctx.spread('model/ph', 'model/ph', 0, 'pH', 'model', { bounds: { min: -14, max: 14 } });
  const ethanol = ctx.about('model/pka-ethanol/shift', ETHANOL_SHIFT.value, ETHANOL_SHIFT.low, ETHANOL_SHIFT.high, 'share', 'model', { grade: 'predicted', source: 'prenesti-2012', row: 'physics/acids.json ethanol.share' });
  ctx.probe('ph', of, 'pH', 'charge-balance', ['goldberg-2002', 'spana-davies', 'prenesti-2012'], ({ s, x }, out, i) => {
    const mL = s[volume]!;
    if (!(mL > 0) || s[block + slot.ph_unknown_g]! + s[block + slot.unknown_g]! > LIMIT * s[mass]!) { out[i] = NaN; start.set = true; return; }
    if (molarInto(mol, s, block, mL) < LEAST_MOL_L) { out[i] = NaN; start.set = true; return; }
    constantsInto(k, AQUEOUS, strengthIn(s[block + at.ethanol]!, mL), x[ethanol]);
    pHInto(out, i, mol, 0, (s[block + slot.charge_mol]! / mL) * 1000, k, 0, (s[block + at.casein]! / mL) * 1000, start);
    out[i]! += x[activities]!;
  }, true);
}
