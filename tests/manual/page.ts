import { readFileSync } from 'node:fs';

/** A fenced block of a page: what kind, what stands behind the kind, the text, and where the text stands in the page. */
export interface Block { readonly kind: string; readonly rest: string; readonly body: string; readonly from: number; readonly to: number; readonly line: number }

/** One example: what is run, and the block that shows what it printed. */
export interface Example { readonly line: number; readonly files: ReadonlyMap<string, string>; readonly run: readonly string[]; readonly stdin: string; readonly shown: Block }

/** The fenced blocks of a page in order. */
export function blocksOf(page: string): Block[] {
  return [...page.matchAll(/^```([a-z]+)([^\n]*)\n([\s\S]*?)^```$/gm)].map((match) => {
    const [whole, kind = '', rest = '', body = ''] = match;
    const from = match.index + whole.indexOf('\n') + 1;
    return { kind, rest: rest.trim(), body, from, to: from + body.length, line: page.slice(0, match.index).split('\n').length };
  });
}

/**
 * The examples of a page. A `drink` block is a file (of the name behind the word, else `a.drink`); an `output` block shows what came of the
 * block before it; a `diff` changes a file of that name, line by line. A `drink` is read, `lines` are put through `washline lines`, the last command of `sh` is run.
 */
export function examplesOf(file: string): Example[] {
  const files = new Map<string, string>();
  const examples: Example[] = [];
  let before: Block | undefined;
  for (const block of blocksOf(readFileSync(file, 'utf8'))) {
    if (block.kind === 'drink') files.set(block.rest || 'a.drink', block.body);
    if (block.kind === 'diff') files.set(block.rest, changed(files.get(block.rest), block));
    if (block.kind === 'output' && before) examples.push({ line: block.line, files: new Map(files), shown: block, ...runOf(before) });
    if (block.kind !== 'output') before = block;
  }
  return examples;
}

function changed(text: string | undefined, block: Block): string {
  const lines = block.body.trimEnd().split('\n');
  const part = (mark: string): string => lines.filter((line) => line.startsWith(mark)).map((line) => `${line.slice(1)}\n`).join('');
  if (text?.includes(part('-')) !== true) throw new Error(`line ${block.line}: what is to be changed is not in ${block.rest}`);
  return text.replace(part('-'), () => part('+'));
}

function runOf(block: Block): { run: readonly string[]; stdin: string } {
  if (block.kind === 'drink' || block.kind === 'diff') return { run: ['read', block.rest || 'a.drink'], stdin: '' };
  if (block.kind === 'lines') return { run: ['lines', '-'], stdin: block.body };
  const command = block.body.replace(/ \\\n */g, ' ').trim().split('\n').at(-1) ?? '';
  const words = [...command.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(([, double, single, bare]) => double ?? single ?? bare ?? '');
  const at = words.indexOf('washline');
  if (at < 0) throw new Error(`line ${block.line}: no command of washline`);
  return { run: words.slice(at + 1), stdin: '' };
}

/** What an `output` block asks for: the parts of a reading, a member of the JSON, the exit status. */
export function askedOf(rest: string): { readonly parts: readonly string[]; readonly member: readonly string[] | null; readonly exit: number } {
  const exit = Number(/\bexit (\d)/.exec(rest)?.[1] ?? 0);
  const named = rest.replace(/,?\s*exit \d/, '').trim();
  const member = /^json(?: (\S+))?$/.exec(named);
  return { parts: member || named === '' ? [] : named.split(/\s*,\s*/), member: member ? (member[1] ?? '').split('.').filter((part) => part !== '') : null, exit };
}

const HEADINGS: Readonly<Record<string, readonly string[]>> = { stages: ['Stages', 'Stufen'], later: ['In the glass, later', 'Im Glas, später'], preps: ['Preps', 'Vorbereitungen'], findings: ['Findings', 'Befunde'], accepted: ['Knowingly accepted', 'Wissentlich hingenommen'], taken: ['From the bench and the shelf'], assumed: ['Not written, so assumed', 'Nicht geschrieben, also angenommen'], why: ['Why', 'Warum'], people: ['For whom', 'Für wen'] };

/** The parts of a reading as printed: the drawing, the figures, then what stands under each heading. */
export function partsOf(printed: string): ReadonlyMap<string, string> {
  const parts = new Map<string, string>();
  let name = 'glass';
  let lines: string[] = [];
  const end = (): void => { if (lines.some((line) => line.trim() !== '')) parts.set(name, lines.join('\n').replace(/^\n+|\s+$/g, '')); };
  const begin = (next: string): void => { end(); name = next; lines = []; };
  for (const line of printed.split('\n')) {
    const heading = Object.entries(HEADINGS).find(([, texts]) => texts.includes(line))?.[0];
    if (heading !== undefined) begin(heading);
    else if (name === 'glass' && /^(not known:|[\p{L} ]+ {2,}-?\d)/u.test(line)) begin('figures');
    lines.push(line);
  }
  end();
  return parts;
}

/** What the block ought to show, from what was printed. */
export function cut(rest: string, stdout: string, stderr: string): string {
  const { parts, member } = askedOf(rest);
  if (member) {
    let value: unknown = JSON.parse(stdout);
    for (const part of member) value = (value as Record<string, unknown> | undefined)?.[part];
    return `${JSON.stringify(value, null, 2)}\n`;
  }
  if (parts.length === 0) return `${(stdout + stderr).replace(/^\n+|\s+$/g, '')}\n`;
  const all = partsOf(stdout);
  return `${parts.map((part) => (part === 'problems' ? stderr.trimEnd() : all.get(part) ?? `(no part ${part})`)).join('\n\n')}\n`;
}
