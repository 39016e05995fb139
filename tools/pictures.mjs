// Makes the pictures of README and manual from the built page: `npm run pictures`.
import { createServer } from 'node:http';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { extname, join, normalize } from 'node:path';
import { chromium } from 'playwright-core';
import { build } from './house/build.mjs';
import { findOrInstall } from './house/chromium.mjs';
import { root } from './house/root.mjs';

const say = (line) => process.stderr.write(`${line}\n`);
const faults = build(say);
for (const part of faults) say(`${part.name}:\n${part.said}`);
const { place, why } = findOrInstall(say);
if (faults.length > 0 || !place) { if (!place) say(why); process.exit(1); }

const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.woff2': 'font/woff2' };
const dist = join(root, 'packages', 'web', 'dist'), folder = join(root, 'docs', 'pictures');
const server = createServer((request, response) => {
  const path = new URL(request.url, 'http://localhost').pathname;
  const file = join(dist, normalize(path === '/' ? 'index.html' : path));
  if (!file.startsWith(dist) || !existsSync(file)) { response.writeHead(404).end(); return; }
  response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' }).end(readFileSync(file));
});
await new Promise((done) => { server.listen(0, '127.0.0.1', done); });

/** The demo drink with the one change that ruins it in many kitchens: the juice goes in raw. */
const raw = (text) => text.replace('230 ml pineapple juice, held 5 min at 85 °C\n60 ml coconut rum\n15 ml simple syrup 1:1\nstrain', '230 ml fresh pineapple juice\n60 ml coconut rum\n15 ml simple syrup 1:1\nheat to 60 °C\nstrain');
const PICTURES = [
  { name: 'page', width: 1440, height: 900 },
  { name: 'page-stop', width: 1440, height: 900, change: raw, at: '230 ml fresh' },
  { name: 'first', width: 1280, height: 720, change: raw, at: '230 ml fresh' },
  { name: 'page-dark', width: 1440, height: 900, dark: true },
  { name: 'page-why', width: 1440, height: 900, press: '[data-figure="strength"]' },
  { name: 'page-phone', width: 375, height: 812 },
  { name: 'page-later', width: 1440, height: 900, minutes: 30 },
  { name: 'page-bench', width: 1440, height: 900, view: 'bench', bench: readFileSync(join(root, 'demo', 'my.bench'), 'utf8') },
  // A4 less its margins, at 96 px an inch
  { name: 'page-paper', width: 718, height: 1047, paper: true },
  ...['hands', 'compare', 'film'].flatMap((view) => [{ name: `page-${view}`, width: 1440, height: 900, view }, { name: `page-${view}-phone`, width: 375, height: 812, view, dark: true }]),
];

mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({ executablePath: place, args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
for (const { name, width, height, change, at, dark, press, view, minutes, bench, paper } of PICTURES) {
  const context = await browser.newContext({ viewport: { width, height }, colorScheme: dark ? 'dark' : 'light', serviceWorkers: 'block', reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  await page.waitForFunction(() => Number(document.documentElement.dataset.read) >= 2);
  await page.evaluate(() => document.fonts.ready);
  if (change) {
    const before = await page.textContent('[data-text]');
    const after = change(before);
    if (after === before) throw new Error(`${name}: the change does not apply to the demo drink`);
    await page.fill('[data-editor]', after);
    await page.evaluate((words) => {
      const row = [...document.querySelectorAll('.row')].find((r) => r.textContent.startsWith(words));
      document.activeElement.blur();
      row.closest('.scroll').scrollTop = Math.max(0, row.offsetTop - 220);
    }, at);
  }
  // the tide marks of the text as it stands
  await page.waitForSelector('[data-tide]', { state: 'attached' });
  if (minutes) { await page.focus('.rule'); for (let i = 0; i < minutes; i++) await page.keyboard.press('ArrowRight'); await page.evaluate(() => document.activeElement.blur()); }
  if (press) await page.click(press);
  if (view) { await page.evaluate((name) => { location.hash = name; }, view); await page.waitForTimeout(1500); }
  if (bench) { await page.fill('[data-bench]', bench); await page.evaluate(() => document.activeElement.blur()); await page.waitForTimeout(1500); }
  if (paper) { await page.emulateMedia({ media: 'print' }); await page.evaluate(() => { dispatchEvent(new Event('beforeprint')); }); }
  await page.mouse.move(2, 2);
  await page.waitForTimeout(400);
  await page.screenshot({ path: join(folder, `${name}.png`) });
  say(`docs/pictures/${name}.png`);
  await context.close();
}
await browser.close();
server.close();
