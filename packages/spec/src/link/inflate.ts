/** Why packed bytes gave nothing: they end too early, are no such stream, hold more than allowed, or go on after its end. */
export type InflateFault = 'cut' | 'foreign' | 'long' | 'after';

/** What the symbols 257 to 285 of a length, and 0 to 29 of a distance, begin at and how many more bits they take (RFC 1951, 3.2.5). */
const LENGTH = [3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 15, 17, 19, 23, 27, 31, 35, 43, 51, 59, 67, 83, 99, 115, 131, 163, 195, 227, 258];
const LENGTH_BITS = [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 4, 4, 5, 5, 5, 5, 0];
const BACK = [1, 2, 3, 4, 5, 7, 9, 13, 17, 25, 33, 49, 65, 97, 129, 193, 257, 385, 513, 769, 1025, 1537, 2049, 3073, 4097, 6145, 8193, 12289, 16385, 24577];
const BACK_BITS = [0, 0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13];
const ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15];
const MAX_BITS = 15;

interface Code { readonly counts: Uint16Array; readonly symbols: Uint16Array }
class Refused extends Error { constructor(readonly fault: InflateFault) { super(fault); } }

/**
 * The bytes of a raw deflate stream, to its very last byte: the same answer in every browser and in Node.
 *
 * @param bytes the whole stream and nothing else
 * @param most bytes that may come out; one more is refused before it is made
 * @returns the bytes, or why there are none
 * @source none - definition (RFC 1951)
 */
export function inflate(bytes: Uint8Array, most: number): Uint8Array | InflateFault {
  try { return inflated(bytes, most); } catch (error) { if (error instanceof Refused) return error.fault; throw error; }
}

function inflated(bytes: Uint8Array, most: number): Uint8Array {
  let at = 0, held = 0, count = 0, out = new Uint8Array(Math.min(most, 4096)), made = 0;
  const bits = (need: number): number => {
    while (count < need) {
      if (at >= bytes.length) throw new Refused('cut');
      held |= bytes[at++]! << count;
      count += 8;
    }
    const value = held & ((1 << need) - 1);
    held >>>= need;
    count -= need;
    return value;
  };
  const put = (byte: number): void => {
    if (made >= most) throw new Refused('long');
    if (made === out.length) { const more = new Uint8Array(Math.min(most, 2 * made)); more.set(out); out = more; }
    out[made++] = byte;
  };
  const symbol = ({ counts, symbols }: Code): number => {
    let code = 0, first = 0, index = 0;
    for (let length = 1; length <= MAX_BITS; length++) {
      code |= bits(1);
      const here = counts[length]!;
      if (code - here < first) return symbols[index + code - first]!;
      index += here;
      first = (first + here) << 1;
      code <<= 1;
    }
    throw new Refused('foreign');
  };
  const blocks = (lengths: Code, backs: Code): void => {
    for (;;) {
      const read = symbol(lengths);
      if (read === 256) return;
      if (read < 256) { put(read); continue; }
      const long = LENGTH[read - 257], far = long === undefined ? undefined : long + bits(LENGTH_BITS[read - 257]!);
      const back = far === undefined ? undefined : symbol(backs), start = back === undefined ? undefined : BACK[back];
      if (far === undefined || back === undefined || start === undefined) throw new Refused('foreign');
      const distance = start + bits(BACK_BITS[back]!);
      if (distance > made) throw new Refused('foreign');
      for (let i = 0; i < far; i++) put(out[made - distance]!);
    }
  };
  for (let last = false; !last;) {
    last = bits(1) === 1;
    const kind = bits(2);
    if (kind === 0) {
      held = 0; count = 0;
      if (at + 4 > bytes.length) throw new Refused('cut');
      const length = bytes[at]! | (bytes[at + 1]! << 8), check = bytes[at + 2]! | (bytes[at + 3]! << 8);
      if (length !== (~check & 0xffff)) throw new Refused('foreign');
      at += 4;
      if (at + length > bytes.length) throw new Refused('cut');
      for (const end = at + length; at < end; at++) put(bytes[at]!);
    } else if (kind === 1) { const { lengths, backs } = fixed(); blocks(lengths, backs); }
    else if (kind === 2) { const own = tables(bits, symbol); blocks(own.lengths, own.backs); }
    else throw new Refused('foreign');
  }
  if (at < bytes.length) throw new Refused('after');
  return out.slice(0, made);
}

/** The codes a block brings with it. */
function tables(bits: (need: number) => number, symbol: (code: Code) => number): { readonly lengths: Code; readonly backs: Code } {
  const literals = bits(5) + 257, backs = bits(5) + 1, told = bits(4) + 4, sizes = new Array<number>(19).fill(0);
  if (literals > 286 || backs > 30) throw new Refused('foreign');
  for (let i = 0; i < told; i++) sizes[ORDER[i]!] = bits(3);
  const code = codeOf(sizes), all: number[] = [];
  while (all.length < literals + backs) {
    const read = symbol(code);
    if (read < 16) { all.push(read); continue; }
    const before = all.at(-1);
    if (read === 16 && before === undefined) throw new Refused('foreign');
    const [value, times] = read === 16 ? [before!, 3 + bits(2)] : read === 17 ? [0, 3 + bits(3)] : [0, 11 + bits(7)];
    if (all.length + times > literals + backs) throw new Refused('foreign');
    for (let i = 0; i < times; i++) all.push(value);
  }
  if (all[256] === 0) throw new Refused('foreign');
  return { lengths: codeOf(all.slice(0, literals)), backs: codeOf(all.slice(literals)) };
}

/** The code that lengths of its symbols tell; one with more symbols than there is room for is none. */
function codeOf(sizes: readonly number[]): Code {
  const counts = new Uint16Array(MAX_BITS + 1), starts = new Uint16Array(MAX_BITS + 2), symbols = new Uint16Array(sizes.length);
  for (const size of sizes) counts[size]!++;
  let left = 1;
  for (let length = 1; length <= MAX_BITS; length++) { left = 2 * left - counts[length]!; if (left < 0) throw new Refused('foreign'); }
  for (let length = 1; length <= MAX_BITS; length++) starts[length + 1] = starts[length]! + counts[length]!;
  sizes.forEach((size, i) => { if (size !== 0) symbols[starts[size]!++] = i; });
  return { counts, symbols };
}

/** The codes of a block that brings none. */
const fixed = (): { readonly lengths: Code; readonly backs: Code } => ({
  lengths: codeOf(Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8))),
  backs: codeOf(new Array<number>(30).fill(5)),
});
