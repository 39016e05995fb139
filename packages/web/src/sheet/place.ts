/** Where a letter of a row of the mirror stands on the screen: column counts from 1; null where the row is not laid out. */
export function letterAt(row: HTMLElement, column: number): DOMRect | null {
  const range = document.createRange(), walk = document.createTreeWalker(row, NodeFilter.SHOW_TEXT);
  let left = column - 1;
  for (let text = walk.nextNode(); text !== null; text = walk.nextNode()) {
    const length = text.textContent?.length ?? 0;
    if (left <= length) { range.setStart(text, left); range.collapse(true); break; }
    left -= length;
  }
  const at = range.getBoundingClientRect();
  return at.height > 0 ? at : null;
}
