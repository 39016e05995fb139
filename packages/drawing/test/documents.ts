import type { Document, Line, Section } from '@washline/engine';

const span = (from: number, to: number) => ({ from, to });

/** Builds a document whose lines are measures and steps, with true spans in its text. */
export class Sheet {
  text = '';
  private readonly sections: Section[] = [];

  measure(amount: number, unit: string, name: string, prep?: string): Line {
    const from = this.text.length, number = String(amount);
    this.text += `${number} ${unit} ${name}\n`;
    const whole = span(from, this.text.length - 1);
    return {
      path: [], line: this.text.split('\n').length - 1, span: whole, text: `${number} ${unit} ${name}`, kind: 'measure',
      actions: [{
        kind: 'measure', path: [], span: whole, optional: false, treatments: [],
        amount: { low: amount, high: amount, unit, number: span(from, from + number.length), unitSpan: span(from + number.length + 1, from + number.length + 1 + unit.length) },
        thing: { words: name, span: whole, link: prep === undefined ? { kind: 'larder', id: name, assumed: false, others: [] } : { kind: 'prep', prep } },
      }],
    };
  }

  step(verb: string, text: string, seconds?: number): Line {
    const from = this.text.length;
    this.text += `${text}\n`;
    const whole = span(from, this.text.length - 1);
    return { path: [], line: 1, span: whole, text, kind: 'step', actions: [{ kind: 'step', verb, path: [], span: whole, flags: [], ...(seconds === undefined ? {} : { seconds: { low: seconds, high: seconds, span: whole } }) }] };
  }

  section(kind: 'prep' | 'build', name: string, lines: readonly Line[]): this {
    this.sections.push({ kind, name, key: name.toLowerCase(), variant: null, method: 'mix', methodWritten: false, heading: null, headingLine: null, lines });
    return this;
  }

  done(): Document { return { text: this.text, name: '', head: {}, serves: 1, sections: this.sections, variants: [], problems: [], cut: false }; }
}

/** The clear colada: two preps into the stirring glass, a foam from its siphon. */
export function clearColada(): Document {
  const s = new Sheet();
  s.section('prep', 'Coconut rum', [s.measure(300, 'ml', 'white rum')]);
  s.section('prep', 'Clear pineapple', [s.measure(300, 'ml', 'pineapple juice')]);
  s.section('prep', 'Pineapple cloud', [s.measure(230, 'ml', 'pineapple juice'), s.measure(60, 'ml', 'coconut rum', 'coconut rum'), s.measure(15, 'ml', 'simple syrup')]);
  s.section('build', '', [
    s.measure(60, 'ml', 'coconut rum', 'coconut rum'), s.measure(45, 'ml', 'clear pineapple', 'clear pineapple'), s.measure(10, 'ml', 'lime acid'), s.measure(10, 'ml', 'simple syrup'),
    s.step('stir', 'stir 25 s over 200 g cubes at -5 °C', 25), s.measure(15, 'g', 'pineapple cloud', 'pineapple cloud'),
  ]);
  return s.done();
}
