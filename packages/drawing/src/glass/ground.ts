import type { Pad } from '../pen/pad.ts';
import type { Step } from '../pen/path.ts';
import type { Frame } from '../frame.ts';
import type { Scheme } from '../pen/tint.ts';

/** The net of millimetres behind the glass; on the dark sheet ticks of 10 mm at the upper and right edges. */
export function drawGround(pad: Pad, frame: Frame, scheme: Scheme): void {
  pad.open({ id: 'ground', within: null, role: 'ground' });
  const { stand, width, height } = frame, step = 5 * stand.scale;
  if (scheme === 'dark') {
    const ticks: Step[] = [];
    for (let i = Math.ceil(-stand.axis / (2 * step)); stand.axis + i * 2 * step < width; i += 1) ticks.push(['M', stand.axis + i * 2 * step, 0], ['L', stand.axis + i * 2 * step, 6]);
    for (let y = stand.floor % (2 * step); y < height; y += 2 * step) ticks.push(['M', width, y], ['L', width - 6, y]);
    pad.path('net', ticks, { stroke: 'ink4', width: 1 });
    return;
  }
  const top = frame.brim - 6 * stand.scale, left = frame.phone ? 0 : frame.left - 74;
  const fine: Step[] = [], coarse: Step[] = [];
  const put = (i: number, steps: Step[]): void => { (i % 2 === 0 ? coarse : fine).push(...steps); };
  for (let i = Math.ceil((left - stand.axis) / step); stand.axis + i * step <= width; i += 1) put(i, [['M', stand.axis + i * step, top], ['L', stand.axis + i * step, height]]);
  for (let i = Math.ceil((top - stand.floor) / step); stand.floor + i * step <= height; i += 1) put(i, [['M', left, stand.floor + i * step], ['L', width, stand.floor + i * step]]);
  pad.path('net', fine, { stroke: 'ground', width: 0.6 });
  pad.path('net', coarse, { stroke: 'ground2', width: 0.7 });
}
