/** A box in px of the layout. */
export interface Box { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

export function overlap(a: Box, b: Box, gap = 0): boolean {
  return a.x < b.x + b.width + gap && b.x < a.x + a.width + gap && a.y < b.y + b.height + gap && b.y < a.y + a.height + gap;
}
