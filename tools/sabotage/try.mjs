// Shifts numbers and says for each which test noticed. Run as a process of its own: places of one file come in, answers go back.
import { explanation } from './explain.mjs';
import { moved, numbersOf } from './numbers.mjs';
import { shiftOf } from './residuals.mjs';
import { suite } from './suite.mjs';

const { overlay, reachedBy, faults, broken } = await suite();
const move = (number) => ({ number, by: shiftOf(number).by });
const halves = (list) => [list.slice(0, Math.ceil(list.length / 2)), list.slice(Math.ceil(list.length / 2))];

/** The files with these numbers shifted together; a build that stops is noticed by itself. */
function shiftedTogether(file, numbers, kept) {
  const key = numbers.map(({ place }) => place).join('\n');
  if (!kept.has(key)) {
    try { kept.set(key, { over: overlay(file, moved(numbers.map(move))) }); } catch (error) { kept.set(key, { stops: String(error.message).slice(0, 300) }); }
  }
  return kept.get(key);
}

/** Which of some numbers one test file notices. They are shifted together; where a test fails they are halved, and halves are shown to the tests that failed alone.
 *  A number counts as noticed only where a test failed with nothing else shifted. */
async function noticedBy(entry, file, numbers, kept, found, only) {
  const { over, stops } = shiftedTogether(file, numbers, kept);
  const failed = stops ? [{ test: 'the build stops', said: stops }] : await faults(entry, over, { only, all: numbers.length > 1 });
  if (failed.length === 0) return;
  if (numbers.length === 1) {
    found.set(numbers[0].place, { file: stops ? 'build' : entry.made.file, ...failed[0] });
    if (!stops) entry.noticed.set(file, (entry.noticed.get(file) ?? new Set()).add(failed[0].test));
    return;
  }
  const names = failed.some(({ test }) => test === 'loading' || stops) ? undefined : new Set(failed.map(({ test }) => test));
  for (const half of halves(numbers)) await noticedBy(entry, file, half, kept, found, names);
}

/** Likely to be noticed by what noticed others of the file: asked of each number by itself, for no longer than this in all. */
const AT_FIRST_MS = 300;

async function tryAll(file, numbers) {
  const [found, kept] = [new Map(), new Map()];
  const left = () => numbers.filter(({ place }) => !found.has(place));
  for (const number of numbers.filter((one) => !explanation(one))) {
    let ms = 0;
    for (const entry of await reachedBy(file)) {
      const names = entry.noticed.get(file);
      ms += entry.ms;
      if (!names || ms > AT_FIRST_MS) break;
      await noticedBy(entry, file, [number], kept, found, names);
      if (found.has(number.place)) break;
    }
  }
  for (const entry of await reachedBy(file)) if (left().length > 0) await noticedBy(entry, file, left(), kept, found);
  // two shifts can hide one another: what has no reason to survive is shown to every test by itself before it is said to
  if (numbers.length > 1) for (const number of left().filter((one) => !explanation(one))) for (const entry of await reachedBy(file)) if (!found.has(number.place)) await noticedBy(entry, file, [number], kept, found);
  return numbers.map(({ place }) => [place, found.get(place) ?? null]);
}

/** Tries what came in, one lot after the other. */
let last = Promise.resolve();
process.on('message', ({ file, places }) => {
  const all = new Map(numbersOf(file).map((number) => [number.place, number]));
  last = last.then(async () => process.send({ file, answers: await tryAll(file, places.map((place) => all.get(place))), broken }));
});
process.send({ ready: true });
