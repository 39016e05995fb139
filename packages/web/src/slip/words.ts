import { sayIf } from '../language/language.ts';

/** A figure's name, large. */
export function nameOf(figure: string): string { return sayIf(`figure.${figure}`, figure.charAt(0).toUpperCase() + figure.slice(1)); }
