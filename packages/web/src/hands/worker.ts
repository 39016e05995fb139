import { handsTextInSteps, loadLanguage } from '@washline/spec';
import { tables } from '@washline/tables';
import type { Asked, Told } from './run.ts';

/** Makers between two looks at whether a newer text has come. */
const A_STEP = 200;

let newest = 0;
const scope = self as unknown as { onmessage: ((event: MessageEvent<Asked>) => void) | null; postMessage(told: Told, transfer: Transferable[]): void };
// A message to itself lets those of the page through first; a timer would wait longer each time.
const turns = new MessageChannel();
let next: (() => void) | null = null;
turns.port1.onmessage = () => { next?.(); };
const aTurn = (): Promise<void> => new Promise((done) => { next = done; turns.port2.postMessage(null); });

async function run({ id, text, language, bench, makers, seed, profile }: Asked): Promise<void> {
  await loadLanguage(language);
  const from = performance.now(), steps = handsTextInSteps(text, { tables, makers, seed, profile, language, ...(bench === undefined ? {} : { bench }) }, A_STEP);
  while (id === newest) {
    const step = steps.next();
    if (!step.done) { await aTurn(); continue; }
    const { hands, problems, levels, holds, moves } = step.value;
    scope.postMessage({ id, hands, problems: problems.length, levels, holds, moves, ms: performance.now() - from }, [levels.buffer, holds.buffer]);
    return;
  }
  // a newer text has come: nobody waits for this one
}

scope.onmessage = ({ data }) => { newest = data.id; void run(data); };
