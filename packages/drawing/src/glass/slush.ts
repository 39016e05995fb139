import type { Reading } from '../reading.ts';

/** Is so much of a drink's own water ice that it is told? What lies in it as cubes is not its own. */
export const holdsIce = ({ figures }: { readonly figures: Reading['figures'] }): boolean => (figures['frozen']?.value ?? 0) >= 0.5;
