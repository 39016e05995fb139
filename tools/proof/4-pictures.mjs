import { existsSync, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { findOrInstall } from '../house/chromium.mjs';
import { root } from '../house/root.mjs';

export const title = 'Pictures of the page';

const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
const SIGHTS = [
  { name: 'wide', viewport: { width: 1440, height: 900 }, colorScheme: 'light' },
  { name: 'dark', viewport: { width: 1440, height: 900 }, colorScheme: 'dark' },
  { name: 'phone', viewport: { width: 375, height: 812 }, colorScheme: 'light' },
];

/** Pictures for people to look at, in test-results/pictures; what a machine can tell of them is checked: a reading is shown, nothing complains, nothing sticks out sideways. */
export async function prove({ total, say }) {
  const { place, why } = findOrInstall(say);
  if (!place) { total.without(SIGHTS.length, why); return; }
  const folder = join(root, 'test-results', 'pictures');
  mkdirSync(folder, { recursive: true });
  const [{ startServer }, { chromium }] = await Promise.all([import('../../packages/server/dist/index.js'), import('playwright-core')]);
  const server = await startServer({ port: 0, webDir: join(root, 'packages', 'web', 'dist'), store: 'folder', version: '0', read: () => ({ reading: null, problems: [] }) });
  const browser = await chromium.launch({ executablePath: place, args: FLAGS });
  try {
    for (const { name, ...sight } of SIGHTS) total.check(`the page, ${name}`, await look(browser, server.address, sight, join(folder, `${name}.png`)));
  } finally {
    await browser.close();
    await server.close();
  }
}

async function look(browser, address, sight, file) {
  const context = await browser.newContext(sight);
  const page = await context.newPage();
  const wrong = [];
  page.on('console', (message) => { if (message.type() === 'error') wrong.push(`console: ${message.text()}`); });
  page.on('pageerror', (error) => wrong.push(`error: ${error.message}`));
  try {
    await page.goto(address);
    await page.waitForFunction(() => Number(document.documentElement.dataset.read ?? 0) >= 1, null, { timeout: 15_000 });
    const seen = await page.evaluate(() => ({ figures: document.querySelectorAll('[data-figure]').length, glass: document.querySelectorAll('[data-drawing="glass"]').length, wide: document.documentElement.scrollWidth - document.documentElement.clientWidth }));
    if (seen.figures < 3) wrong.push(`only ${seen.figures} figures are shown`);
    if (seen.glass !== 1) wrong.push(`${seen.glass} glasses are drawn`);
    if (seen.wide > 0) wrong.push(`${seen.wide} px stick out sideways`);
    await page.screenshot({ path: file, fullPage: true });
    if (!existsSync(file) || statSync(file).size < 5000) wrong.push('the picture is empty');
  } catch (error) {
    wrong.push(error.message.split('\n')[0]);
  }
  await context.close();
  return wrong;
}
