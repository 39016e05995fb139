import { describe, expect, it } from 'vitest';
import { loadLanguage, readText } from '@washline/spec';
import { tables } from '@washline/tables';
import { remedied, spliced } from './battery.ts';

// What a beginner does the first time, as a card of a kitchen would have it: each is stopped at its line, for its reason, and what the finding offers mends it. In English and in German.

interface Way {
  readonly way: string;
  /** how the line begins that the finding stands at, in both languages */
  readonly code: string; readonly at: readonly [string, string];
  readonly en: string; readonly de: string;
  /** whose rule it is */
  readonly source: string;
}
await loadLanguage('de');
const card = (...lines: string[]): string => `${lines.join('\n')}\n`;

const WAYS: readonly Way[] = [
  {
    way: 'milk poured into acid', code: 'wash-order', at: ['250 ml whole milk', '250 ml Vollmilch'], source: 'common practice, no source: punch goes into milk, never milk into punch',
    en: card('Punch', '', 'Punch (clarify with milk):', '150 ml lemon juice', '300 ml aged rum 40 %', '250 ml black tea', '250 ml whole milk', 'rest 2 h', 'strain through cheesecloth', '', 'Build:', '90 ml punch'),
    de: card('Punsch', 'Sprache: de', '', 'Punsch (klären mit Milch):', '150 ml Zitronensaft', '300 ml gereifter Rum 40 %', '250 ml Schwarztee', '250 ml Vollmilch', '2 h ruhen lassen', 'durch ein Käsetuch abseihen', '', 'Aufbau:', '90 ml Punsch'),
  },
  {
    way: 'milk poured into acid, as a step', code: 'wash-order', at: ['pour in 250 ml whole milk', '250 ml Vollmilch'], source: 'common practice, no source',
    en: card('Punch', '', 'Punch (milk wash):', '15 g citric acid', '300 ml aged rum 40 %', '400 ml black tea', 'stir until dissolved', 'pour in 250 ml whole milk', 'rest 2 h', 'strain through cheesecloth', '', 'Build:', '90 ml punch'),
    de: card('Punsch', 'Sprache: de', '', 'Punsch (Milchwäsche):', '15 g Zitronensäure', '300 ml gereifter Rum 40 %', '400 ml Schwarztee', 'rühren, bis alles gelöst ist', '250 ml Vollmilch zugießen', '2 h ruhen lassen', 'durch ein Käsetuch abseihen', '', 'Aufbau:', '90 ml Punsch'),
  },
  {
    way: 'gelatin sheets thrown into hot spirit: not soaked', code: 'gel-not-soaked', at: ['4 gold gelatin sheets', '4 Blatt Gold-Gelatine'], source: 'common practice, no source: sheets are soaked 5 to 10 min in cold water',
    en: card('Rum jelly', '', 'Jelly (gel):', '300 ml white rum 40 %', 'heat to 65 °C', '4 gold gelatin sheets', 'chill 6 h at 4 °C', '', 'Build:', '60 ml white rum 40 %', '20 g jelly'),
    de: card('Rumgelee', 'Sprache: de', '', 'Würfel (Gelee):', '300 ml weißer Rum 40 %', 'auf 65 °C erhitzen', '4 Blatt Gold-Gelatine', '6 h bei 4 °C kühlen', '', 'Aufbau:', '60 ml weißer Rum 40 %', '20 g Würfel'),
  },
  {
    way: 'gelatin sheets thrown into hot spirit: too strong to set', code: 'gel-too-strong', at: ['300 ml white rum', '300 ml weißer Rum'], source: 'trial of gelatin in spirit: sets to about 30 % vol, fails in neat 40 %',
    en: card('Rum jelly', '', 'Jelly (gel):', '300 ml white rum 40 %', 'heat to 65 °C', '4 gold gelatin sheets', 'chill 6 h at 4 °C', '', 'Build:', '60 ml white rum 40 %', '20 g jelly'),
    de: card('Rumgelee', 'Sprache: de', '', 'Würfel (Gelee):', '300 ml weißer Rum 40 %', 'auf 65 °C erhitzen', '4 Blatt Gold-Gelatine', '6 h bei 4 °C kühlen', '', 'Aufbau:', '60 ml weißer Rum 40 %', '20 g Würfel'),
  },
  {
    way: 'gelatin sheets thrown into hot spirit: spirit over a flame', code: 'spirit-near-flame', at: ['heat to 65 °C', 'auf 65 °C erhitzen'], source: 'common practice, no source: warm vapour of spirit burns',
    en: card('Rum jelly', '', 'Jelly (gel):', '300 ml white rum 40 %', 'heat to 65 °C', '4 gold gelatin sheets', 'chill 6 h at 4 °C', '', 'Build:', '60 ml white rum 40 %', '20 g jelly'),
    de: card('Rumgelee', 'Sprache: de', '', 'Würfel (Gelee):', '300 ml weißer Rum 40 %', 'auf 65 °C erhitzen', '4 Blatt Gold-Gelatine', '6 h bei 4 °C kühlen', '', 'Aufbau:', '60 ml weißer Rum 40 %', '20 g Würfel'),
  },
  {
    way: 'agar stirred into cold juice', code: 'gel-not-hydrated', at: ['2 g agar', '2 g Agar'], source: 'hydrocolloid suppliers\' tables of hydration: agar from 90 °C on',
    en: card('Clear lime', '', 'Clear lime (clarify with agar):', '500 ml lime juice at 4 °C', '2 g agar', 'stir 1 min', 'chill 1 h at 4 °C', 'break the gel', 'strain through cheesecloth', '', 'Build:', '60 ml white rum 40 %', '20 ml clear lime'),
    de: card('Klare Limette', 'Sprache: de', '', 'Klare Limette (klären mit Agar):', '500 ml Limettensaft bei 4 °C', '2 g Agar', '1 min rühren', '1 h bei 4 °C kühlen', 'das Gel aufbrechen', 'durch ein Käsetuch abseihen', '', 'Aufbau:', '60 ml weißer Rum 40 %', '20 ml klare Limette'),
  },
  {
    way: 'cold juice poured onto boiled agar', code: 'gel-sets-early', at: ['400 ml lime juice', '400 ml Limettensaft'], source: 'agar clarification, 2009: meet above 39 °C',
    en: card('Clear lime', '', 'Clear lime (clarify with agar):', '1 g agar in 100 ml water', 'boil 2 min', '400 ml lime juice at 4 °C', 'chill 1 h at 4 °C', 'break the gel', 'strain through cheesecloth', '', 'Build:', '60 ml white rum 40 %', '20 ml clear lime'),
    de: card('Klare Limette', 'Sprache: de', '', 'Klare Limette (klären mit Agar):', '1 g Agar in 100 ml Wasser', '2 min kochen', '400 ml Limettensaft bei 4 °C', '1 h bei 4 °C kühlen', 'das Gel aufbrechen', 'durch ein Käsetuch abseihen', '', 'Aufbau:', '60 ml weißer Rum 40 %', '20 ml klare Limette'),
  },
  {
    way: 'a full bottle in the freezer', code: 'bottle-may-burst', at: ['freeze 24 h', '24 h bei -18 °C'], source: 'densities of water and ice at 0 °C, CRC Handbook: ice takes 9 % more room',
    en: card('Pineapple batch', '', 'Batch (mix):', '100 ml white rum 40 %', '595 ml pineapple juice', 'freeze 24 h at -18 °C in a 700 ml bottle', '', 'Build:', '90 ml batch'),
    de: card('Ananasvorrat', 'Sprache: de', '', 'Vorrat (Mix):', '100 ml weißer Rum 40 %', '595 ml Ananassaft', '24 h bei -18 °C in einer 700 ml Flasche einfrieren', '', 'Aufbau:', '90 ml Vorrat'),
  },
];

describe.each(WAYS.map((w) => [`${w.way} (${w.source})`, w] as const))('%s', (_, way) => {
  it.each(['en', 'de'] as const)('is stopped at its line and mended, %s', (language) => {
    const read = (text: string) => readText(text, { tables, language });
    const text = way[language], { reading, problems } = read(text);
    expect(problems).toEqual([]);
    const found = reading.findings.filter((f) => f.code === way.code && f.severity === 'stop');
    expect(found.map((f) => text.split('\n')[f.where.line! - 1]!.slice(0, way.at[language === 'en' ? 0 : 1].length)), JSON.stringify(reading.findings.map((f) => `${f.severity} ${f.code} ${f.where.line}`))).toEqual([way.at[language === 'en' ? 0 : 1]]);
    expect(found[0]!.remedy, 'has a remedy').toBeDefined();
    remedied(text, found[0]!, read);
  });
  it.each(['en', 'de'] as const)('is a drink again when each stop is mended in turn, %s', (language) => {
    let text = way[language];
    for (let turn = 0; turn < 8; turn++) {
      const { reading, problems } = readText(text, { tables, language }), stop = reading.findings.find((f) => f.severity === 'stop');
      expect(problems, text).toEqual([]);
      if (!stop) return;
      expect(stop.remedy, `${stop.code}\n${text}`).toBeDefined();
      text = spliced(text, stop.remedy!.splices);
    }
    expect.unreachable(`still stopped:\n${text}`);
  });
});
