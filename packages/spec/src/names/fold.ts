const FOLDED = /^[a-z0-9]*$/;
const ASCII = /^[\x20-\x7e]*$/;
const DROPPED = /[\s\-‐‑–—.,'’‘`´]/g;
const MARKS = /\p{M}/gu;
const LETTERS: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', ı: 'i', đ: 'd', '₂': '2', '₄': '4', '⁄': '/', º: '°' };

/**
 * The form in which words are compared: lower case, accents off (ß = ss), hyphens, blanks, points, commas and apostrophes out.
 *
 * @param text any words
 * @returns the folded form; the empty string when nothing but marks was given
 * @source none - definition
 */
export function fold(text: string): string {
  if (FOLDED.test(text)) return text;
  const lower = text.toLowerCase();
  if (ASCII.test(lower)) return lower.replace(DROPPED, '');
  return lower.normalize('NFD').replace(MARKS, '').replace(/[ßæœøłıđ₂₄⁄º]/g, (letter) => LETTERS[letter] ?? letter).replace(DROPPED, '').normalize('NFC');
}

/** The same, with ä ö ü as they are typed without the marks: ae oe ue. */
export function foldTyped(text: string): string {
  if (ASCII.test(text)) return fold(text);
  return fold(text.normalize('NFC').replace(/[äÄ]/g, 'ae').replace(/[öÖ]/g, 'oe').replace(/[üÜ]/g, 'ue'));
}
