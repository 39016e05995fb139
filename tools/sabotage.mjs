// Shifts each number of data/ by three of its residuals in turn and asks which test notices. Survivors need a reason in tools/sabotage/explained.json.
//   npm run sabotage                                 everything, written to docs/models/sabotage.md
//   npm run sabotage -- --only physics/acids         files and places that hold these words
//   npm run sabotage -- --sample 50 --seed 1         so many of all, drawn
//   npm run sabotage -- --count                      only says on that page which numbers came or went since
//   --verbose prints every survivor, --side 2 says how many processes run side by side
import { parseArgs } from 'node:util';
import { recount, report } from './sabotage/report.mjs';
import { sabotage } from './sabotage/run.mjs';

const { values } = parseArgs({
  options: {
    only: { type: 'string', multiple: true }, sample: { type: 'string' }, seed: { type: 'string', default: '1' }, side: { type: 'string', default: '2' },
    count: { type: 'boolean', default: false }, verbose: { type: 'boolean', default: false },
  },
});
if (values.count) { recount(); process.exit(0); }
const whole = !values.only && !values.sample;
const result = await sabotage({
  only: values.only ?? [], sample: values.sample ? Number(values.sample) : null, seed: Number(values.seed), side: Number(values.side), say: (line) => console.log(line),
});
process.exit(report(result, { whole, verbose: values.verbose, say: (line) => console.log(line) }));
