import type { Reading } from '../reading.ts';

/** Ice that is not put in is told from so much of a liquid's water on, %. */
export const TOLD_FROM = 0.5;

/** Is so much of a drink's own water ice that it is told? What lies in it as cubes is not its own. */
export const holdsIce = ({ figures }: { readonly figures: Reading['figures'] }): boolean => (figures['frozen']?.value ?? 0) >= TOLD_FROM;
