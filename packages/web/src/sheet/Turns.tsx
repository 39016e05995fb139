import { createEffect, createMemo, createSignal, Show, type Accessor } from 'solid-js';
import { say } from '../language/language.ts';
import type { State } from '../state.ts';
import { measured } from './measured.ts';
import type { Row } from './rows.ts';
import '../style/turns.css';

/** Where there is no Alt key: the amount of the chosen line one step of its jigger less or more. They stand under the line, so that its amount is seen to change. */
export function Turns(props: { readonly state: State; readonly line: Accessor<number | null>; readonly rows: Accessor<readonly Row[]>; readonly width: Accessor<number>; readonly mirror: () => HTMLElement }) {
  const at = createMemo(() => { const line = props.line(); props.state.text(); return line !== null && props.state.turns(line) ? line : null; });
  const [top, setTop] = createSignal(0);
  createEffect(() => {
    const line = at();
    props.rows(); props.width();
    if (line === null) return;
    measured(() => { const row = props.mirror().children[line - 1] as HTMLElement | undefined, under = row === undefined ? 0 : row.offsetTop + row.offsetHeight; return () => { setTop(under); }; });
  });
  const words = (): string => props.rows()[(at() ?? 1) - 1]?.text ?? '';
  const stroke = (by: 1 | -1) => (
    <button type="button" aria-label={say(by > 0 ? 'turn.more' : 'turn.less', { line: words() })} onPointerDown={(e) => { e.preventDefault(); }} onClick={() => { const line = at(); if (line !== null) props.state.turnLine(line, by, false); }}>
      <svg width="18" height="18" aria-hidden="true"><path d={by > 0 ? 'M1 9H17M9 1V17' : 'M1 9H17'} stroke="currentColor" stroke-width="1.75" /></svg>
    </button>
  );
  return <Show when={at() !== null}><div class="turns" role="group" aria-label={say('turn')} style={{ top: `${top()}px` }}>{stroke(-1)}{stroke(1)}</div></Show>;
}
