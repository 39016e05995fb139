import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { drawBlock } from '../glass/ice.ts';
import { SIZE, run, textWidth } from '../pen/lettering.ts';
import { overlap, textBox, type Box, type Pad } from '../pen/pad.ts';
import type { Step } from '../pen/path.ts';
import { iceTint, tint, type Scheme } from '../pen/tint.ts';
import { figureShown } from '../pen/numbers.ts';
import { figureName, markOf } from '../figures/mark.ts';
import { drawAmount, drawHandle } from '../figures/handle.ts';
import type { HatchKey } from '../shapes.ts';
import { words } from '../words.ts';
import type { Arrangement, Hose, Placed, Written } from './board.ts';
import { figureOf, lineHeight } from './caption.ts';
import { drawCloth, drawClothSign } from './cloth.ts';
import { factsOf, showsIce, tellsOf, type Facts } from './facts.ts';
import { drawFall, heightAt, type Fall } from './fall.ts';
import type { Bought, Flow } from './flow.ts';
import { drawVessel, type Drawn } from './vessel.ts';

/** Boxes that a fall runs through, for what must not stand in it. */
const alongOf = (fall: Fall): Box[] => Array.from({ length: 25 }, (_, i): Box => {
  const x = fall.lip[0] + ((fall.land[0] - fall.lip[0]) * i) / 24, y = heightAt(fall, x) ?? fall.land[1], half = fall.width / 2 + 2;
  return { x: x - half, y: y - half, width: 2 * half, height: 2 * half };
});

/** Vessels with their captions, then what falls, is pressed and is written between them. */
export function drawUpstream(pad: Pad, flow: Flow, reading: Reading, frame: Frame, at: Arrangement, scheme: Scheme): void {
  const drawn = new Map<string, Drawn>(), poured = new Set(at.streams.map((s) => `${s.from}>${s.to}`));
  for (const placed of at.placed) drawn.set(placed.key, drawOne(pad, reading, placed, scheme, flow, poured));
  for (const stream of at.streams) {
    const giver = at.placed.find((p) => p.key === stream.from);
    pad.open({ id: `fall:${stream.from}>${stream.to}`, within: null, role: 'fall', name: words('aloud.fall', { amount: stream.amount, giver: giver?.prep?.name ?? flow.build.title, receiver: stream.to === 'glass' ? reading.glass?.name ?? '' : stream.to === 'build' ? flow.build.title : stream.to }) });
    const top = reading.glass?.layers.find((l) => l.kind === 'liquid');
    const fill = stream.into && giver?.prep == null ? (top === undefined ? 'paper' : tint(top.colour, { at: 'glass', scheme, turbidity: top.turbidity, strength: top.strength })) : tintOf(giver, scheme, stream.into);
    drawFall(pad, stream.fall, fill, stream.into);
    if (stream.amount !== '') drawAmount(pad, stream.grip, stream.label.x + 2, stream.label.y + 12, [run(stream.amount, stream.into ? SIZE.name : SIZE.body, 'ink', stream.into ? 600 : 500)], 'start', 18);
  }
  if (at.hose !== null) drawHose(pad, reading, frame, drawn.get(at.hose.from), at.hose, at, scheme);
  for (const [i, list] of at.written.entries()) drawWritten(pad, list, i, frame);
  if (at.raw.length > 0) drawRaw(pad, at.raw, frame, scheme);
}

function tintOf(placed: Placed | undefined, scheme: Scheme, strong: boolean): `#${string}` {
  const prep = placed?.prep?.reading;
  return tint(prep?.colour ?? '#f4f6f0', { at: strong ? 'glass' : 'upstream', scheme, turbidity: prep?.turbidity ?? 0, strength: prep?.figures['strength']?.value ?? null });
}

function drawOne(pad: Pad, reading: Reading, placed: Placed, scheme: Scheme, flow: Flow, poured: ReadonlySet<string>): Drawn {
  const { prep } = placed, id = placed.key;
  const first = reading.glass?.layers.find((l) => l.kind === 'liquid');
  const name = words('aloud.vessel', { letter: placed.caption.letter, name: prep?.name ?? flow.build.title, method: prep?.reading?.method ?? placed.vessel.kind, yield: prep?.reading == null ? '' : figureShown(prep.reading.yield), strength: prep?.reading?.figures['strength'] === undefined ? '' : `, ${figureShown(prep.reading.figures['strength'], 1)}` });
  const facts = prep?.reading == null ? [] : aloudOf(factsOf(prep.reading));
  pad.open({ id: `prep:${id}`, within: null, role: 'vessel', name: [name, ...facts].join('; '), ...(prep === null ? {} : { prep: prep.key, reading: `prep:${prep.key}` }) });
  pad.open({ id: `vessel:${id}`, within: `prep:${id}`, role: 'wall' });
  const turbidity = prep?.reading?.turbidity ?? 0, method = prep?.reading?.method ?? '';
  const fill = prep === null && first !== undefined ? tint(first.colour, { at: 'upstream', scheme, turbidity: first.turbidity, strength: first.strength }) : tintOf(placed, scheme, false);
  const hatch = method === 'gel' ? 'gel' as const : method === 'ice' || method === 'freeze' || (prep?.reading?.frozen !== undefined && showsIce(prep.reading.frozen)) ? 'ice' as const : turbidity >= 1 ? 'cloudy' as const : undefined;
  const gas = method === 'siphon foam' || placed.vessel.kind === 'siphon' || method === 'carbonate' ? gasHatch(prep?.reading?.gas?.pressure.value ?? (method === 'carbonate' ? 0 : Infinity)) : undefined;
  const drawn = drawVessel(pad, placed.vessel, placed.axis, placed.shelf, placed.k, { mL: placed.mL, fill, hatch, gas }, scheme);
  if (prep === null && flow.build.ice) drawStirringIce(pad, placed, drawn, scheme);
  if (prep?.reading != null && drawn.mLPerPx > 0) drawHandle(pad, { id: `prep:${prep.key}`, within: `prep:${id}`, name: prep.name, value: prep.reading.yield.value, unit: 'mL', perPx: drawn.mLPerPx }, { y: drawn.levelY, from: drawn.lipLeft, to: drawn.lipRight, tall: 24 });
  pad.open({ id: `vessel:${id}`, within: `prep:${id}`, role: 'wall' });
  if (prep?.reading?.cloth !== undefined && tellsOf(prep.reading.cloth)) drawCloth(pad, placed, drawn, prep.reading, scheme);
  drawCaption(pad, placed, id, poured, scheme);
  return drawn;
}

/** What presses and what stays, as it is said aloud. */
function aloudOf({ pressure, charged, caution, frozen, stays, held }: Facts): string[] {
  return [...[pressure, charged, caution, frozen].flatMap((text) => (text === null ? [] : [text])), ...(stays === null ? [] : [words('aloud.cloth', { lines: [stays, ...held].join(', ') })])];
}

/** Dots lie closer the more it presses: up to 6 bar, up to 10, over 10. */
export function gasHatch(bar: number): HatchKey { return bar <= 6 ? 'gas-low' : bar <= 10 ? 'gas-middle' : 'gas-high'; }

export function drawStirringIce(pad: Pad, placed: Pick<Placed, 'k' | 'axis' | 'shelf' | 'vessel'>, drawn: Pick<Drawn, 'levelY'>, scheme: Scheme): void {
  const { k, axis, shelf, vessel } = placed, edge = 24 * k, floor = shelf - vessel.base * k - 1;
  const inner = (vessel.profile[0]?.[1] ?? 40) * k - 1, fits = Math.max(1, Math.floor((2 * inner) / (edge * 1.08)));
  const top = Math.min(drawn.levelY - 10 * k, floor - 2 * edge);
  for (let row = 0; floor - (row + 1) * edge > top - edge * 0.6 && row < 4; row += 1) {
    const n = row === 0 ? fits : Math.max(1, fits - (floor - (row + 1) * edge < drawn.levelY ? 1 : 0)), pitch = (2 * inner - n * edge) / (n + 1);
    for (let i = 0; i < n; i += 1) drawBlock(pad, { x: axis - inner + pitch + i * (edge + pitch), y: floor - (row + 1) * edge, width: edge * 0.96, height: edge * 0.96, turn: (((row * 5 + i * 7) % 7) - 3) * Math.min(3, pitch * 0.6) }, false, iceTint(scheme, 'upstream'), true);
  }
}

function drawCaption(pad: Pad, placed: Placed, id: string, poured: ReadonlySet<string>, scheme: Scheme): void {
  const { caption, captionAt: box, prep } = placed;
  if (caption.letter !== '') letter(pad, box.x + 8.5, box.y + 9.5, caption.letter);
  if (caption.name.length > 0) pad.text(box.x + 24, box.y + 14, caption.name);
  let y = box.y + 17;
  for (const line of caption.lines) {
    if (line.from !== null && poured.has(`${line.from}>${id}`)) continue;
    y += lineHeight(line);
    const figure = line.figure === null || prep?.reading == null ? undefined : figureOf(prep.reading, line.figure), lead = line.sign === true ? 24 : 0;
    if (lead > 0) drawClothSign(pad, box.x, y, scheme);
    if (figure !== undefined && line.figure !== null) {
      const name = line.figure;
      pad.open({ id: `figure:${id}:${name}`, within: `prep:${id}`, role: 'figure', name: figureName(prep?.name ?? '', name, figure), figure: markOf(`prep:${prep?.key ?? ''}`, name, figure) });
      pad.target({ x: box.x + lead - 3, y: y - 11.5, width: Math.max(24, textWidth(line.runs[0]?.text ?? '', SIZE.small) + 6), height: 15 });
      pad.text(box.x + lead, y, line.runs);
      pad.open({ id: `vessel:${id}`, within: `prep:${id}`, role: 'wall' });
    } else if (line.giver !== null) {
      letter(pad, box.x + 8.5, y - 4.5, line.giver);
      drawAmount(pad, line.grip, box.x + 24, y, line.runs, 'start', 18);
      pad.open({ id: `vessel:${id}`, within: `prep:${id}`, role: 'wall' });
    } else pad.text(box.x + lead, y, line.runs);
  }
}

export function letter(pad: Pad, x: number, y: number, text: string): void {
  pad.circle('letter', x, y, 8.5, { stroke: 'ink', width: 1.25, fill: 'sheet' });
  pad.text(x, y + 4.2, [run(text, SIZE.small, 'ink', 600)], 'middle');
}

/** A measure in a jigger: a cone on a short foot, with the giver's letter at its left. */
function drawWritten(pad: Pad, list: Written, index: number, frame: Frame): void {
  pad.open({ id: `written:${index}`, within: null, role: 'fall' });
  let y = list.box.y;
  const right = list.box.x + list.box.width;
  const columns = list.columns ?? 1, rows = Math.ceil(list.lines.length / columns), pitch = list.box.width / columns + 7;
  for (const [i, line] of list.lines.entries()) {
    const from = list.box.x + Math.floor(i / rows) * pitch;
    if (columns > 1 && i % rows === 0) y = list.box.y;
    if (line.giver === null || frame.phone) {
      y += frame.phone ? 18 : 15;
      const x = list.anchor === 'end' ? right - (line.giver === null ? 0 : 22) : from;
      drawAmount(pad, line.grip, x, y - 3, [run(line.text, SIZE.small, line.giver === null ? 'ink2' : 'ink', line.giver === null ? 400 : 500)], list.anchor, frame.phone ? 18 : 15);
      pad.open({ id: `written:${index}`, within: null, role: 'fall' });
      if (line.giver !== null) letter(pad, right - 9, y - 7, line.giver);
      continue;
    }
    y += 24;
    const width = textWidth(line.text, SIZE.small, 500), x = list.anchor === 'end' ? right - width - 48 : from, j = x + 33, top = y - 20;
    letter(pad, x + 8.5, y - 12, line.giver);
    pad.line('leader', x + 17, y - 12, j - 6, y - 12);
    pad.path('level', [['M', j - 8, top], ['L', j - 4.2, top + 14], ['L', j + 4.2, top + 14], ['L', j + 8, top]], { stroke: 'ink2', width: 1 });
    pad.path('level', [['M', j - 4.2, top + 14], ['L', j - 6, top + 19], ['L', j + 6, top + 19], ['L', j + 4.2, top + 14]], { stroke: 'ink2', width: 1 });
    drawAmount(pad, line.grip, x + 48, y - 8, [run(line.text, SIZE.small, 'ink', 500)], 'start', 22);
    pad.open({ id: `written:${index}`, within: null, role: 'fall' });
  }
  if (list.leader === undefined) return;
  const [from, to] = list.leader;
  pad.line('leader', from[0], from[1], to[0], to[1]);
  pad.circle('dot', to[0], to[1], 2.2);
}

/** A rubber tube with two walls, from the nozzle to over the rim; foam leaves it as a rope of even width. */
function drawHose(pad: Pad, reading: Reading, frame: Frame, from: Drawn | undefined, { amount, grip }: Hose, at: Arrangement, scheme: Scheme): void {
  if (from === undefined || frame.washline === null) return;
  const placed = at.placed.find((p) => p.key === at.hose?.from);
  pad.open({ id: 'hose', within: null, role: 'fall', name: words('aloud.fall', { amount, giver: placed?.prep?.name ?? '', receiver: reading.glass?.name ?? '' }) });
  const [x, y] = from.nozzle, high = y < frame.brim - 40;
  const end = high ? Math.max(frame.left + 24, x + 17) : Math.min(frame.left + 46, frame.stand.axis - 20), over = high ? y - 8 : frame.brim - 34, tip = high ? Math.min(frame.brim + 4, y + 90) : frame.brim + 13;
  const s = Math.max(20, frame.left - 34 - x);
  const hose: Step[] = high ? [['M', x, y], ['C', x + 9, y - 2, end, over, end, y + 22], ['L', end, tip]] : [['M', x, y], ['C', x + s * 0.75, y + 2, x + s * 0.34, over, x + s * 1.12, over], ['C', end - 6, over, end, over + 14, end, tip]];
  pad.path('hose', hose, { stroke: 'ink', width: frame.phone ? 7 : 9.5 });
  pad.path('hose', hose, { stroke: 'wall', width: frame.phone ? 4.8 : 6.9 });
  const foam = reading.glass?.layers.find((l) => l.kind === 'foam');
  // What does not set runs out as the liquid it is.
  const fill = foam === undefined ? tintOf(placed, scheme, true) : tint(foam.colour, { at: 'glass', scheme, foam: true, turbidity: foam.turbidity });
  pad.path('hose', hose, { stroke: fill, width: frame.phone ? 2.8 : 4.3 });
  if (frame.washline > tip + 4) {
    pad.path('fill', [['M', end - 3.8, tip], ['L', end + 3.8, tip], ['L', end + 3.8, frame.washline], ['L', end - 3.8, frame.washline], ['Z']], { fill, hatch: foam === undefined ? undefined : 'foam', stroke: 'ink', width: 0.9 });
    pad.path('arrowhead', [['M', end, frame.washline - 1], ['L', end - 1.8, frame.washline - 9], ['L', end + 1.8, frame.washline - 9], ['Z']]);
  }
  if (amount === '') return;
  const level = frame.washline;
  // The amount stands beside the rope, or over the crest where a stream passes there; where other words stand already it is not lettered.
  const beside = { x: end + 12, y: Math.min(frame.washline - 12, tip + 16) }, width = textWidth(amount, SIZE.body, 500), said = [run(amount, SIZE.body, 'ink', 500)];
  const crossed = at.streams.some(({ fall }) => [0, 0.5, 1].some((u) => { const v = heightAt(fall, beside.x + width * u); return v !== null && v > beside.y - 26 && v < beside.y + 14; }));
  const crest = [frame.left - 16, over - 13, 'middle'] as const;
  const spots = [...(crossed ? [crest] : [[beside.x, beside.y, 'start'] as const]), [beside.x, beside.y + 18, 'start'], [beside.x, beside.y - 18, 'start'], crest, [x + 12, y + 24, 'start'], [x + 30, y + 6, 'start']] as const;
  const others = [...pad.boxes.map(({ box }) => box), ...at.placed.map((one) => one.captionAt), ...at.written.map((one) => one.box), ...at.streams.flatMap((one) => [one.label, ...alongOf(one.fall)])];
  const spot = spots.find(([x, y, anchor]) => { const box = textBox(x, y, said, anchor); return box.x > 4 && box.y > 4 && (box.y + box.height < level - 5 || box.y > level + 7) && box.x + box.width < frame.width - 4 && !others.some((other) => overlap(other, box, 2)); });
  if (spot !== undefined) drawAmount(pad, grip, spot[0], spot[1], said, spot[2], 18);
}

/** Up to four bought measures fall from above, cut off level. */
function drawRaw(pad: Pad, raw: readonly Bought[], frame: Frame, scheme: Scheme): void {
  const level = frame.washline;
  if (level === null) return;
  const { axis } = frame.stand, half = (frame.right - frame.left) / 2, lowest = Math.max(40, Math.min(frame.brim, level) - 80);
  pad.open({ id: 'raw', within: null, role: 'fall' });
  const fill = tint('#f6f8f4', { at: 'glass', scheme }), n = raw.length;
  for (const [i, { text, grip }] of raw.entries()) {
    const x = n === 1 ? axis : axis - half * 0.62 + (i * half * 1.24) / (n - 1);
    // Inner streams begin higher, so that their words stand over the outer ones.
    const left = i < n / 2, top = lowest - 22 * (left ? i : n - 1 - i);
    pad.path('fall', [['M', x - 5, top], ['L', x + 5, top], ['L', x + 3, level], ['L', x - 3, level], ['Z']], { fill });
    pad.path('arrowhead', [['M', x, level - 1], ['L', x - 1.8, level - 10], ['L', x + 1.8, level - 10], ['Z']]);
    drawAmount(pad, grip, left ? x - 11 : x + 11, top + 10, [run(text, SIZE.body, 'ink', 500)], left ? 'end' : 'start', 18);
    pad.open({ id: 'raw', within: null, role: 'fall' });
  }
}
