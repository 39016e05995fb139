import { LIMITS, utf8Length } from '../document/limits.ts';
import { clean } from '../say/fill.ts';
import { decode } from '../text/decode.ts';
import { inflate } from './inflate.ts';

/** What stands before the drink in the fragment of an address. */
export const LINK = '#d=';
/** Characters after `#d=`: far more than any drink needs, little enough for every browser and most letters. */
export const LINK_MOST = 32_000;
/** Why a link gives no drink: cut short, made elsewhere, too long, with something after its end, or no text. */
export type LinkFault = 'cut' | 'foreign' | 'long' | 'after' | 'text';

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES = new Map(Array.from(ALPHABET, (letter, i) => [letter, i]));

/**
 * The fragment that carries a text: raw deflate in base64url.
 *
 * @param text a spec
 * @returns `#d=` and what it carries; null for a text too long for a link
 * @source none - definition (RFC 1951, RFC 4648 section 5)
 */
export async function linkOf(text: string): Promise<string | null> {
  if (utf8Length(text) > LIMITS.bytes) return null;
  const packer = new CompressionStream('deflate-raw'), writer = packer.writable.getWriter();
  void writer.write(new TextEncoder().encode(text));
  void writer.close();
  const packed = base64url(new Uint8Array(await new Response(packer.readable).arrayBuffer()));
  return packed.length > LINK_MOST ? null : LINK + packed;
}

/**
 * The text a fragment carries, without control and bidirectional characters. Its length is looked at before anything is unpacked.
 *
 * @param fragment from its `#` on
 * @returns the text; why there is none; null where the fragment is no link at all
 */
export function textOfLink(fragment: string): { readonly text: string } | { readonly fault: LinkFault } | null {
  if (!fragment.startsWith(LINK)) return null;
  if (fragment.length - LINK.length > LINK_MOST) return { fault: 'long' };
  const packed = bytesOf(fragment.slice(LINK.length));
  if (typeof packed === 'string') return { fault: packed };
  const bytes = inflate(packed, LIMITS.bytes);
  if (typeof bytes === 'string') return { fault: bytes };
  const told = decode(bytes);
  return 'text' in told ? { text: clean(told.text.replace(/\r\n?/g, '\n').replace(/^\ufeff/, '')) } : { fault: 'text' };
}

function base64url(bytes: Uint8Array): string {
  let out = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const [a, b, c] = [bytes[i]!, bytes[i + 1], bytes[i + 2]], all = (a << 16) | ((b ?? 0) << 8) | (c ?? 0);
    out += ALPHABET[all >> 18]! + ALPHABET[(all >> 12) & 63]! + (b === undefined ? '' : ALPHABET[(all >> 6) & 63]!) + (c === undefined ? '' : ALPHABET[all & 63]!);
  }
  return out;
}

/** One letter over, or bits set after the last byte, are no whole bytes: something is missing. */
function bytesOf(letters: string): Uint8Array | 'cut' | 'foreign' {
  const out = new Uint8Array(Math.floor((letters.length * 6) / 8));
  let held = 0, count = 0, made = 0;
  for (const letter of letters) {
    const value = VALUES.get(letter);
    if (value === undefined) return 'foreign';
    held = ((held << 6) | value) & 0xffff;
    count += 6;
    if (count >= 8) { count -= 8; out[made++] = (held >> count) & 0xff; }
  }
  return letters.length === 0 || count >= 6 || (held & ((1 << count) - 1)) !== 0 ? 'cut' : out;
}

declare const TextEncoder: { new (): { encode(text: string): Uint8Array } };
declare const CompressionStream: { new (format: 'deflate-raw'): { readonly readable: unknown; readonly writable: { getWriter(): { write(bytes: Uint8Array): Promise<void>; close(): Promise<void> } } } };
declare const Response: { new (body: unknown): { arrayBuffer(): Promise<ArrayBuffer> } };
