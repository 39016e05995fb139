import { createSignal } from 'solid-js';
import { keepScreen, keptScreen } from '../device.ts';

/** Long and short side of a bank card, mm: size ID-1 of ISO/IEC 7810:2019. */
export const CARD_MM = { long: 85.6, short: 53.98 } as const;

const [screen, setScreen] = createSignal(keptScreen());
const [ratio, setRatio] = createSignal(devicePixelRatio);
// zooming changes how many dots of the screen a CSS px is
addEventListener('resize', () => setRatio(devicePixelRatio));

/** CSS px that one millimetre of this screen is; null until a card was laid on it. */
export const pxPerMm = (): number | null => { const dots = screen(); return dots === null ? null : dots / ratio(); };

/** Keeps what was measured: CSS px of a card's long side, as the page is zoomed now. */
export function measured(px: number): void { const dots = (px / CARD_MM.long) * devicePixelRatio; setScreen(dots); keepScreen(dots); }
