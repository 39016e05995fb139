import type { Bindings, Inputs } from '../types.ts';
import { at, BLOCK } from '../../matter/constituents.ts';
import {
  densityFromStrength, gallonsPerPound, obscuration, obscurationByRule, proofGallonsPerPound, SIXTY_F_C, trueProof, volume, volumeAt60F, waterParts, waterToReduce,
} from '../../liquids/index.ts';
import type { StrengthBasis } from '../../liquids/index.ts';

function strength60F(i: Inputs): number {
  return i.maybe('alcohol_parts', 'abv_60F') ?? i.number('proof') / 2;
}

function basis(i: Inputs): StrengthBasis {
  const text = i.text('basis') ?? '60 F';
  return /20/.test(text) ? '20C' : '60F';
}

function fahrenheit(i: Inputs): number {
  const celsius = i.maybe('t_C');
  return celsius === undefined ? i.number('t_F') : celsius * 1.8 + 32;
}

/** A litre at 60 °F of this strength with this much sucrose in it. */
function sweetened(strength: number, solids_gPer100mL: number): Float64Array {
  const block = new Float64Array(BLOCK);
  block[at.ethanol] = 10 * strength * (densityFromStrength(100, SIXTY_F_C, '60F') / 1000);
  block[at.sucrose] = 10 * solids_gPer100mL;
  for (let n = 0; n < 30; n++) block[at.water]! += 1000 - volume(block, 0, SIXTY_F_C);
  return block;
}

/** The gauging manual: all at 60 °F, strength as proof. */
export const gauging: Bindings = {
  table6_water_parts: (i) => waterParts(strength60F(i)),
  table4_gal_per_lb: (i) => gallonsPerPound(i.number('proof')),
  table4_proofgal_per_lb: (i) => proofGallonsPerPound(i.number('proof')),
  table1_true_proof: (i) => trueProof(i.number('hydrometer_proof', 'reading_proof'), fahrenheit(i)),
  table7_volume_factor: (i) => volumeAt60F(i.number('proof'), fahrenheit(i)),
  dilution_table: (i) => waterToReduce(i.maybe('start_vol') ?? 100, i.number('start_abv'), i.number('target_abv'), basis(i)),
  obscuration: (i) => obscurationByRule(i.number('solids_g_per_100ml')),
  obscuration_rule: (i) => 2 * obscuration(sweetened(i.number('true_abv_60F'), i.number('solids_g_per_100ml')), 0, '60F'),
};
