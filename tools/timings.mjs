// Prints each figure of speed with its goal and the ratio beside it. See timings/README.md.
import { build } from './house/build.mjs';
import { install } from './house/installed.mjs';

const say = (line) => console.error(line);
if (!install(say) || build(say).length > 0) { say('It does not build; `npm run build` says why.'); process.exit(1); }
const { coldTimes } = await import('./timings/cold.mjs');
const { engineTimes } = await import('./timings/engine.mjs');
const { pageTimes } = await import('./timings/page.mjs');

const rows = [...(await engineTimes()), ...coldTimes(), ...(await pageTimes())];
if (process.argv.includes('--json')) console.log(JSON.stringify(rows, null, 2));
else for (const { what, got, goal, unit } of rows) console.log(`${what.padEnd(62)} ${Number(got.toPrecision(3))} ${unit}, goal ${goal} ${unit}, ${(got / goal).toFixed(2)} of it${got > goal ? ' - over' : ''}`);
