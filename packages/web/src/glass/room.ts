import { createSignal, onCleanup, onMount, type Accessor } from 'solid-js';

export interface Room { readonly width: number; readonly height: number }

/** The room of an element, px, as it is and whenever it becomes another. */
export function roomOf(box: () => HTMLElement): Accessor<Room> {
  const [room, setRoom] = createSignal<Room>({ width: 0, height: 0 }, { equals: (a, b) => a.width === b.width && a.height === b.height });
  onMount(() => {
    const measure = (): void => { setRoom({ width: box().clientWidth, height: box().clientHeight }); };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(box());
    onCleanup(() => watch.disconnect());
  });
  return room;
}

/** True while the page is put on paper. `first` is done before. */
export function onPaper(first?: () => void): Accessor<boolean> {
  const [paper, setPaper] = createSignal(false);
  const before = (): void => { first?.(); setPaper(true); }, after = (): void => { setPaper(false); };
  addEventListener('beforeprint', before);
  addEventListener('afterprint', after);
  onCleanup(() => { removeEventListener('beforeprint', before); removeEventListener('afterprint', after); });
  return paper;
}
