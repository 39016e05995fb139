import { convert, fahrenheitFromCelsius, type Figure } from '@washline/engine';
import { pointed, words } from '../words.ts';

/** What volumes are told in; null: figures in ml, amounts in the unit they are written in; `g`: amounts as they are weighed, all else in ml. */
export type VolumeUnit = 'ml' | 'cl' | 'oz' | 'g';
export type DegreeUnit = '°C' | '°F';
const NAMES = { cl: 'cl', oz: 'us_fl_oz' } as const;
let volume: VolumeUnit | null = null, degree: DegreeUnit = '°C', both = false;

/** The unit that volumes are turned into; null where they stay in ml. */
const other = (): 'cl' | 'oz' | null => (volume === 'cl' || volume === 'oz' ? volume : null);

/** The units everything is lettered in from now on; what stands in the text and in the marks of figures stays in its own. */
export function measureIn(volumes: VolumeUnit | null, degrees: DegreeUnit): void { volume = volumes; degree = degrees; }

/** What is drawn with every amount in ml and in ounces, as on paper, where nobody can choose. */
export function inBoth<T>(drawn: () => T): T { both = true; try { return drawn(); } finally { both = false; } }

/** A figure in the units it is shown in: volumes and temperatures by themselves, all else as it is. Done twice it is done once. */
export function inUnits<T extends Pick<Figure, 'value' | 'low' | 'high' | 'unit'>>(figure: T): T {
  const by = (to: (value: number) => number, unit: string): T => ({ ...figure, value: to(figure.value), low: to(figure.low), high: to(figure.high), unit });
  const to = other();
  if (figure.unit === 'mL' && to !== null) return by((value) => convert(value, 'ml', NAMES[to]), to);
  if (figure.unit === '°C' && degree === '°F') return by(fahrenheitFromCelsius, '°F');
  return figure;
}

/** A measure as a hand takes it, from mL: `45 ml`, `4.5 cl`, `1 1/2 oz`. */
export function measureShown(mL: number): string { return both ? `${metric(mL)} (${ounces(mL)})` : volume === 'oz' ? ounces(mL) : metric(mL); }
function metric(mL: number): string { return volume === 'cl' && !both ? `${plain(mL / 10, 2)} cl` : `${plain(mL, mL < 10 ? 1 : 0)} ml`; }

/** An amount that is written in a unit of volume, in the unit chosen; null where it stays as it is written: none was chosen, it is that unit, or it is no exact volume. */
export function amountIn(value: number, unit: string | null): string | null {
  const factor = unit === null ? undefined : WRITTEN[unit];
  return factor === undefined || (!both && (volume === null || volume === 'g' || unit === volume)) ? null : measureShown(value * factor);
}
/** What a line puts in as it is weighed, where grams were chosen and it is not written in them; else null. */
export function weightIn(grams: number | undefined, unit: string | null): string | null {
  return volume !== 'g' || both || grams === undefined || unit === 'g' || unit === 'kg' ? null : `${pointed(grams.toFixed(grams < 1 ? 2 : grams < 20 ? 1 : 0))} g`;
}

/** A sentence with what it says in °C and in ml told in the units chosen; its words, and what would be written into a spec, stay. */
export function sentenceIn(text: string): string {
  const to = other();
  if (degree === '°C' && to === null) return text;
  return text.replace(TOLD, (said, sign: string, number: string, unit: string) => {
    const value = Number(`${sign === '' ? '' : '-'}${number.replace(',', '.')}`), digits = (number.split(/[.,]/)[1] ?? '').length;
    if (unit === '°C') return degree === '°C' ? said : `${pointed((Number(fahrenheitFromCelsius(value).toFixed(digits)) + 0).toFixed(digits)).replace('-', '−')} °F`;
    return to === null ? said : measureShown(value);
  });
}
const TOLD = /([-−]?)(\d+(?:[.,]\d+)?)[ \u00a0](°C|ml)(?![\p{L}\d])/gu;

/** Units whose mL are exact wherever they are written; an ounce is not among them, for a head may say whose. */
const WRITTEN: Readonly<Record<string, number>> = { ml: 1, cl: 10, dl: 100, l: 1000 };

/** How far a fraction may lie from what is meant, as a share of it; further off it is told in decimals. */
const NEAR = 0.05;
/** A bar spoon and a dash, mL: the middle of what they hold. @source common-practice */
const BAR_SPOON = 4, DASH = 0.8;
/** From a quarter ounce on in eighths, below it in bar spoons and dashes. */
function ounces(mL: number): string {
  const oz = convert(mL, 'ml', 'us_fl_oz'), tell = (value: number, part: number, unit: string): string | null => { const near = Math.round(value / part) * part; return near > 0 && Math.abs(near - value) <= NEAR * value ? `${fraction(near)} ${unit}` : null; };
  return (oz >= 0.24 ? tell(oz, oz > 8 ? 0.25 : 0.125, 'oz') : mL >= 1.9 ? tell(mL / BAR_SPOON, 0.25, words('unit.bar-spoon', {})) : tell(mL / DASH, 1, words('unit.dash', {}))) ?? `${pointed(String(Number(oz.toPrecision(2))))} oz`;
}

/** `1 1/2`, `3/4`, `2`. */
function fraction(value: number): string {
  const whole = Math.floor(value + 1e-9), eighths = Math.round((value - whole) * 8), over = eighths % 4 === 0 ? 2 : eighths % 2 === 0 ? 4 : 8;
  return eighths === 0 ? String(whole) : `${whole === 0 ? '' : `${whole} `}${(eighths * over) / 8}/${over}`;
}
function plain(value: number, digits: number): string { return pointed(String(Number(value.toFixed(digits)))); }
