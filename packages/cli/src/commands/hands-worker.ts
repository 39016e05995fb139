// One thread's share of the makers: their rows, sent back whole.
import { parentPort, workerData } from 'node:worker_threads';
import { makersOfText } from '@washline/spec';
import { tables } from '@washline/tables';

const { text, options, from, to } = workerData as { text: string; options: { variant?: string; bench?: string; makers: number; seed: number; profile: string }; from: number; to: number };
const rows = makersOfText(text, { tables, ...options }, from, to);
parentPort?.postMessage(rows, [rows.buffer as ArrayBuffer]);
