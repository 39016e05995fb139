import { measureIn, type DegreeUnit, type VolumeUnit } from '@washline/drawing';
import { createEffect, createSignal, For, on } from 'solid-js';
import { keepUnits, keptUnits, VOLUMES } from '../device.ts';
import { again, say } from '../language/language.ts';
import type { State } from '../state.ts';
import '../style/units.css';

const DEGREES: readonly DegreeUnit[] = ['°C', '°F'];

/** The units of drawing, slip and facts, as two words of the foot. The text of the spec is never rewritten by them. */
export function Units(props: { readonly state: State }) {
  const kept = keptUnits();
  const [volume, setVolume] = createSignal(kept.volume), [degree, setDegree] = createSignal(kept.degree);
  const head = (): string => props.state.now().document.head.measures?.value ?? '';
  // where nothing was chosen, who writes US measures reads them
  const shows = (): VolumeUnit => volume() ?? (/^us\b/i.test(head()) ? 'oz' : 'ml');
  const choose = (next: VolumeUnit | null, degrees: DegreeUnit): void => { setVolume(next); setDegree(degrees); keepUnits(next, degrees); };
  let set = 'null °C';
  createEffect(on([volume, degree, shows], () => {
    const next = volume() ?? (shows() === 'ml' ? null : shows()), now = `${next} ${degree()}`;
    if (now === set) return;
    set = now;
    measureIn(next, degree());
    again();
  }));
  return (
    <>
      <select class="unit" aria-label={say('units.volume')} data-units onChange={(e) => { choose(VOLUMES.find((unit) => unit === e.currentTarget.value) ?? null, degree()); }}>
        <For each={VOLUMES}>{(unit) => <option value={unit} selected={shows() === unit}>{unit === 'oz' || unit === 'g' ? say(`units.${unit}`) : unit}</option>}</For>
      </select>
      <select class="unit" aria-label={say('units.degree')} data-degrees onChange={(e) => { choose(volume(), e.currentTarget.value === '°F' ? '°F' : '°C'); }}>
        <For each={DEGREES}>{(unit) => <option value={unit} selected={degree() === unit}>{unit}</option>}</For>
      </select>
    </>
  );
}
