/**
 * The tint of a liquid on the drawing, from the colour it shows: hue kept, lightness and chroma brought into the window of its place, so that
 * ink stays legible and the glass is what is left when one squints. Clear liquids are let be pale.
 * OKLab by its published matrices (B. Ottosson, "A perceptual color space for image processing", 2020).
 */
export type Scheme = 'light' | 'dark';
export interface Tinted { readonly at: 'glass' | 'upstream'; readonly scheme: Scheme; readonly foam?: boolean; readonly turbidity?: number; readonly strength?: number | null }
interface Lch { readonly l: number; readonly c: number; readonly h: number }

export function tint(colour: string, how: Tinted): `#${string}` {
  const key = `${colour} ${how.at} ${how.scheme} ${how.foam === true ? 1 : 0} ${how.turbidity ?? 0} ${how.strength ?? ''}`;
  let made = mixed.get(key);
  if (made === undefined) {
    made = tinted(colour, how);
    if (mixed.size > 500) mixed.clear();
    mixed.set(key, made);
  }
  return made;
}
const mixed = new Map<string, `#${string}`>();

function tinted(colour: string, how: Tinted): `#${string}` {
  const own = toLch(colour);
  const cloudy = Math.min(1, (how.turbidity ?? 0) / 3);
  // Without a colour of its own the hue follows the strength: green grey for water, blue grey for spirit.
  const bare = own.c < 0.012;
  const h = bare ? 125 + (78 * Math.min(40, Math.max(0, how.strength ?? 0))) / 40 : own.h;
  const clear = how.foam === true ? 0 : Math.max(0, 1 - own.c / 0.09) * (1 - cloudy);
  const dark = how.scheme === 'dark';
  const window = how.at === 'glass'
    ? (dark ? { low: 0.44 - 0.09 * clear, high: 0.51 - 0.08 * clear, thin: 0.06 - 0.035 * clear, full: 0.095 } : { low: 0.8 + 0.12 * clear, high: 0.91 + 0.035 * clear, thin: 0.06 - 0.045 * clear, full: 0.12 })
    : (dark ? { low: 0.37 - 0.02 * clear, high: 0.44 - 0.03 * clear, thin: 0.03 - 0.015 * clear, full: 0.05 } : { low: 0.91 + 0.015 * clear, high: 0.95, thin: 0.03 - 0.018 * clear, full: 0.06 });
  let l = within(own.l, window.low, window.high);
  if (how.foam === true) l = dark ? (window.low + window.high) / 2 : window.high;
  else l += (window.high - l) * cloudy * 0.6;
  const chroma = how.at === 'upstream' ? own.c * 0.5 : own.c;
  const c = within(chroma, window.thin, window.full) * (how.foam === true ? 0.85 : 1);
  return toHex({ l, c, h });
}

/** The tint of ice that lies in `liquid`: duller, lighter on light, darker on dark. */
export function iceTint(scheme: Scheme, at: 'glass' | 'upstream'): `#${string}` {
  if (scheme === 'dark') return at === 'glass' ? '#304a51' : '#2e4449';
  return at === 'glass' ? '#e9f3f5' : '#eaf4f6';
}

/** WCAG 2 contrast of two colours. */
export function contrast(a: string, b: string): number {
  const p = luminance(a), q = luminance(b);
  return (Math.max(p, q) + 0.05) / (Math.min(p, q) + 0.05);
}

function luminance(hex: string): number {
  const [r, g, b] = linear(hex);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function within(x: number, low: number, high: number): number { return Math.min(high, Math.max(low, x)); }

function linear(hex: string): [number, number, number] {
  const n = Number.parseInt(/^#[0-9a-f]{6}$/i.test(hex) ? hex.slice(1) : 'e8eee6', 16);
  const one = (v: number): number => { const s = v / 255; return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4; };
  return [one((n >> 16) & 255), one((n >> 8) & 255), one(n & 255)];
}

function toLab(hex: string): [number, number, number] {
  const [r, g, b] = linear(hex);
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s, 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s, 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s];
}

export function toLch(hex: string): Lch {
  const [l, a, b] = toLab(hex);
  return { l, c: Math.hypot(a, b), h: ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360 };
}

/** The nearest colour a screen shows: chroma gives way, lightness and hue stay. */
function toHex({ l, c, h }: Lch): `#${string}` {
  for (let chroma = c; ; chroma -= 0.004) {
    const rgb = fromLch({ l, c: Math.max(0, chroma), h });
    if (chroma <= 0 || rgb.every((v) => v >= -0.0005 && v <= 1.0005)) return `#${rgb.map((v) => byte(v)).join('')}`;
  }
}

function fromLch({ l, c, h }: Lch): [number, number, number] {
  const a = c * Math.cos((h * Math.PI) / 180), b = c * Math.sin((h * Math.PI) / 180);
  const l3 = (l + 0.3963377774 * a + 0.2158037573 * b) ** 3, m3 = (l - 0.1055613458 * a - 0.0638541728 * b) ** 3, s3 = (l - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [4.0767416621 * l3 - 3.3077115913 * m3 + 0.2309699292 * s3, -1.2684380046 * l3 + 2.6097574011 * m3 - 0.3413193965 * s3, -0.0041960863 * l3 - 0.7034186147 * m3 + 1.707614701 * s3];
}

function byte(v: number): string {
  const x = within(v, 0, 1);
  const s = x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055;
  return Math.round(s * 255).toString(16).padStart(2, '0');
}
