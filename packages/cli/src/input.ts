import { open } from 'node:fs/promises';
import { isUtf8 } from 'node:buffer';
import type { Problem } from './problems.ts';
import { say } from './sentences.ts';
import type { World } from './world.ts';

/** The most a spec may hold, in bytes. */
export const SPEC_LIMIT = 256 * 1024;
export type Input = { readonly text: string; readonly file: string } | { readonly problem: Problem };

/** Reads a file, or standard input for `-`, as UTF-8 text; a sentence with the place where it cannot be. */
export async function readInput(world: World, file: string, limit = SPEC_LIMIT): Promise<Input> {
  const wrong = (code: string, words: Readonly<Record<string, string | number>> = {}, line?: number, column?: number): Input => ({
    problem: { code, message: say(`input.${code}`, { file, ...words }), where: { file, ...(line === undefined ? {} : { line }), ...(column === undefined ? {} : { column }) } },
  });
  if (file.includes('\0')) return wrong('missing');
  let bytes: Buffer | 'too long';
  try {
    bytes = file === '-' ? await collect(world.stdin, limit) : await readFileUpTo(file, limit);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EISDIR') return wrong('directory');
    if (code === 'ENOENT' || code === 'ENOTDIR' || code === 'ENAMETOOLONG') return wrong('missing');
    if (code === 'EACCES' || code === 'EPERM') return wrong('forbidden');
    return wrong('unreadable', { code: code ?? '' });
  }
  if (bytes === 'too long') return wrong('too-long', { limit: Math.round(limit / 1024) });
  const zero = bytes.indexOf(0);
  if (zero >= 0) return wrong('binary', {}, ...placeIn(bytes, zero));
  if (!isUtf8(bytes)) return wrong('not-utf8', {}, ...placeIn(bytes, firstBadByte(bytes)));
  return { text: bytes.toString('utf8'), file };
}

async function readFileUpTo(file: string, limit: number): Promise<Buffer | 'too long'> {
  const handle = await open(file, 'r');
  try {
    const state = await handle.stat();
    if (state.isDirectory()) throw Object.assign(new Error('directory'), { code: 'EISDIR' });
    if (state.isFile() && state.size > limit) return 'too long';
    return await collect(handle.createReadStream({ autoClose: false }), limit);
  } finally {
    await handle.close();
  }
}

async function collect(stream: AsyncIterable<Uint8Array>, limit: number): Promise<Buffer | 'too long'> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of stream) {
    length += part.byteLength;
    if (length > limit) return 'too long';
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** How many bytes from the start are good UTF-8; a character cut off at the end of what is looked at does not count against it. */
function firstBadByte(bytes: Buffer): number {
  const good = (length: number): boolean => {
    try { new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, length), { stream: true }); return true; } catch { return false; }
  };
  let low = 0;
  let high = bytes.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (good(middle)) low = middle; else high = middle - 1;
  }
  return low;
}

/** Line and column (UTF-16 code units) of a byte, both from 1. */
function placeIn(bytes: Buffer, at: number): [number, number] {
  const before = bytes.subarray(0, at).toString('utf8').replace(/\ufffd+$/, '');
  const lines = before.split('\n');
  return [lines.length, (lines.at(-1) ?? '').length + 1];
}
