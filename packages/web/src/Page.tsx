import type { Why } from '@washline/engine';
import { shown } from '@washline/drawing';
import { createMemo, createSignal, Show } from 'solid-js';
import { keepSheet, keptSheet, type Sheet as Kind } from './device.ts';
import { Glass, type Pressed } from './glass/Glass.tsx';
import type { Read } from './read.ts';
import { Live } from './Live.tsx';
import { entriesOf } from './sheet/entries.ts';
import { Sheet } from './sheet/Sheet.tsx';
import { Slip } from './slip/Slip.tsx';
import { makeState } from './state.ts';

export function Page() {
  const state = makeState();
  const system = matchMedia('(prefers-color-scheme: dark)');
  const [sheet, setSheet] = createSignal<Kind>(keptSheet() ?? (system.matches ? 'dark' : 'light'));
  const dress = (kind: Kind): void => { document.documentElement.dataset['sheet'] = kind; };
  dress(sheet());
  system.addEventListener('change', () => { if (keptSheet() === null) { const kind = system.matches ? 'dark' : 'light'; setSheet(kind); dress(kind); } });
  const turn = (): void => { const kind = sheet() === 'dark' ? 'light' : 'dark'; setSheet(kind); keepSheet(kind); dress(kind); };

  const [pressed, setPressed] = createSignal<Pressed | null>(null);
  const reading = (): Shown => state.now().reading;
  const entries = createMemo(() => entriesOf(state.now()));
  // Taken apart only while someone looks.
  const why = createMemo<Why | null>(() => {
    const p = pressed();
    if (p === null || p.reading !== 'drink') return null;
    return state.reader()?.(state.text(), p.figure).reading.why ?? null;
  });
  const name = (): string => reading().drink;
  const level = (): string => { const g = reading().glass; return g === null || !(g.washline_mm > 0) ? '' : `${shown(g.washline_mm, 1)} mm`; };
  const title = createMemo(() => { document.title = name() === '' ? 'Washline' : `${name()}, Washline`; return name(); });
  const toName = (): void => { const e = document.querySelector<HTMLTextAreaElement>('[data-editor]'); if (e !== null) { e.focus(); const end = Math.max(0, e.value.indexOf('\n')); e.setSelectionRange(end, end); } };

  return (
    <>
      <a class="skip" href="#spec" onClick={(e) => { e.preventDefault(); document.getElementById('spec')?.focus(); }}>To the spec</a>
      <a class="skip" href="#findings" onClick={(e) => { e.preventDefault(); document.getElementById('findings')?.focus(); }}>To the findings</a>
      <a class="skip" href="#glass" onClick={(e) => { e.preventDefault(); document.getElementById('glass')?.focus(); }}>To the glass</a>
      <main class="page">
        <div class="phone-head"><h1>{title()}</h1><p>{liquid(reading())}<br />{drinks(reading())}</p></div>
        <Glass now={state.now} sheet={sheet} onPress={setPressed} />
        <section class="side" aria-label="Spec">
          <div class="head"><h1 class="title" data-long={title().length > 26} onClick={toName}>{title()}</h1><p class="when">{drinks(reading())}</p></div>
          <Sheet state={state} entries={entries} />
        </section>
        <footer class="foot">
          <ul>
            <li><span class="unit">ml</span></li>
            <li><button type="button" onClick={turn}>{sheet() === 'dark' ? 'light' : 'dark'}</button></li>
            <Show when={state.canUndo()}><li><button type="button" onClick={() => state.undo()}>undo</button></li></Show>
            <Show when={state.canRedo()}><li><button type="button" onClick={() => state.redo()}>redo</button></li></Show>
            <Show when={!state.isDemo()}><li><button type="button" onClick={() => state.toDemo()}>the demo drink</button></li></Show>
            <li><button type="button" onClick={() => print()}>print</button></li>
          </ul>
          <nav aria-label="Views"><ul><li><a class="view" href="#glass" aria-current="page" onClick={(e) => { e.preventDefault(); document.getElementById('glass')?.focus(); }}><b>Glass</b> {level()}</a></li></ul></nav>
        </footer>
        <Show when={pressed()} keyed>{(p) => <Slip pressed={p} reading={reading} why={why} document={() => state.now().document} onClose={() => setPressed(null)} />}</Show>
      </main>
      <Live now={state.now} />
      <pre data-text hidden>{state.text()}</pre>
    </>
  );
}

type Shown = Read['reading'];
function liquid(reading: Shown): string { const v = reading.figures['volume']; return v === undefined ? '' : `${shown(v.value, 0)} ml`; }
function drinks(reading: Shown): string { const us = reading.standard_drinks['US']; return us === undefined || !Number.isFinite(us) || !(us > 0) ? '' : `${shown(us, 1)} US drinks`; }
