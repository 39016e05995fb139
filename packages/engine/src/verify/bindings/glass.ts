import type { Bindings, Inputs } from '../types.ts';
import { areaPerGram, brim, cutOf, heightOf, pieceMass, TASTING_GLASS, ICE_DENSITY } from '../../glass/index.ts';
import type { Profile } from '../../glass/index.ts';

function profileOf(i: Inputs): Profile | undefined {
  const raw = i.raw('profile');
  return Array.isArray(raw) && raw.every((pair) => Array.isArray(pair) && pair.length === 2 && pair.every((n) => typeof n === 'number')) ? (raw) : undefined;
}

const FORMS: Readonly<Record<string, string>> = { cube: 'cubes', sphere: 'sphere', spear: 'spear' };

/** Mass of a piece, at the density of the case; a list of sides is a block. */
function iceMass(i: Inputs): number | undefined {
  const density = i.maybe('density') ?? ICE_DENSITY;
  const sides = i.raw('mm');
  if (Array.isArray(sides)) return (sides.reduce((volume: number, side) => volume * Number(side), 1) / 1000) * density;
  const form = FORMS[i.text('form') ?? 'cube'];
  return form === undefined ? undefined : (pieceMass(cutOf(form), i.number('mm')) * density) / ICE_DENSITY;
}

/** Profiles of glasses, pieces of ice. */
export const glass: Bindings = {
  brimful_volume_from_profile: (i) => { const profile = profileOf(i); return profile && brim(profile); },
  height_for_120_ml_in_rocks_double: (i) => { const profile = profileOf(i); return profile && heightOf(profile, i.number('mL')); },
  iso_tasting_glass_capacity: (i) => (i.text('standard') === 'ISO 3591' ? brim(TASTING_GLASS) : undefined),
  ice_mass: iceMass,
  ice_area_per_gram: (i) => areaPerGram(cutOf(FORMS[i.text('form') ?? 'cube'] ?? 'cubes'), i.number('mm')),
};
