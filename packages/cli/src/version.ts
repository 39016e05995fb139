import { readFileSync } from 'node:fs';
import { ROOT } from './root.ts';

/** The version of this package. */
export const VERSION: string = (JSON.parse(readFileSync(new URL('packages/cli/package.json', ROOT), 'utf8')) as { version: string }).version;
