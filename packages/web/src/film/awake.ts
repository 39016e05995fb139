import { createSignal, onCleanup, onMount, type Accessor } from 'solid-js';

/** Keeps the screen from going dark while the view stands; asked for again when the page is seen again. False where the browser cannot or will not. */
export function stayAwake(): Accessor<boolean> {
  const [held, setHeld] = createSignal(true);
  onMount(() => {
    let lock: WakeLockSentinel | null = null, left = false;
    const ask = async (): Promise<void> => {
      if (left || document.visibilityState !== 'visible' || lock?.released === false) return;
      try {
        const wakes = (navigator as { readonly wakeLock?: WakeLock }).wakeLock;
        if (wakes === undefined) { setHeld(false); return; }
        lock = await wakes.request('screen');
        setHeld(true);
        if (left) void lock.release();
      } catch { setHeld(false); }
    };
    const seen = (): void => { void ask(); };
    document.addEventListener('visibilitychange', seen);
    seen();
    onCleanup(() => { left = true; document.removeEventListener('visibilitychange', seen); void lock?.release(); });
  });
  return held;
}
