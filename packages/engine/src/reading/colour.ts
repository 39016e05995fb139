/**
 * The colour of a liquid through `cm` of it, from absorbances (natural, of linear RGB, through 10 mm). Returns #rrggbb.
 * @source none - Beer-Lambert by channel
 */
export function colourOf(r: number, g: number, b: number, cm: number): string {
  const channel = (a: number) => {
    const linear = Math.exp(-Math.max(0, Number.isFinite(a) ? a : 0) * cm);
    const c = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
    return Math.round(Math.min(1, Math.max(0, c)) * 255).toString(16).padStart(2, '0');
  };
  return `#${channel(r)}${channel(g)}${channel(b)}`;
}
