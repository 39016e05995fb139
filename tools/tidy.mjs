// The tidy checks alone: `npm run tidy`.
import { tally } from './house/tally.mjs';
import { tidy } from './tidy/all.mjs';

const total = tally();
for (const { name, problems } of await tidy()) total.check(name, problems);
process.exit(total.close());
