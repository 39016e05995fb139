import type { Marks } from '@washline/drawing';

/** Fine lines behind the marks stand so far apart at least, px. */
const RULED = 22;

/** On paper: black, whatever the sheet on the screen. */
const PAPER = { sheet: '#fff', rule: '#ccc', ink: '#000', signal: '#000' };

/** Paints one mark a hand on a canvas of the drawing's size: dots that hold in ink, dashes that fail in signal, on the paper of the sheet. */
export function paintMarks(canvas: HTMLCanvasElement, marks: Marks | null, size: { readonly width: number; readonly height: number }, ratio: number, paper = false): void {
  canvas.width = Math.round(size.width * ratio);
  canvas.height = Math.round(size.height * ratio);
  const pen = canvas.getContext('2d');
  if (pen === null || marks === null) return;
  const style = getComputedStyle(canvas), tone = (name: keyof typeof PAPER): string => (paper ? PAPER[name] : style.getPropertyValue(`--${name}`).trim());
  pen.setTransform(ratio, 0, 0, ratio, 0, 0);
  pen.fillStyle = tone('sheet');
  pen.fillRect(marks.x, marks.y, marks.width, marks.height);
  pen.fillStyle = tone('rule');
  for (let y = marks.y + RULED; y < marks.y + marks.height; y += RULED) pen.fillRect(marks.x, Math.round(y), marks.width, 1);
  // whole pixels of the screen: a mark is as dark as its ink
  const whole = (px: number): number => Math.max(1, Math.round(px * ratio)) / ratio, at = (px: number): number => Math.round(px * ratio) / ratio;
  const { from, row } = marks, pitch = marks.pitch * ratio < 1 ? marks.pitch : Math.floor(marks.pitch * ratio) / ratio, dot = whole(Math.min(1.7, pitch * 0.6, row * 0.8)), long = Math.max(whole(Math.min(3.2, pitch * 0.8)), dot + 1 / ratio), thick = whole(Math.min(1.4, row * 0.6));
  pen.fillStyle = tone('ink');
  for (const { y, holds } of marks.rows) for (let k = 0; k < holds; k += 1) pen.fillRect(at(from + (k + 0.5) * pitch - dot / 2), at(y - dot / 2), dot, dot);
  pen.fillStyle = tone('signal');
  for (const { y, holds, fails } of marks.rows) for (let k = holds; k < holds + fails; k += 1) pen.fillRect(at(from + (k + 0.5) * pitch - long / 2), at(y - thick / 2), long, thick);
}
