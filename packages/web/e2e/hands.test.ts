// Many kitchens drawn in a real Chromium are those drawn in Node: the same source, bundled for a page, run by the browser's own engine.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handsText, type SaidHands } from '../../spec/src/index.ts';
import { tables } from '../../tables/src/index.ts';
import { launch } from './browser.ts';

const packages = fileURLToPath(new URL('../../', import.meta.url));
const demo = (name: string): string => readFileSync(new URL(`../../../demo/${name}.drink`, import.meta.url), 'utf8');
const ASKED = { makers: 2000, seed: 1, profile: 'home' };
/** As far as two ways of working out sines, logarithms and powers may lie apart after a whole run. */
const CLOSE = 1e-9;

let browser: Browser, server: Server, address: string;
const folder = mkdtempSync(join(tmpdir(), 'washline-page-'));

beforeAll(async () => {
  writeFileSync(join(folder, 'page.ts'), `
    import { handsText } from '@washline/spec';
    import { tables } from '@washline/tables';
    (globalThis as unknown as { handsOf: unknown }).handsOf = (text: string, asked: { makers: number; seed: number; profile: string }) => handsText(text, { tables, ...asked }).hands;
  `);
  await build({
    configFile: false, root: folder, logLevel: 'silent',
    resolve: { alias: [{ find: /^@washline\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` }] },
    build: { outDir: join(folder, 'out'), target: 'es2022', minify: true, rolldownOptions: { checks: { pluginTimings: false } }, lib: { entry: join(folder, 'page.ts'), formats: ['es'], fileName: () => 'page.js' } },
  });
  server = createServer((request, response) => {
    if (request.url === '/') { response.writeHead(200, { 'content-type': 'text/html' }).end('<!doctype html><script type="module" src="page.js"></script>'); return; }
    const file = join(folder, 'out', 'page.js');
    if (request.url !== '/page.js' || !existsSync(file)) { response.writeHead(404).end(); return; }
    response.writeHead(200, { 'content-type': 'text/javascript' }).end(readFileSync(file));
  });
  await new Promise<void>((done) => { server.listen(0, '127.0.0.1', done); });
  address = `http://127.0.0.1:${(server.address() as { port: number }).port}/`;
  browser = await launch();
}, 120_000);
afterAll(async () => {
  await browser.close();
  server.closeAllConnections();
  server.close();
  rmSync(folder, { recursive: true });
});

/** The numbers of an answer by their places. */
function numbers(value: unknown, at = '$', into = new Map<string, number>()): Map<string, number> {
  if (typeof value === 'number') into.set(at, value);
  else if (value !== null && typeof value === 'object') for (const [key, one] of Object.entries(value)) numbers(one, `${at}.${key}`, into);
  return into;
}
const wordsOf = (value: unknown): string => JSON.stringify(value, (_key, one: unknown) => (typeof one === 'number' ? 0 : one));

describe('many kitchens in Chromium', () => {
  it.each(['clear-colada', 'daiquiri', 'tea-milk-punch'])('%s: bands, odds, shares and what is left are those of Node', async (name) => {
    const text = demo(name), here: SaidHands = handsText(text, { tables, ...ASKED }).hands;
    const page = await browser.newPage();
    await page.goto(address);
    await page.waitForFunction(() => 'handsOf' in globalThis, undefined, { timeout: 20_000 });
    const there = await page.evaluate(({ text: t, asked }) => (globalThis as unknown as { handsOf: (text: string, asked: unknown) => unknown }).handsOf(t, asked), { text, asked: ASKED }) as SaidHands;
    await page.close();
    expect(wordsOf(there)).toBe(wordsOf(JSON.parse(JSON.stringify(here))));
    const own = numbers(here), other = numbers(there);
    expect(other.size).toBe(own.size);
    expect(own.size).toBeGreaterThan(100);
    for (const [at, value] of own) expect(Math.abs(other.get(at)! - value), `${at}: ${value} and ${other.get(at)!}`).toBeLessThanOrEqual(CLOSE * Math.max(Math.abs(value), 1e-3));
    for (const [i, f] of here.findings.entries()) expect(there.findings[i]!.odds).toBe(f.odds);
  }, 60_000);
});
