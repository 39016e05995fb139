import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { findOrInstall } from '../house/chromium.mjs';
import { root } from '../house/root.mjs';

const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** Bytes until the demo drink is drawn, and the time from a typed figure to its painted drawing, in a real browser. */
export async function pageTimes() {
  const webDir = join(root, 'packages', 'web', 'dist');
  const { place, why } = findOrInstall(console.log);
  if (!place || !existsSync(webDir)) { console.log(`The page was not timed: ${why ?? 'it is not built'}.`); return []; }
  const { startServer } = await import('../../packages/server/dist/index.js');
  const { chromium } = await import('playwright-core');
  const server = await startServer({ port: 0, webDir, store: 'folder', version: '0', read: () => ({ reading: null, problems: [] }) });
  const browser = await chromium.launch({ executablePath: place, args: FLAGS });
  try {
    const page = await browser.newPage();
    const bodies = new Map();
    page.on('response', (answer) => { bodies.set(answer.url(), answer.body().catch(() => Buffer.alloc(0))); });
    // the moment the first drawing stands: what has come by then is the first load, what was asked for later is not
    await page.addInitScript(() => {
      const look = new MutationObserver(() => {
        if (globalThis.drawnAt === undefined && document.querySelector('[data-drawing="glass"]')) { globalThis.drawnAt = performance.now(); look.disconnect(); }
      });
      look.observe(document, { childList: true, subtree: true });
    });
    await page.goto(server.address);
    await page.waitForFunction(() => globalThis.drawnAt !== undefined && Number(document.documentElement.dataset.read ?? 0) >= 1);
    await page.waitForTimeout(500);
    const early = await page.evaluate(() => [location.href, ...performance.getEntriesByType('resource').filter((entry) => entry.startTime <= globalThis.drawnAt).map((entry) => entry.name)]);
    let first = 0;
    for (const url of new Set(early)) first += gzipSync((await bodies.get(url)) ?? Buffer.alloc(0)).length;
    const p95 = (times) => times.sort((a, b) => a - b)[Math.floor(times.length * 0.95)] ?? Number.NaN;
    const strokes = await typed(page), drags = await dragged(page);
    return [
      { what: 'first load until the demo drink is drawn, gzipped', got: first / 1000, goal: 200, unit: 'kB' },
      { what: 'from a keystroke to the painted drawing, p95', got: p95(strokes), goal: 16, unit: 'ms' },
      { what: 'from a dragged level to the painted drawing, p95', got: p95(drags), goal: 16, unit: 'ms' },
    ];
  } finally {
    await browser.close();
    await server.close();
  }
}

/** Times from an event to the message after the frame that follows it, in ms, into `strokes` of the page. */
async function timed(page, event) {
  await page.evaluate((name) => {
    globalThis.strokes = [];
    document.addEventListener(name, () => {
      const from = performance.now();
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => { globalThis.strokes.push(performance.now() - from); };
        channel.port2.postMessage(null);
      });
    }, true);
  }, event);
}

/** From input to the frame after the reading: a digit typed and taken back at the end of the first number of the sheet. */
async function typed(page) {
  await timed(page, 'input');
  await page.evaluate(() => {
    const editor = document.querySelector('[data-editor]');
    editor.focus();
    if (editor.setSelectionRange) { const at = /\n\d+/.exec(editor.value); if (at) editor.setSelectionRange(at.index + at[0].length, at.index + at[0].length); }
  });
  for (let round = 0; round < 40; round += 1) {
    await page.keyboard.type('1');
    await page.waitForTimeout(40);
    await page.keyboard.press('Backspace');
    await page.waitForTimeout(40);
  }
  return page.evaluate(() => globalThis.strokes);
}

/** From a move of the pointer to the frame after the reading: the level of the liquid in the glass, up and down by a few steps. */
async function dragged(page) {
  const box = await page.locator('[data-level="layer:0"] .target').boundingBox();
  const x = box.x + box.width * 0.3, y = box.y + box.height / 2;
  await page.mouse.move(x, y);
  await page.waitForTimeout(400);
  await page.mouse.down();
  await timed(page, 'pointermove');
  for (let round = 0; round < 80; round += 1) { await page.mouse.move(x, y - 4 - 8 * (round % 2)); await page.waitForTimeout(40); }
  await page.mouse.up();
  return page.evaluate(() => globalThis.strokes);
}
