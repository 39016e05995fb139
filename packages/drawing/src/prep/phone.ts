import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { overlap, type Box } from '../pen/pad.ts';
import { SIZE, cut, textWidth } from '../pen/lettering.ts';
import { Board, vesselOf, type Arrangement, type Placed } from './board.ts';
import type { Flow, FlowPrep } from './flow.ts';
import { levelOf, vesselFor, vesselSize, type Vessel } from './vessel.ts';

/**
 * On a phone the vessels stand small over the glass: what is pressed at the left, the vessel the drink is mixed in between its two
 * largest givers, the rest in a row. Letters stand under them; what goes where is a list at the right.
 */
export function arrangePhone(flow: Flow, reading: Reading, frame: Frame, k: number, said: readonly Box[]): Omit<Arrangement, 'as'> {
  const board = new Board(flow, reading, frame, k, []);
  const takes = [...flow.build.takes, ...flow.glass.takes].map((t) => ({ giver: flow.preps.find((p) => p.key === t.from)?.letter ?? null, text: t.amount, grip: t.grip }));
  const all = [...takes, ...[...flow.build.bought, ...flow.glass.bought].map((one) => ({ giver: null, ...one }))];
  const lines = all.slice(0, 7).map((l) => ({ ...l, text: cut(l.text, 104, SIZE.small) }));
  const width = lines.length === 0 ? 0 : Math.max(...lines.map((l) => textWidth(l.text, SIZE.small) + (l.giver === null ? 0 : 22)));
  if (lines.length > 0) board.written.push({ box: { x: frame.width - 12 - width, y: 8, width, height: lines.length * 18 }, lines, anchor: 'end' });

  const foot = frame.brim - 46;
  let x = 10;
  const stand = (key: string, prep: FlowPrep | null, vessel: Vessel, mL: number | null, letter: string, shelf: number): Placed => {
    const size = vesselSize(vessel, k), lead = vessel.kind === 'siphon' ? 13 * k : 0, axis = x + lead + size.width / 2;
    const placed: Placed = { key, prep, vessel, axis, shelf, k, box: { x, y: shelf - size.height, width: size.width + lead, height: size.height }, caption: { letter, name: [], lines: [], width: 18, height: 20 }, captionAt: { x: axis - 8.5, y: shelf + 5, width: 18, height: 20 }, mL };
    board.placed.push(placed);
    if (shelf - size.height < 6) board.overlaps += 1;
    x += size.width + lead + 12;
    return placed;
  };
  const own = (prep: FlowPrep, shelf: number): Placed => { const { vessel, mL } = vesselOf(prep); return stand(prep.key, prep, vessel, mL, prep.letter, shelf); };
  const pressed = flow.glass.takes.map((t) => flow.preps.find((p) => p.key === t.from)).filter((p) => p?.reading?.vessel === 'siphon')[0];
  const poured = [...flow.build.takes].sort((a, b) => (b.mL ?? 0) - (a.mL ?? 0)).map((t) => flow.preps.find((p) => p.key === t.from)).filter((p) => p !== undefined && p !== pressed);
  const [one, two] = poured;
  const rest = flow.preps.filter((p) => p !== pressed && p !== one && p !== two);
  if (pressed !== undefined) {
    own(pressed, foot - 4);
    board.hose = { from: pressed.key, amount: '' };
    x += 12;
  }
  for (const prep of flow.build.vessel === null ? flow.preps.filter((p) => p !== pressed).slice(0, 4) : rest.slice(0, 2)) if (x + vesselSize(vesselOf(prep).vessel, k).width + (flow.build.vessel === null ? 0 : 150) < frame.width - width - 16) own(prep, foot - 66);
  if (flow.build.vessel !== null) {
    const { stage } = flow.build, volume = stage?.figures['volume'] ?? reading.figures['volume'];
    const left = one === undefined ? null : own(one, foot - 66);
    if (left !== null) x -= 4;
    const vessel = vesselFor(flow.build.vessel, (volume?.value ?? 150) + 250), size = vesselSize(vessel, k);
    const mixed = stand('build', null, vessel, volume?.value ?? null, flow.build.letter, foot);
    const lip = foot - size.height, target = foot - vessel.base * k - Math.max(8, levelOf(vessel, volume?.value ?? 0) * k);
    if (left !== null && one !== undefined) board.pour(left, { key: 'build', near: mixed.box.x, lip, land: mixed.axis - size.width * 0.2, level: target }, { from: one.key, amount: '', mL: 30 }, 1, false);
    if (two !== undefined) {
      x += 6;
      const right = own(two, foot - 66 - 14);
      board.pour(right, { key: 'build', near: mixed.box.x + mixed.box.width, lip, land: mixed.axis + size.width * 0.16, level: target }, { from: two.key, amount: '', mL: 30 }, -1, false);
    }
    const line = frame.washline ?? frame.brim + 40, land = Math.min(mixed.box.x + mixed.box.width + 30, frame.right - 34);
    board.pour(mixed, { key: 'glass', near: mixed.box.x + mixed.box.width + 9, lip: line, land, level: line }, { from: 'build', amount: '', mL: (volume?.value ?? 150) * 0.4 }, 1, true);
  }
  if (x + width > frame.width - 6) board.overlaps += 1;
  unletter(board, [...said, ...board.written.map(({ box }) => box)]);
  return { k, rowK: null, placed: board.placed, streams: board.streams, hose: board.hose, written: board.written, raw: [], overlaps: board.overlaps, missed: 0 };
}

/** A letter that has no room of its own is left out, and counts against the scale. */
function unletter(board: Board, others: readonly Box[]): void {
  const kept: Box[] = [];
  for (const [i, placed] of board.placed.entries()) {
    const { x, y, width, height } = placed.captionAt;
    if (x >= 0 && y >= 0 && x + width <= board.frame.width && y + height <= board.frame.height && ![...others, ...kept].some((other) => overlap(other, placed.captionAt))) kept.push(placed.captionAt);
    else { board.placed[i] = { ...placed, caption: { ...placed.caption, letter: '' } }; board.overlaps += 1; }
  }
}
