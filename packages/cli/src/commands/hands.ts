import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { HandsTextOptions, SaidHands } from '@washline/spec';
import { readInput } from '../input.ts';
import { language } from '../language.ts';
import { printJson, printProblems, refuse } from '../problems.ts';
import { say } from '../sentences.ts';
import { EXIT, type World } from '../world.ts';
import { optionsOf } from './read.ts';

export interface HandsFlags {
  readonly json: boolean; readonly color: boolean; readonly variant?: string; readonly bench?: string;
  readonly makers?: string; readonly seed?: string; readonly profile?: string; readonly threads?: string;
}

const MAKERS = 10_000, MOST = 1_000_000, SEED = 1, PROFILE = 'home';
/** From so many makers on the work is shared out when nothing else is asked: below, a thread takes longer to start than it saves. */
const SHARED_FROM = 40_000;
const MOST_THREADS = 4;

/**
 * `washline hands SPEC`: what many kitchens make of a spec. Ends with 2 where something was asked for wrongly or the text has a problem (what could be
 * read is drawn all the same), else with 0: how often a drink fails is the answer, not a failure of the command.
 */
export async function hands(world: World, flags: HandsFlags, file: string): Promise<number> {
  const { KITCHENS } = await import('@washline/engine');
  const wrong = (code: string, words: Readonly<Record<string, string | number>>) => refuse(world, flags.json, { code: `hands-${code}`, message: say(`hands.${code}`, words) });
  const makers = whole(flags.makers, MAKERS, 1, MOST), seed = whole(flags.seed, SEED, 0, 2 ** 31 - 1);
  if (makers === null) return wrong('makers', { given: flags.makers ?? '', most: MOST });
  if (seed === null) return wrong('seed', { given: flags.seed ?? '' });
  const profile = flags.profile ?? PROFILE;
  if (!KITCHENS.includes(profile)) return wrong('profile', { given: profile, known: KITCHENS.join(', ') });
  const threads = whole(flags.threads, makers >= SHARED_FROM ? Math.min(MOST_THREADS, availableParallelism()) : 1, 1, 64);
  if (threads === null) return wrong('threads', { given: flags.threads ?? '' });

  const input = await readInput(world, file);
  if ('problem' in input) return refuse(world, flags.json, input.problem);
  const bench = await optionsOf(world, flags);
  if ('problem' in bench) return refuse(world, flags.json, bench.problem);
  const [{ handsText, loadLanguage }, { tables }] = await Promise.all([import('@washline/spec'), import('@washline/tables')]);
  await loadLanguage(language());
  const options: HandsTextOptions = { tables, makers, seed, profile, file, language: language(), ...bench };
  const from = performance.now();
  const record = threads > 1 ? await sharedOut(input.text, { ...bench, makers, seed, profile }, threads) : undefined;
  const answer = handsText(input.text, options, record);
  const ms = performance.now() - from;
  if (flags.json) printJson(world, answer.problems.length > 0 ? { problems: answer.problems, hands: contract(answer.hands, ms) } : contract(answer.hands, ms));
  else {
    const { printHands } = await import('../print/hands.ts');
    printHands(world, answer, flags.color);
    printProblems(world, answer.problems);
  }
  return answer.problems.length > 0 ? EXIT.asked : EXIT.done;
}

/** The fields of the contract first, then what stands beside them. */
function contract(found: SaidHands, ms: number): unknown {
  const { makers, seed, figures, findings, matters, fix, fails, profile } = found;
  return { makers, seed, ms, figures, findings, matters, fix, profile, fails };
}

/** A whole number within its ends; null for anything else. */
function whole(given: string | undefined, otherwise: number, least: number, most: number): number | null {
  if (given === undefined) return otherwise;
  const n = Number(given);
  return /^\d+$/.test(given) && n >= least && n <= most ? n : null;
}

/** The rows of all makers, run by several threads; each row is the same whoever runs it. */
async function sharedOut(text: string, options: Readonly<Record<string, unknown>>, threads: number): Promise<Float64Array> {
  const makers = options['makers'] as number;
  const parts = await Promise.all(Array.from({ length: threads }, (_, i) => new Promise<Float64Array>((done, failed) => {
    const worker = new Worker(new URL('./hands-worker.js', import.meta.url), {
      workerData: { text, options, from: Math.floor((makers * i) / threads), to: Math.floor((makers * (i + 1)) / threads) },
    });
    worker.once('message', (part: Float64Array) => { done(part); });
    worker.once('error', failed);
  })));
  const all = new Float64Array(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) { all.set(part, at); at += part.length; }
  return all;
}
