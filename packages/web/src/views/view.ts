import { benchAnswer } from '../bench/answer.ts';
import { compareAnswer } from '../compare/answer.ts';
import { createSignal, lazy, type Accessor, type Component } from 'solid-js';
import type { Sheet } from '../device.ts';
import { stepsAnswer } from '../film/answer.ts';
import { handsAnswer } from '../hands/run.ts';
import type { State } from '../state.ts';

/** What a view is handed. It takes the place of the drawing; the sheet stays where it is. */
export interface ViewProps { readonly state: State; readonly sheet: Accessor<Sheet> }

/** Its name in the address and in the words of the page. */
export type ViewName = 'glass' | 'hands' | 'compare' | 'film' | 'bench';

/** A view besides the glass: it comes over the line when someone opens it, and says in the foot what it answers now. */
export interface View {
  readonly name: ViewName;
  readonly shows: Component<ViewProps>;
  /** what stands after its name in the foot; '' while it is not known */
  readonly answer: (state: State) => string;
}

/** The views in the order of the foot. */
export const VIEWS: readonly View[] = [
  view('hands', () => import('../hands/View.tsx'), handsAnswer),
  view('compare', () => import('../compare/View.tsx'), compareAnswer),
  view('film', () => import('../film/Film.tsx'), stepsAnswer),
  view('bench', () => import('../bench/View.tsx'), benchAnswer),
];

export const GLASS: ViewName = 'glass';

/** A view whose code is fetched when it is first shown. */
export function view(name: ViewName, load: () => Promise<{ readonly default: Component<ViewProps> }>, answer: View['answer'] = () => ''): View { return { name, shows: lazy(load), answer }; }

const inAddress = (): ViewName => VIEWS.find((v) => `#${v.name}` === location.hash)?.name ?? GLASS;
const [here, setHere] = createSignal(inAddress());
addEventListener('hashchange', () => setHere(inAddress()));

/** The view that stands, by its name; the address keeps it, so that going back leads back. */
export const viewed = here;
export function turnToView(name: ViewName): void { if (name !== here()) location.hash = name === GLASS ? '' : name; }
