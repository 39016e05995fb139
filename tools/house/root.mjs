import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the clone, whatever folder a script is started from. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');
