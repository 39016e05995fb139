import { networkInterfaces } from 'node:os';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Share, startServer, type Started } from '../../server/src/index.ts';
import { launch } from './browser.ts';

const hosts = Object.values(networkInterfaces()).flat().filter((one) => one?.family === 'IPv4' && !one.internal).map((one) => one?.address ?? '');
const webDir = fileURLToPath(new URL('../dist', import.meta.url)), share = new Share();
let browser: Browser, server: Started;
beforeAll(async () => { [browser, server] = await Promise.all([launch(), startServer({ port: 0, webDir, store: 'folder', version: '0', share, read: () => ({ reading: null, problems: [] }) })]); });
afterAll(async () => { await browser.close(); await server.close(); });

describe.runIf(hosts.length > 0)('the page on a phone in the same network', () => {
  it('asks for the code, opens with it, reads by itself, and says what plain http cannot', async () => {
    const context = await browser.newContext({ viewport: { width: 375, height: 812 }, hasTouch: true, isMobile: true }), page = await context.newPage(), faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    await page.goto(server.shared[0]!);
    expect(await page.locator('[data-drawing]').count()).toBe(0);
    await page.getByRole('textbox').fill('AAAA-AAAA');
    await page.getByRole('button').tap();
    await page.getByText('That is not the code.').waitFor();
    const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(' | ')}`)).toEqual([]);
    await page.getByRole('textbox').fill(share.code.toLowerCase());
    await page.getByRole('button').tap();
    await page.waitForSelector('[data-drawing="glass"] [data-layer]');
    expect(await page.evaluate(() => isSecureContext)).toBe(false);
    await page.waitForFunction(() => Number(document.documentElement.dataset['read'] ?? 0) >= 1);
    expect(await page.locator('.plain-http').textContent()).toContain('plain http');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(375);
    expect(faults).toEqual([]);
    await context.close();
  });
  it('says nothing of it on one\'s own machine', async () => {
    const page = await browser.newPage();
    await page.goto(server.address);
    await page.waitForSelector('[data-drawing="glass"] [data-layer]');
    expect(await page.locator('.plain-http').count()).toBe(0);
    await page.context().close();
  });
});
