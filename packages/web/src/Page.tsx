import type { SaidWhy } from '@washline/spec';
import { shown } from '@washline/drawing';
import { createEffect, createMemo, createSignal, For, lazy, onCleanup, Show, Suspense } from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { keepLanguage, keepSheet, keptLanguage, keptSheet, type Sheet as Kind } from './device.ts';
import { drinks, liquid } from './head.ts';
import { onPaper } from './glass/room.ts';
import { Glass, type Pressed } from './glass/Glass.tsx';
import { sectionOf } from './hand/section.ts';
import { language, ofBrowser, say, turn as turnOf, turnTo } from './language/language.ts';
import { Later } from './later/Later.tsx';
import { makeMinutes } from './later/minutes.ts';
import { openLinks } from './link/linked.ts';
import { LinkWord } from './link/LinkWord.tsx';
import { Card } from './paper/Card.tsx';
import { Facts } from './prep/Facts.tsx';
import type { Read } from './read.ts';
import { Live } from './Live.tsx';
import { entriesOf, same } from './sheet/entries.ts';
import type { Entry } from './sheet/Margin.tsx';
import { Sheet } from './sheet/Sheet.tsx';
import { createHold } from './sheet/typing.ts';
import { Slip } from './slip/Slip.tsx';
import { makeState } from './state.ts';
import { pxPerMm } from './true-size/screen.ts';
import { Units } from './units/Units.tsx';
import { GLASS, turnToView, viewed, VIEWS, type ViewName } from './views/view.ts';

const TrueSize = lazy(() => import('./true-size/TrueSize.tsx'));

export function Page() {
  const state = makeState();
  const linked = openLinks(state);
  const system = matchMedia('(prefers-color-scheme: dark)');
  const [sheet, setSheet] = createSignal<Kind>(keptSheet() ?? (system.matches ? 'dark' : 'light'));
  const dress = (kind: Kind): void => { document.documentElement.dataset['sheet'] = kind; };
  dress(sheet());
  system.addEventListener('change', () => { if (keptSheet() === null) { const kind = system.matches ? 'dark' : 'light'; setSheet(kind); dress(kind); } });
  if ((keptLanguage() ?? ofBrowser()) === 'de') void turnTo('de');
  const other = (): 'en' | 'de' => (language() === 'de' ? 'en' : 'de');
  const speakOther = (): void => { const next = other(); keepLanguage(next); void turnTo(next); };
  const turn = (): void => { const kind = sheet() === 'dark' ? 'light' : 'dark'; setSheet(kind); keepSheet(kind); dress(kind); };

  const [pressed, setPressed] = createSignal<Pressed | null>(null);
  const minutes = makeMinutes(state);
  const reading = (): Shown => state.now().reading;
  // Nothing is said of a line while it is being typed.
  const hold = createHold();
  const entries = createMemo<readonly Entry[]>((before) => (turnOf(), same(before, entriesOf(state.now()).filter((e) => e.line === null || e.line !== hold.line()))), []);
  const told = (): Read => ({ ...state.now(), findings: state.now().findings.filter((f) => f.where.line === undefined || f.where.line !== hold.line()) });
  // Taken apart only while someone looks, and after the slip stands: what would narrow a figure is tried out.
  const [why, setWhy] = createSignal<SaidWhy | null>(null);
  createEffect(() => {
    const p = pressed(), engine = state.reader(), text = state.text();
    setWhy(null);
    if (p === null || engine === null || minutes.drawn() !== null) return;
    const timer = setTimeout(() => setWhy([engine(text, p.reading === 'drink' ? p.figure : `${p.reading.replace(/^prep:/, '')}/${p.figure}`).reading.why ?? []].flat()[0] ?? null));
    onCleanup(() => clearTimeout(timer));
  });
  const name = (): string => reading().drink;
  const level = (): string => { const g = (minutes.drawn() ?? reading()).glass; return g === null || !(g.washline_mm > 0) ? '' : `${shown(g.washline_mm, 1)} mm`; };
  const title = createMemo(() => { document.title = name() === '' ? 'Washline' : `${name()}, Washline`; return name(); });
  const toName = (): void => { const e = document.querySelector<HTMLTextAreaElement>('[data-editor]'); if (e !== null) { e.focus(); const end = Math.max(0, e.value.indexOf('\n')); e.setSelectionRange(end, end); } };

  // A vessel pressed: the caret goes to its lines.
  const toSection = (prep: string): void => {
    const { document: spec, reading: of } = state.now(), line = sectionOf(spec, of.variant, prep)?.lines[0];
    const editor = document.querySelector<HTMLTextAreaElement>('[data-editor]');
    if (line === undefined || editor === null) return;
    editor.focus({ preventScroll: true });
    editor.setSelectionRange(line.span.to, line.span.to);
    document.querySelectorAll('.mirror > .row')[line.line - 1]?.scrollIntoView({ block: 'center' });
  };

  // The glass at true size: a card is laid on the screen once.
  const [laying, setLaying] = createSignal(false), [real, setReal] = createSignal(false), [tall, setTall] = createSignal(false);
  const paper = onPaper();
  const otherView = () => VIEWS.find((view) => view.name === viewed());
  const toView = (name: ViewName, answer: () => string) => (
    <a class="view" href={`#${name}`} aria-current={viewed() === name ? 'page' : undefined} onClick={(e) => { e.preventDefault(); if (viewed() !== name) turnToView(name); else document.getElementById(name)?.focus(); }}><b>{say(name)}</b> <span class="answer">{answer()}</span></a>
  );

  return (
    <>
      <a class="skip" href="#spec" onClick={(e) => { e.preventDefault(); document.getElementById('spec')?.focus(); }}>{say('skip.spec')}</a>
      <a class="skip" href="#findings" onClick={(e) => { e.preventDefault(); document.getElementById('findings')?.focus(); }}>{say('skip.findings')}</a>
      <Show when={viewed() !== GLASS || !laying()}><a class="skip" href={`#${viewed()}`} onClick={(e) => { e.preventDefault(); document.getElementById(viewed())?.focus(); }}>{viewed() === GLASS ? say('skip.glass') : say('skip.view', { view: say(viewed()) })}</a></Show>
      <main class="page" classList={{ 'of-glass': viewed() === GLASS && !laying() }}>
        <Show when={paper() && viewed() === GLASS}><header class="paper-title"><h1>{title()}</h1><p>{drinks(reading())}</p></header></Show>
        <div class="phone-head"><h1>{title()}</h1><p>{liquid(reading())}<br />{drinks(reading())}</p></div>
        <p class="opened for-phone" classList={{ failed: linked.failed() }} role="status">{linked.words()}</p>
        <Show when={otherView()} keyed fallback={<Show when={!laying()} fallback={<Suspense><TrueSize onDone={(kept) => { setLaying(false); setReal(kept); }} /></Suspense>}>
          <Glass state={state} sheet={sheet} minutes={minutes} trueSize={() => (real() ? pxPerMm() : null)} onTall={setTall} onPress={setPressed} onVessel={toSection} />
          <Later state={state} sheet={sheet} minutes={minutes} />
          <Facts now={state.now} />
          <Show when={paper()}><Card state={state} entries={entries} /></Show>
        </Show>}>{(view) => <Suspense><Dynamic component={view.shows} state={state} sheet={sheet} /></Suspense>}</Show>
        <section class="side" aria-label={say('spec')}>
          <div class="head"><h1 class="title" data-long={title().length > 26} onClick={toName}>{title()}</h1><p class="when">{drinks(reading())}</p></div>
          <p class="opened for-sheet" classList={{ failed: linked.failed() }} role="status">{linked.words()}</p>
          <Sheet state={state} entries={entries} hold={hold} />
        </section>
        <footer class="foot">
          <ul>
            <li><Units state={state} /></li>
            <li><button type="button" onClick={turn}>{say(sheet() === 'dark' ? 'sheet.light' : 'sheet.dark')}</button></li>
            <li><button type="button" lang={other()} data-language={other()} onClick={speakOther}>{other() === 'de' ? 'deutsch' : 'English'}</button></li>
            <Show when={state.undoes() !== null}><li><button type="button" onClick={() => state.undo()}>{say('undo')}<span class="again">{state.undoes()}</span></button></li></Show>
            <Show when={state.redoes() !== null}><li><button type="button" onClick={() => state.redo()}>{say('redo')}<span class="again">{state.redoes()}</span></button></li></Show>
            <Show when={!state.isDemo()}><li><button type="button" onClick={() => state.toDemo()}>{say('demo')}</button></li></Show>
            <Show when={viewed() === GLASS && !laying()}><li><button type="button" aria-pressed={real()} onClick={() => { if (real()) setReal(false); else if (pxPerMm() === null) setLaying(true); else setReal(true); }}>{say(real() ? 'true.off' : 'true')}</button><Show when={real() && tall()}><span class="unit">{say('true.tall')}</span></Show></li></Show>
            <li><LinkWord state={state} /></li>
            <li><button type="button" onClick={() => print()}>{say('print')}</button></li>
            <Show when={!isSecureContext}><li class="plain-http">{say('plain')}</li></Show>
          </ul>
          <nav aria-label={say('views')}><ul>
            <li>{toView(GLASS, level)}</li>
            <For each={VIEWS}>{(view) => <li>{toView(view.name, () => view.answer(state))}</li>}</For>
          </ul></nav>
        </footer>
        <Show when={pressed()} keyed>{(p) => <Slip pressed={p} minutes={() => (minutes.drawn() === null ? 0 : minutes.minute())} reading={() => minutes.drawn() ?? reading()} why={why} onClose={() => setPressed(null)} />}</Show>
      </main>
      <Live now={told} />
      <pre data-text hidden>{state.text()}</pre>
    </>
  );
}

type Shown = Read['reading'];
