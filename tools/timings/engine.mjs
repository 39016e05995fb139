import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../house/root.mjs';

/** The middle of the times of `rounds` calls, in seconds, each of `inner` calls at once where one is too short for the clock. */
function median(rounds, inner, call) {
  const times = [];
  for (let round = 0; round < rounds; round += 1) {
    const from = performance.now();
    for (let at = 0; at < inner; at += 1) call(at);
    times.push((performance.now() - from) / 1000 / inner);
  }
  return times.sort((a, b) => a - b)[Math.floor(rounds / 2)];
}

const WARM = 400;

/** Times of the engine on the demo spec, warm. */
export async function engineTimes() {
  const load = (name) => import(`../../packages/${name}/dist/index.js`);
  const [{ parse, readText }, { compile, crowdOf, hands, kitchenOf, readDocument, runMakers }, { tables }] = await Promise.all([load('spec'), load('engine'), load('tables')]);
  const text = readFileSync(join(root, 'demo', 'clear-colada.drink'), 'utf8');
  const document = parse(text);
  const { program } = compile(document, tables, null);
  const x = Float64Array.from(program.nominal);
  const out = new Float64Array(program.probes.length);
  const all = new Uint8Array(program.probes.length).fill(1);
  const workspace = program.workspace();
  const measure = Math.max(0, program.inputs.findIndex((input) => input.key.startsWith('pour/')));
  const shown = Int32Array.from(program.probes.flatMap((probe, i) => (probe.of.includes('stage:') ? [] : [i])));
  const { xs: [one], run } = program.again(Int32Array.from(program.inputs.keys()), shown, 1);
  const put = (to, at) => { to[measure] = program.nominal[measure] * (1 + 0.001 * (at % 7)); };
  const change = (at) => { put(one, at); run(1, out, 0); };
  const changeAll = (at) => { put(x, at); program.run(x, out, all, workspace); };
  median(50, 100, change);
  const asked = { makers: 10_000, seed: 1, profile: 'home' };
  const compiled = compile(document, tables, null);
  const { draws, want } = crowdOf(compiled, kitchenOf('home', tables));
  const record = runMakers(compiled.program, draws, want, asked.seed, 0, asked.makers);
  // a page has read some hundred texts before anybody looks at its speed, and V8 takes as many until it settles; what ran before is settled for other work
  median(WARM, 1, () => readDocument(document, tables, { quick: true }));
  return [
    { what: 'all figures and margins after one changed number', got: median(101, 50, change) * 1e6, goal: 25, unit: 'µs' },
    { what: 'the same and what every stage is', got: median(101, 50, changeAll) * 1e6, goal: 25, unit: 'µs' },
    { what: 'the reading with its ranges by differences', got: median(41, 1, () => readDocument(document, tables, { quick: true })) * 1e3, goal: 3, unit: 'ms' },
    { what: 'the same, bent figures tried on draws', got: median(21, 1, () => readDocument(document, tables, {})) * 1e3, goal: 3, unit: 'ms' },
    { what: 'from text to reading by differences, warm', got: median(41, 1, () => readText(text, { tables, quick: true })) * 1e3, goal: 5, unit: 'ms' },
    { what: 'the same, bent figures tried on draws', got: median(21, 1, () => readText(text, { tables })) * 1e3, goal: 5, unit: 'ms' },
    { what: 'ten thousand makers run, one core', got: median(5, 1, () => runMakers(compiled.program, draws, want, asked.seed, 0, asked.makers)) * 1e3, goal: 250, unit: 'ms' },
    { what: 'bands, odds and what matters from their rows', got: median(3, 1, () => hands(compiled, tables, asked, record)) * 1e3, goal: 100, unit: 'ms' },
    halfAnHour({ parse, compile, tables }),
    thousand({ parse, compile, tables }),
  ];
}

/** What half an hour in the glass adds to a run: a long drink on its ice. */
function halfAnHour({ parse, compile, tables }) {
  const document = parse(readFileSync(join(root, 'demo', 'gin-and-tonic.drink'), 'utf8'));
  const times = [true, false].map((later) => {
    const { program } = compile(document, tables, null, [], later ? 'alone' : null);
    const x = Float64Array.from(program.nominal), out = new Float64Array(program.probes.length), all = new Uint8Array(program.probes.length).fill(1), w = program.workspace();
    return median(101, 20, () => program.run(x, out, all, w));
  });
  return { what: 'half an hour in the glass, beside what it is when poured', got: (times[0] - times[1]) * 1e3, goal: 2, unit: 'ms' };
}

/** A thousand specs, all compiled, after the strength of one bottle has changed: those that use it are run again. */
function thousand({ parse, compile, tables }) {
  const folder = join(root, 'demo');
  const texts = readdirSync(folder).filter((name) => name.endsWith('.drink')).sort().map((name) => readFileSync(join(folder, name), 'utf8'));
  const programs = Array.from({ length: 1000 }, (_, i) => texts[i % texts.length]).map((text) => compile(parse(text), tables, null).program);
  const kept = programs.map((program) => ({ again: program.again(Int32Array.from(program.inputs.keys()), Int32Array.from(program.probes.flatMap((p, i) => (p.of === 'drink' ? [i] : []))), 1), out: new Float64Array(program.probes.length), at: program.inputs.findIndex((i) => i.key === 'bottle/white rum/strength') }));
  const using = kept.filter((k) => k.at >= 0);
  const got = median(5, 1, (round) => { for (const k of using) { k.again.xs[0][k.at] = 40 + round / 10; k.again.run(1, k.out, 0); } });
  return { what: `a thousand specs after one bottle changed (${using.length} use it)`, got: got * 1e3, goal: 100, unit: 'ms' };
}
