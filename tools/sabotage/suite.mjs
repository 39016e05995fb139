// The test files a shifted number is shown to, bundled once: those that take in the data file, the likeliest to notice first.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';
import { bundle } from './bundle.mjs';
import { faultsIn, writtenBy } from './sandbox.mjs';

/** Never shown: pages written anew when the engine changes say nothing against a number; many draws take too long for thousands of shifts; sheets of cells are asked row by row. */
const LEFT_OUT = /residuals\.test|\/fuzz\.test|tests\/print\/(cells|words)|\/hands\//;
/** Thousands of wines take seconds: shown what is fitted to them, and the sheet of their spreads. */
const OF_WINES = /wines\.test/;
const FOR_WINES = /^data\/(physics\/wines\.json|spreads\.tsv)$/;
const MODELS = ['packages/engine/src', 'packages/tables/src', 'tests/print'];
/** Read what they name from a list, so that their text does not name the file. */
const BY_LIST = /^tests\/print\/constants/;
/** Which folders of tests a shift of a file is shown to: the first line that fits. Whole readings are slow, so only what speaks of limits is shown to the tests of findings. */
const SHOWN = [
  [/^data\/physics\/(agents|gas|keeping|siphon|gelatin|proteases|curdle)\.json$|^data\/[a-z-]+\.json$/, [...MODELS, 'tests/findings']],
  [/^data\/vocabulary\//, ['packages/tables/src/units.test.ts', 'packages/tables/src/glasses.test.ts', 'packages/spec/src/document/cases.test.ts', 'packages/spec/src/line']],
  [/./, MODELS],
];

function* testFiles(folder) {
  if (folder.endsWith('.test.ts')) { yield folder; return; }
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) { if (entry.name !== 'node_modules' && entry.name !== 'dist') yield* testFiles(path); }
    else if (entry.name.endsWith('.test.ts') && !LEFT_OUT.test(path)) yield path;
  }
}

/** What the build makes of a sheet. */
const BUILDS = [
  { tool: 'tools/tables.mjs', reads: /^data\/(?:[a-z]+\.tsv|hazards\.json|larder\/)/, out: 'packages/tables/src/generated/' },
  { tool: 'tools/vocabulary.mjs', reads: /^data\/vocabulary\//, out: 'packages/spec/src/generated/' },
];

/** What a test file is taken to cost before it was run: whole readings take seconds. */
const guess = (path) => (path.startsWith('tests/findings/') || OF_WINES.test(path) ? 5000 : 50);

/** @returns what shows shifted texts to the tests; a test file that fails as it is counts for nothing, and is named in `broken` */
export async function suite() {
  const builds = await Promise.all(BUILDS.map(async (build) => ({ ...build, made: await bundle(build.tool) })));
  const broken = [];
  const ready = new Map();
  const lists = new Map();

  async function prepare(path) {
    if (!ready.has(path)) {
      try { ready.set(path, { made: await bundle(path), ms: guess(path), tried: false, noticed: new Map() }); } catch (error) {
        broken.push(`${path}: ${String(error.message).replaceAll('\n', ' ').slice(0, 300)}`);
        ready.set(path, null);
      }
    }
    return ready.get(path);
  }

  /** Whether a test file holds as it is; asked once, before it is believed. */
  async function sound(entry) {
    if (!entry.tried) {
      const began = performance.now();
      const [fault] = await faultsIn(entry.made, new Map());
      Object.assign(entry, { tried: true, ms: performance.now() - began, sound: !fault });
      if (fault) broken.push(`${entry.made.file}: ${fault.test}: ${fault.said}`);
    }
    return entry.sound;
  }

  /** The data file and what is built of it, as texts by path; throws where the build stops. */
  function overlay(file, text) {
    const over = new Map([[file, text]]);
    for (const build of builds) if (build.reads.test(file)) for (const [path, written] of writtenBy(build.made, over)) over.set(path, written);
    return over;
  }

  /** The test files that take in a data file or what is built of it, those that notice most in least time first. */
  async function reachedBy(file) {
    if (!lists.has(file)) {
      const out = builds.filter((build) => build.reads.test(file)).map((build) => build.out);
      const [, folders] = SHOWN.find(([files]) => files.test(file));
      const list = [];
      for (const folder of folders) for (const path of testFiles(folder)) {
        if (OF_WINES.test(path) && !FOR_WINES.test(file)) continue;
        const entry = await prepare(path);
        if (!entry) continue;
        const { parts, code } = entry.made;
        if (BY_LIST.test(path) || parts.includes(file) || out.some((start) => parts.some((part) => part.startsWith(start))) || code.includes(file.split('/').pop())) list.push(entry);
      }
      lists.set(file, list);
    }
    const worth = (entry) => (entry.noticed.get(file)?.size ?? 0) / (entry.ms + 1);
    return lists.get(file).toSorted((a, b) => worth(b) - worth(a) || a.ms - b.ms);
  }

  /** The tests of one file that fail over the texts. */
  async function faults(entry, over, asked) {
    return (await sound(entry)) ? faultsIn(entry.made, over, asked) : [];
  }
  return { overlay, reachedBy, faults, broken };
}
