import { shown, volumeShown } from '@washline/drawing';
import { say, turn } from './language/language.ts';
import type { Read } from './read.ts';

type Reading = Read['reading'];
/** How much there is of a drink, and how many standard drinks that is; '' where it is not known. */
export function liquid(reading: Reading): string { const v = reading.figures['volume']; turn(); return v === undefined ? '' : volumeShown(v.value); }
export function drinks(reading: Reading): string { const us = reading.standard_drinks['US']; return us === undefined || !Number.isFinite(us) || !(us > 0) ? '' : say('drinks', { count: shown(us, 1) }); }
