import type { DegreeUnit, VolumeUnit } from '@washline/drawing';
import { EMPTY, type History } from './history.ts';

const DRAFT = 'washline/draft', SHEET = 'washline/sheet', LANGUAGE = 'washline/language', SCREEN = 'washline/screen', UNITS = 'washline/units', OTHER = 'washline/other', BENCH = 'washline/bench';
export interface Draft { readonly text: string; readonly history: History }

/** What this device keeps; a device that keeps nothing (private window, storage full) is no fault. */
export function keptDraft(): Draft | null {
  try {
    const raw = localStorage.getItem(DRAFT);
    if (raw === null) return null;
    const kept = JSON.parse(raw) as Partial<Draft>;
    if (typeof kept.text !== 'string') return null;
    const { undo, redo } = kept.history ?? EMPTY;
    return { text: kept.text, history: Array.isArray(undo) && Array.isArray(redo) ? { undo, redo } : EMPTY };
  } catch { return null; }
}

export function keepDraft(draft: Draft | null): void {
  try {
    if (draft === null) localStorage.removeItem(DRAFT); else localStorage.setItem(DRAFT, JSON.stringify(draft));
  } catch { /* the text stays in the page */ }
}

/** The bench of this device; '' where there is none. */
export function keptBench(): string { try { return localStorage.getItem(BENCH) ?? ''; } catch { return ''; } }
export function keepBench(text: string): void { try { if (text.trim() === '') localStorage.removeItem(BENCH); else localStorage.setItem(BENCH, text); } catch { /* holds until the page is left */ } }

/** The language chosen on this device; null where none was. */
export function keptLanguage(): 'en' | 'de' | null {
  try { const kept = localStorage.getItem(LANGUAGE); return kept === 'de' || kept === 'en' ? kept : null; } catch { return null; }
}
export function keepLanguage(language: 'en' | 'de'): void {
  try { localStorage.setItem(LANGUAGE, language); } catch { /* holds until the page is left */ }
}

/** What can be chosen, in the order it is offered. */
export const VOLUMES: readonly VolumeUnit[] = ['ml', 'cl', 'oz', 'g'];
/** The units chosen on this device; null where none were, and the head of the spec has its say. */
export function keptUnits(): { readonly volume: VolumeUnit | null; readonly degree: DegreeUnit } {
  try { const [volume, degree] = (localStorage.getItem(UNITS) ?? '').split(' '); return { volume: VOLUMES.find((unit) => unit === volume) ?? null, degree: degree === '°F' ? '°F' : '°C' }; } catch { return { volume: null, degree: '°C' }; }
}
export function keepUnits(volume: VolumeUnit | null, degree: DegreeUnit): void {
  try { localStorage.setItem(UNITS, `${volume ?? '-'} ${degree}`); } catch { /* holds until the page is left */ }
}

export type Sheet = 'light' | 'dark';
export function keptSheet(): Sheet | null {
  try { const kept = localStorage.getItem(SHEET); return kept === 'dark' || kept === 'light' ? kept : null; } catch { return null; }
}
export function keepSheet(sheet: Sheet): void {
  try { localStorage.setItem(SHEET, sheet); } catch { /* holds until the page is left */ }
}

/** Dots of this screen that a millimetre is, as measured with a card; null where it was not. */
export function keptScreen(): number | null {
  try { const kept = Number(localStorage.getItem(SCREEN)); return kept > 0.5 && kept < 100 ? kept : null; } catch { return null; }
}
export function keepScreen(dots: number): void {
  try { localStorage.setItem(SCREEN, String(dots)); } catch { /* holds until the page is left */ }
}

/** A text that was kept to hold others against; null where none was. */
export function keptOther(): string | null { try { return localStorage.getItem(OTHER); } catch { return null; } }
export function keepOther(text: string): void { try { localStorage.setItem(OTHER, text); } catch { /* holds until the page is left */ } }
