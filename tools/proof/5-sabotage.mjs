import { survivor } from '../sabotage/report.mjs';
import { sabotage } from '../sabotage/run.mjs';

export const title = 'Sabotage: a shifted number of the data fails a test, or has a reason why none can';

/** Numbers drawn from all of data/; `npm run sabotage` shifts every one. */
const SAMPLE = { short: 40, whole: 600, seed: 1862 };

export async function prove({ short, total }) {
  const { results, broken } = await sabotage({ only: [], sample: short ? SAMPLE.short : SAMPLE.whole, seed: SAMPLE.seed, side: 2, say: () => undefined });
  const caught = results.filter(({ noticed }) => noticed).length;
  total.check('unshifted, the tests hold', broken);
  total.check('some shifts are noticed', caught > 0 ? [] : ['none was']);
  total.check(`${results.length} shifted numbers: ${caught} noticed, the others have a reason`, results.filter(({ noticed, explained }) => !noticed && !explained).map(survivor));
}
