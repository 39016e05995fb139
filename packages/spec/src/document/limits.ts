/** What a text may hold; checked before anything is built. */
export const LIMITS = { bytes: 256 * 1024, sections: 64, lines: 400, lineUnits: 500, prepDepth: 8, litres: 1000 } as const;

/** UTF-8 length without making the bytes. */
export function utf8Length(text: string): number {
  let bytes = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    bytes += c < 0x80 ? 1 : c < 0x800 ? 2 : 3;
    if (c >= 0xd800 && c <= 0xdbff && (text.charCodeAt(i + 1) & 0xfc00) === 0xdc00) { bytes++; i++; }
  }
  return bytes;
}
