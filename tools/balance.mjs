// Balances the larder: for every ingredient with a pH the net charge of its strong ions that gives its own pH back, beside potassium and sodium it starts from.
// Writes data/larder/balance.tsv and prints what differs; a test holds the file to the engine.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './house/root.mjs';

const { tables } = await import(join(root, 'packages', 'tables', 'dist', 'index.js'));
const { balanceOf } = await import(join(root, 'packages', 'engine', 'dist', 'index.js'));

const mmol = (mol) => (mol * 10_000).toFixed(2);
const lines = ['id\tkind\tph_low\tph_high\tacids_mmol_kg\tstart_mmol_kg\tcharge_mmol_kg\tdifference_mmol_kg\tph_from_start'];
const counts = {};
let far = 0;
for (const id of tables.ids) {
  const b = balanceOf(tables.ingredient(id));
  counts[b.kind] = (counts[b.kind] ?? 0) + 1;
  if (b.kind === 'none') continue;
  const ph = (value) => (Number.isNaN(value) ? '' : String(value));
  lines.push([id, b.kind, ph(b.low), ph(b.high), mmol(b.acids_mol), mmol(b.start_mol), mmol(b.charge_mol), mmol(b.charge_mol - b.start_mol), Number.isNaN(b.naive) ? '' : b.naive.toFixed(2)].join('\t'));
  if (b.kind === 'own' && Math.abs(b.naive - (b.low + b.high) / 2) > 0.3) far++;
}
const path = join(root, 'data', 'larder', 'balance.tsv');
const text = `${lines.join('\n')}\n`;
let before = '';
try { before = readFileSync(path, 'utf8'); } catch { /* there is none yet */ }
if (before !== text) writeFileSync(path, text);
for (const line of lines) process.stdout.write(`${line}\n`);
process.stdout.write(`${Object.entries(counts).map(([kind, n]) => `${n} ${kind}`).join(', ')}. From potassium and sodium alone ${far} of ${counts.own} miss their own pH by more than 0.3.${before === text ? '' : ' data/larder/balance.tsv is written anew.'}\n`);
