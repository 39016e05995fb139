/** The caret goes to the end of a line of the sheet, from 1, and the line into view. */
export function toLine(line: number): void {
  const editor = document.querySelector<HTMLTextAreaElement>('[data-editor]');
  if (editor === null) return;
  const end = editor.value.split('\n').slice(0, line).join('\n').length;
  editor.focus({ preventScroll: true });
  editor.setSelectionRange(end, end);
  document.querySelectorAll('.mirror > .row')[line - 1]?.scrollIntoView({ block: 'center' });
}
