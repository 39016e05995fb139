import { existsSync, readFileSync } from 'node:fs';
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
    const rows = [{ what: 'first load until the demo drink is drawn, gzipped', got: first / 1000, goal: 200, unit: 'kB' }];
    for (const [name, line] of Object.entries(LINES)) {
      const { seen, worked } = await painted(browser, server.address, line);
      rows.push({ what: `first painted drawing on a phone, ${name}`, got: seen, goal: 1000, unit: 'ms' }, { what: 'until it is drawn by the page and can be worked with', got: worked, goal: 1000, unit: 'ms' });
    }
    rows.push(...told('a keystroke', 'the demo drink', await typed(page)), ...told('a dragged level', 'the demo drink', await dragged(page)));
    const many = await browser.newPage();
    await many.addInitScript(([key, text]) => { localStorage.setItem(key, JSON.stringify({ text, history: { undo: [], redo: [] } })); }, ['washline/draft', readFileSync(join(root, 'packages', 'drawing', 'test', 'whole-shelf.drink'), 'utf8')]);
    await many.goto(server.address);
    await many.waitForFunction(() => document.querySelectorAll('[data-section]').length > 8 && Number(document.documentElement.dataset.read ?? 0) >= 1);
    await many.waitForTimeout(1500);
    rows.push(...told('a keystroke', 'fourteen preps', await typed(many)), told('a keystroke', 'each amount of fourteen preps in turn', await typedEach(many))[0], ...told('a dragged level', 'fourteen preps', await dragged(many)));
    const blank = await browser.newPage();
    await blank.setContent('<textarea data-editor>1\n2</textarea><output></output>');
    await blank.evaluate(() => { document.addEventListener('input', () => { document.querySelector('output').textContent = String(performance.now()); }); });
    rows.push({ what: 'a keystroke on an empty page, p95: the wait for the screen', got: p95((await typed(blank)).map(({ whole }) => whole)), goal: 16, unit: 'ms' });
    return rows;
  } finally {
    await browser.close();
    await server.close();
  }
}

const p95 = (times) => times.sort((a, b) => a - b)[Math.floor(times.length * 0.95)] ?? Number.NaN;
/** What the page works for a change, and what it takes with the wait for the screen's next picture. */
const told = (change, of, times) => [
  { what: `work of the page from ${change} to the painted drawing, ${of}, p95`, got: p95(times.map(({ work }) => work)), goal: 16, unit: 'ms' },
  { what: `the same with the wait for the screen, ${of}, p95`, got: p95(times.map(({ whole }) => whole)), goal: 16, unit: 'ms' },
];

/** Lines of a phone with a processor a quarter as fast: ms there and back, bits a second. */
const LINES = { '4G (9 Mbit/s, 85 ms)': { latency: 85, bits: 9e6 }, 'slow 4G (1.6 Mbit/s, 150 ms)': { latency: 150, bits: 1.6e6 } };

/** Until a drawing is first painted, and until the page has drawn its own in its place, nothing being cached: each the middle of five. */
async function painted(browser, address, { latency, bits }) {
  const times = [];
  for (let round = 0; round < 5; round += 1) {
    const context = await browser.newContext({ viewport: { width: 375, height: 812 }, isMobile: true, hasTouch: true }), page = await context.newPage(), session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', { offline: false, latency, downloadThroughput: bits / 8, uploadThroughput: bits / 8 });
    await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
    await page.addInitScript(() => {
      // what was painted counts once the picture stands in its room
      new PerformanceObserver((list) => {
        if (globalThis.seenAt === undefined && (document.querySelector('.at-once svg')?.getBoundingClientRect().height ?? 0) > 100) globalThis.seenAt = list.getEntriesByName('first-contentful-paint')[0]?.startTime;
      }).observe({ type: 'paint', buffered: true });
      const look = new MutationObserver(() => {
        if (!document.querySelector('[data-drawing="glass"]')) return;
        look.disconnect();
        requestAnimationFrame(() => { const after = new MessageChannel(); after.port1.onmessage = () => { globalThis.workedAt = performance.now(); globalThis.seenAt ??= globalThis.workedAt; }; after.port2.postMessage(null); });
      });
      look.observe(document, { childList: true, subtree: true });
    });
    await page.goto(address);
    await page.waitForFunction(() => globalThis.workedAt !== undefined);
    times.push(await page.evaluate(() => ({ seen: globalThis.seenAt, worked: globalThis.workedAt })));
    await context.close();
  }
  const middle = (of) => times.map(of).sort((a, b) => a - b)[2];
  return { seen: middle((t) => t.seen), worked: middle((t) => t.worked) };
}

/** Times from an event to the message after the frame that follows it, in ms, into `strokes` of the page: the whole, and what of it the page works. */
async function timed(page, event) {
  await page.evaluate((name) => {
    globalThis.strokes = [];
    let from = 0, handled = 0;
    document.addEventListener(name, () => {
      from = performance.now(); handled = 0;
      const began = from;
      requestAnimationFrame(() => {
        const frame = performance.now(), before = handled, channel = new MessageChannel();
        channel.port1.onmessage = () => { const now = performance.now(); globalThis.strokes.push({ whole: now - began, work: before + now - frame }); };
        channel.port2.postMessage(null);
      });
    }, true);
    // comes last of all that listens: what was done by then is what the event itself took
    addEventListener(name, () => { handled = performance.now() - from; });
  }, event);
}

/** Types a digit where the caret is, and takes it back. */
async function thereAndBack(page) {
  await page.keyboard.type('1');
  await page.waitForTimeout(40);
  await page.keyboard.press('Backspace');
  await page.waitForTimeout(40);
}

/** From input to the frame after the reading: a digit typed and taken back at the end of the first number of the sheet. */
async function typed(page) {
  await timed(page, 'input');
  await page.evaluate(() => {
    const editor = document.querySelector('[data-editor]');
    editor.focus();
    if (editor.setSelectionRange) { const at = /\n\d+/.exec(editor.value); if (at) editor.setSelectionRange(at.index + at[0].length, at.index + at[0].length); }
  });
  for (let round = 0; round < 50; round += 1) {
    if (round === 10) await page.evaluate(() => { globalThis.strokes.length = 0; });
    await thereAndBack(page);
  }
  return page.evaluate(() => globalThis.strokes);
}

/** The same in each amount of the sheet in turn, twice after a round that is not counted, of a page that `typed` has asked: strokes that move everything, and strokes that move little. */
async function typedEach(page) {
  const places = await page.evaluate(() => { const editor = document.querySelector('[data-editor]'); editor.focus(); return [...editor.value.matchAll(/(?<=\n)\d+(?:\.\d+)?/g)].map((at) => at.index + at[0].length); });
  for (let round = 0; round < 3; round += 1) {
    for (const at of places) {
      await page.evaluate((place) => { document.querySelector('[data-editor]').setSelectionRange(place, place); }, at);
      await thereAndBack(page);
    }
    if (round === 0) await page.evaluate(() => { globalThis.strokes.length = 0; });
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
  for (let round = 0; round < 100; round += 1) {
    if (round === 20) await page.evaluate(() => { globalThis.strokes.length = 0; });
    await page.mouse.move(x, y - 4 - 8 * (round % 2)); await page.waitForTimeout(40);
  }
  await page.mouse.up();
  return page.evaluate(() => globalThis.strokes);
}
