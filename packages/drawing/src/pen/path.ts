/** Path data as numbers, so that one scaling to millimetres serves all of it. */
export type Step = readonly ['M' | 'L', number, number] | readonly ['C', number, number, number, number, number, number] | readonly ['Q', number, number, number, number] | readonly ['Z'];
export type Point = readonly [number, number];

export function polygon(points: readonly Point[], close = true): Step[] {
  const steps: Step[] = points.map(([x, y], i) => [i === 0 ? 'M' : 'L', x, y] as const);
  if (close) steps.push(['Z']);
  return steps;
}

export function line(x1: number, y1: number, x2: number, y2: number): Step[] {
  return [['M', x1, y1], ['L', x2, y2]];
}

export function rect(x: number, y: number, width: number, height: number): Step[] {
  return polygon([[x, y], [x + width, y], [x + width, y + height], [x, y + height]]);
}

/** A rectangle with round corners, turned about its middle. */
export function piece(x: number, y: number, width: number, height: number, radius: number, degrees = 0): Step[] {
  const r = Math.min(radius, width / 2, height / 2);
  const corners: Step[] = [
    ['M', x + r, y], ['L', x + width - r, y], ['Q', x + width, y, x + width, y + r],
    ['L', x + width, y + height - r], ['Q', x + width, y + height, x + width - r, y + height],
    ['L', x + r, y + height], ['Q', x, y + height, x, y + height - r],
    ['L', x, y + r], ['Q', x, y, x + r, y], ['Z'],
  ];
  return degrees === 0 ? corners : turned(corners, x + width / 2, y + height / 2, degrees);
}

export function turned(steps: readonly Step[], cx: number, cy: number, degrees: number): Step[] {
  const c = Math.cos((degrees * Math.PI) / 180), s = Math.sin((degrees * Math.PI) / 180);
  return mapped(steps, (x, y) => [cx + (x - cx) * c - (y - cy) * s, cy + (x - cx) * s + (y - cy) * c]);
}

export function mapped(steps: readonly Step[], to: (x: number, y: number) => Point): Step[] {
  return steps.map((step) => {
    const out: (string | number)[] = [step[0]];
    for (let i = 1; i + 1 < step.length; i += 2) out.push(...to(step[i] as number, step[i + 1] as number));
    return out as unknown as Step;
  });
}

/** Path data, every number times `scale`, to a hundredth: nothing a screen or a printer shows. */
export function written(steps: readonly Step[], scale = 1): string {
  let out = '';
  for (const step of steps) {
    out += step[0];
    for (let i = 1; i < step.length; i += 1) out += (i === 1 ? '' : ' ') + Math.round((step[i] as number) * scale * 100) / 100;
  }
  return out;
}
