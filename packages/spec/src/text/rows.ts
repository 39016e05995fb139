/** One physical line: its text without the end, where it starts, and how it ends. */
export interface Row { readonly text: string; readonly from: number; readonly eol: '' | '\n' | '\r\n' }

/** Cuts a text into lines; only LF and CRLF end one. The byte order mark, where there is one, is no part of the first line. */
export function rows(text: string): Row[] {
  const out: Row[] = [];
  let from = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (;;) {
    const at = text.indexOf('\n', from);
    if (at < 0) { out.push({ text: text.slice(from), from, eol: '' }); return out; }
    const crlf = at > from && text.charCodeAt(at - 1) === 13;
    out.push({ text: text.slice(from, crlf ? at - 1 : at), from, eol: crlf ? '\r\n' : '\n' });
    from = at + 1;
  }
}

/** The first character that no text may hold (controls but tab, unpaired surrogates), or -1. */
export function badCharacter(text: string): number {
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c < 32 ? c !== 9 : c < 0x7f ? false : c <= 0x9f || c === 0x2028 || c === 0x2029 || (i > 0 && c === 0xfeff)) return i;
    if (c >= 0xd800 && c <= 0xdfff) {
      const next = text.charCodeAt(i + 1);
      if (c > 0xdbff || !(next >= 0xdc00 && next <= 0xdfff)) return i;
      i++;
    }
  }
  return -1;
}
