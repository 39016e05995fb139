import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { verify } from './index.ts';
import type { CaseFile } from './index.ts';
import { density } from './bindings/density.ts';
import { freezing } from './bindings/freezing.ts';
import { gauging } from './bindings/gauging.ts';
import { measures } from './bindings/measures.ts';
import { solutes } from './bindings/solutes.ts';
import { sugar } from './bindings/sugar.ts';
import { thermal } from './bindings/thermal.ts';
import { viscosity } from './bindings/viscosity.ts';

const file = JSON.parse(readFileSync(fileURLToPath(new URL('../../../../cases/published.json', import.meta.url)), 'utf8')) as CaseFile;
const short = (value: number | null): string => (value === null ? '' : Math.abs(value) < 1e-12 ? '0' : String(Number(value.toPrecision(2))));

test.each([
  ['liquids', { ...density, ...gauging, ...sugar, ...solutes, ...freezing, ...thermal, ...viscosity }],
  ['units', measures],
])('the page of residuals of %s shows what the engine gives', async (domain, bindings) => {
  const result = verify(file, Object.keys(bindings), bindings);
  const unit = (group: string): string => file.cases.find((c) => c.group === group)?.unit ?? '';
  const rows = result.groups.map((g) => {
    return `| ${g.group} | ${g.kind} | ${g.within}/${g.cases} | ${short(g.rms)} | ${short(g.worst?.off ?? null)} | ${unit(g.group)} | ${g.source} |`;
  });
  const page = `# Residuals of ${domain} against print

Written by \`residuals.test.ts\` from \`cases/published.json\`: engine less print. \`nature\` is a measurement or a printed table of one, \`rule\` a convention,
\`code\` a value of a published formula, which tests the arithmetic and not the physics. Tolerances were chosen with the residuals in view.

| group | kind | within | rms | worst | unit | source |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
  await expect(page).toMatchFileSnapshot(`../../../../docs/models/residuals-${domain}.md`);
});
