import { existsSync, readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';

export const DIST = fileURLToPath(new URL('../dist/', import.meta.url));
/** However deep the folder lies on a server. */
export const PLACE = '/some/deep/path/';
const TYPES: Readonly<Record<string, string>> = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.woff2': 'font/woff2', '.webmanifest': 'application/manifest+json' };

export interface Site { readonly address: string; readonly sent: Map<string, number>; stop(): Promise<void> }

/** A static server that knows nothing but files. */
export async function serve(): Promise<Site> {
  const sent = new Map<string, number>();
  const server: Server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    const file = path.startsWith(PLACE) ? join(DIST, normalize(path.slice(PLACE.length) || 'index.html')) : '';
    if (!file.startsWith(DIST) || !existsSync(file)) { response.writeHead(404).end(); return; }
    const bytes = readFileSync(file);
    sent.set(path.slice(PLACE.length), extname(file) === '.woff2' ? bytes.length : gzipSync(bytes, { level: 9 }).length);
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' }).end(bytes);
  });
  await new Promise<void>((done) => { server.listen(0, '127.0.0.1', done); });
  const at = server.address();
  if (at === null || typeof at === 'string') throw new Error('no port');
  return {
    address: `http://localhost:${at.port}${PLACE}`, sent,
    stop: () => new Promise((done) => { server.closeAllConnections(); server.close(() => { done(); }); }),
  };
}

export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
}

export interface Opened { readonly page: Page; readonly faults: string[] }

/** A page of its own storage that writes down every fault: console errors, thrown errors, violations of the content security policy. */
export async function open(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => { if (message.type() === 'error') faults.push(`console: ${message.text()}`); });
  page.on('pageerror', (error) => { faults.push(`thrown: ${error.message}`); });
  await page.addInitScript(() => { document.addEventListener('securitypolicyviolation', (e) => { console.error(`policy: ${e.violatedDirective} ${e.blockedURI}`); }); });
  await page.goto(address);
  await ready(page);
  return { page, faults };
}

/** The engine has come and has read the text. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => Number(document.documentElement.dataset['read'] ?? 0) >= 2 || (document.documentElement.dataset['read'] === '1' && document.querySelector('[data-text]')?.textContent?.startsWith('Clear colada') !== true));
}

/** Replaces the whole text as a person would: focus, select all, paste; then waits for its reading. */
export async function paste(page: Page, text: string): Promise<void> {
  const before = await page.evaluate(() => Number(document.documentElement.dataset['read']));
  await page.focus('[data-editor]');
  await page.keyboard.press('Control+a');
  await page.evaluate((all) => { document.execCommand('insertText', false, all); }, text);
  await page.waitForFunction((n) => Number(document.documentElement.dataset['read']) > n, before);
}

export async function value(page: Page, name: string, reading = 'drink'): Promise<number> {
  return Number(await page.getAttribute(`[data-reading="${reading}"] [data-figure="${name}"]`, 'data-value'));
}
