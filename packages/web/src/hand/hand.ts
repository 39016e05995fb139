import { createSignal, onCleanup, type Accessor } from 'solid-js';
import type { Hand, State } from '../state.ts';

/** What stands beside a level that a hand is at: the line it would turn, or turns. */
export interface Said { readonly words: string; readonly x: number; readonly y: number; /** which end of the words stands at x */ readonly end: boolean }
interface Held { readonly hand: Hand; readonly of: string; readonly said: Said | null; readonly y: number; readonly at: number; readonly per: number; moved: boolean }
/** An amount that is typed over: where it stands, and what it was. */
export interface Typing { readonly of: string; readonly name: string; readonly x: number; readonly y: number; readonly height: number; readonly value: string; readonly unit: string }

/** A pointer is not yet a drag, px. */
const STILL = 3;
/** So far a pointer goes for one step of an amount, px. */
const A_STEP = 8;
/** A pointer rests before it is told what it would move, ms. */
const REST_MS = 120;
const STEPS: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 5, PageDown: -5 };

/** Levels taken by pointer, finger or key: all three turn the same lines by the same steps. */
export function makeHand(state: Accessor<State>, box: Accessor<HTMLElement>) {
  const [said, setSaid] = createSignal<Said | null>(null), [typing, setTyping] = createSignal<Typing | null>(null);
  let held: Held | null = null, frame = 0, rest = 0, last: { readonly y: number; readonly fine: boolean } | null = null;
  const partOf = (target: EventTarget | null): SVGElement | null => (target as Element | null)?.closest<SVGElement>('[data-level]') ?? null;
  const numbers = (part: SVGElement) => ({ of: part.dataset['level'] ?? '', at: Number(part.dataset['at']), per: Number(part.dataset['per']) });
  const tell = (part: SVGElement | null, words: string): Said | null => setSaid(beside(part, words));
  const beside = (part: SVGElement | null, words: string): Said | null => {
    const hand = part?.querySelector('path') ?? part;
    if (hand == null || words === '') return null;
    const own = hand.getBoundingClientRect(), around = box().getBoundingClientRect(), of = part?.dataset['level'] ?? '';
    // within the glass left of the triangle; of the whole drink over its number; at a vessel on its right
    if (of === 'washline') return { words, x: around.width - 16, y: Math.max(4, own.top - around.top - 54), end: true };
    if (of.startsWith('amount:')) return own.right - around.left + 170 < around.width ? { words, x: own.right - around.left + 8, y: own.top - around.top, end: false } : { words, x: own.left - around.left - 8, y: own.top - around.top, end: true };
    if (of.startsWith('layer:')) return { words, x: own.left - around.left - 6, y: own.top - around.top - 6, end: true };
    return { words, x: Math.min(own.right - around.left + 14, around.width - 160), y: own.top - around.top - 4, end: false };
  };
  const again = (of: string): SVGElement | null => box().querySelector<SVGElement>(`[data-level="${CSS.escape(of)}"]`);
  const follow = (): void => {
    frame = 0;
    if (held === null || last === null) return;
    const { hand, said: began, at, per, of } = held;
    if (of.startsWith('amount:')) {
      hand.at(Math.round((held.y - last.y) / A_STEP), last.fine);
      if (began !== null) setSaid({ ...began, words: hand.words() });
      return;
    }
    hand.to(at + (held.y - last.y) * per, last.fine);
    // reckoned, not measured: asking where things are now would lay the page out twice in a frame
    if (began !== null) setSaid({ ...began, words: hand.words(), y: began.y + (at - hand.value()) / per });
  };
  const end = (keep: boolean): void => {
    cancelAnimationFrame(frame);
    if (held !== null) { if (keep) { if (frame !== 0) follow(); held.hand.keep(); } else held.hand.drop(); }
    held = null; last = null; frame = 0;
    document.documentElement.classList.remove('holding');
    setSaid(null);
  };
  const escape = (e: KeyboardEvent): void => { if (e.key === 'Escape' && held !== null) { e.stopPropagation(); end(false); } };
  addEventListener('keydown', escape, true);
  onCleanup(() => removeEventListener('keydown', escape, true));

  /** Opens an amount to be typed over, beginning with what was typed already. */
  const type = (of: string, begun: string): void => {
    const part = again(of), amount = state().amount(of);
    if (part === null || amount === null) return;
    const own = part.querySelector('text')?.getBoundingClientRect() ?? part.getBoundingClientRect(), around = box().getBoundingClientRect();
    setSaid(null);
    setTyping({ of, name: part.getAttribute('aria-label') ?? '', x: own.left - around.left, y: own.top - around.top, height: own.height, value: begun === '' ? String(amount.value) : begun, unit: amount.unit ?? '' });
  };
  /** Ends the typing; the amount has the focus again, unless somebody went elsewhere (`left`). `text` null: nothing was meant. False where it is no amount. */
  const typed = (text: string | null, left = false): boolean => {
    const at = typing();
    if (at === null) return true;
    if (text !== null && !state().typeAmount(at.of, text)) return false;
    setTyping(null);
    if (!left) queueMicrotask(() => again(at.of)?.focus({ preventScroll: true }));
    return true;
  };

  return {
    said, typing, typed,
    down: (e: PointerEvent & { readonly currentTarget: SVGSVGElement }): void => {
      const part = partOf(e.target);
      if (part === null || e.button !== 0 || held !== null) return;
      const { of, at, per } = numbers(part), hand = state().hold(of);
      // named as held by a pointer, so that no ring is drawn about it
      part.focus({ preventScroll: true, focusVisible: false });
      if (hand === null) return;
      e.preventDefault();
      e.currentTarget.setPointerCapture(e.pointerId);
      held = { hand, of, said: tell(part, hand.words()), y: e.clientY, at, per, moved: false };
    },
    move: (e: PointerEvent): void => {
      if (held === null) return;
      if (!held.moved && Math.abs(e.clientY - held.y) < STILL) return;
      held.moved = true;
      document.documentElement.classList.add('holding');
      last = { y: e.clientY, fine: e.shiftKey };
      if (frame === 0) frame = requestAnimationFrame(follow);
    },
    up: (): void => {
      if (held === null) return;
      const { of, moved } = held;
      end(true);
      // an amount that was pressed and not drawn is typed over
      if (!moved && of.startsWith('amount:')) type(of, '');
    },
    cancel: (): void => { if (held !== null) end(false); },
    /** True where the key was one of a level's own. */
    key: (e: KeyboardEvent): boolean => {
      const part = partOf(e.target), steps = STEPS[e.key];
      if (part === null || e.ctrlKey || e.metaKey || e.altKey) return false;
      const { of } = numbers(part), amount = of.startsWith('amount:');
      if (amount && (e.key === 'Enter' || /^[0-9]$/.test(e.key))) { e.preventDefault(); type(of, e.key === 'Enter' ? '' : e.key); return true; }
      if (steps === undefined && (amount || (e.key !== 'Home' && e.key !== 'End'))) return false;
      e.preventDefault();
      const hand = state().hold(of);
      if (hand === null) return true;
      if (steps !== undefined) hand.by(steps, e.shiftKey); else if (e.key === 'Home') hand.to(0, false); else if (!of.startsWith('prep:')) hand.to(1000, false);
      const words = hand.words();
      hand.keep();
      queueMicrotask(() => tell(again(of), words));
      return true;
    },
    over: (e: Event): void => {
      const part = partOf(e.target);
      clearTimeout(rest);
      if (held !== null) return;
      if (part === null) { setSaid(null); return; }
      rest = window.setTimeout(() => { if (held === null && part.isConnected) { const hand = state().hold(numbers(part).of); tell(part, hand?.words() ?? ''); } }, REST_MS);
    },
    leave: (): void => { clearTimeout(rest); if (held === null) setSaid(null); },
  };
}
