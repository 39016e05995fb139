import type { Problem } from '@washline/engine';
import { problem } from '../problems/codes.ts';

/**
 * The text of a file's bytes: strict UTF-8, the byte order mark kept as its first code unit.
 *
 * @param bytes a file's whole content
 * @returns the text, or the one problem when the bytes are no UTF-8 (such a file is never written)
 * @source none - definition
 */
export function decode(bytes: Uint8Array): { readonly text: string } | { readonly problem: Problem } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return { problem: problem('bytes-not-utf8', null, 1, 1, { from: 0, to: 0 }, { byte: firstBad(bytes) }) };
  }
}

/** The first byte (from 0) at which the bytes stop being UTF-8; halving keeps it quick on any size. */
function firstBad(bytes: Uint8Array): number {
  const valid = (to: number): boolean => {
    const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
    try { decoder.decode(bytes.subarray(0, to), { stream: true }); return true; } catch { return false; }
  };
  let low = 0, high = bytes.length;
  if (valid(high)) return Math.max(0, bytes.length - 1);
  while (low < high - 1) { const middle = (low + high) >> 1; if (valid(middle)) low = middle; else high = middle; }
  return low;
}
declare const TextDecoder: { new (label: string, options: { fatal: boolean; ignoreBOM: boolean }): { decode(bytes: Uint8Array, options?: { stream: boolean }): string } };
