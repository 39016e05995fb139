/** Columns of a terminal a reading is made for. */
export const WIDTH = 80;

/** Columns a text takes: combining marks none, wide characters two. */
export function columns(text: string): number {
  let count = 0;
  for (const character of text) {
    if (/\p{Mark}/u.test(character)) continue;
    count += /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}]/u.test(character) ? 2 : 1;
  }
  return count;
}

/** Filled with blanks to a width; longer text is cut with an ellipsis. */
export function fit(text: string, width: number): string {
  if (columns(text) <= width) return text + ' '.repeat(width - columns(text));
  let cut = '';
  for (const character of text) {
    if (columns(cut + character) > width - 1) break;
    cut += character;
  }
  return `${cut}…${' '.repeat(Math.max(0, width - 1 - columns(cut)))}`;
}

/** Broken at blanks into lines of at most `width`, the first after `first`, the others after `rest`. */
export function wrap(text: string, first: string, rest: string, width = WIDTH): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (let word of text.split(/ +/).filter((part) => part !== '')) {
    if (!empty && columns(line) + 1 + columns(word) > width) { lines.push(line); line = rest; empty = true; }
    while (columns(line) + (empty ? 0 : 1) + columns(word) > width && columns(word) > width - columns(rest)) {
      const room = width - columns(line);
      const characters = Array.from(word);
      lines.push(line + characters.slice(0, room).join(''));
      word = characters.slice(room).join('');
      line = rest;
      empty = true;
    }
    line += (empty ? '' : ' ') + word;
    empty = false;
  }
  if (!empty || lines.length === 0) lines.push(line);
  return lines;
}
