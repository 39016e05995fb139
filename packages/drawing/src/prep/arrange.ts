import type { Reading } from '../reading.ts';
import { glassRoom, lineOf, steadyLine, type Frame } from '../frame.ts';
import { overlap, type Box } from '../pen/pad.ts';
import type { Arranged } from '../shapes.ts';
import { Board, vesselOf, type Arrangement, type Detail, type Placed } from './board.ts';
import { buildCaption, type Caption } from './caption.ts';
import { tellsOf } from './facts.ts';
import { streamWidth } from './fall.ts';
import { FOLDS, MAY, foldedIn, standRow } from './fold.ts';
import type { Flow, FlowPrep, Pour } from './flow.ts';
import { arrangePhone } from './phone.ts';
import { standRest } from './rest.ts';
import { volumeShown } from '../pen/numbers.ts';
import { levelOf, vesselFor, vesselSize, type Vessel } from './vessel.ts';
import { writeAtReceivers } from './written.ts';

const STEPS = [2, 2.5, 3, 3.5, 4, 5, 6, 8, 10];

/** More words are not worth vessels that are smaller than this, against those with fewer. */
const SMALLER = 0.6;

/**
 * Places for every vessel upstream of the glass at one scale: the largest at which nothing touches, the words that stand already (`said`) among it; as they were
 * a moment ago (`like`), smaller if need be, where that loses no more than it did.
 */
export function arrange(flow: Flow, reading: Reading, frame: Frame, said: readonly Box[], like?: Arranged, hasty = false): Arrangement {
  const told = flow.preps.some((prep) => prep.reading?.gas !== undefined || (prep.reading?.cloth !== undefined && tellsOf(prep.reading.cloth)));
  const folds = frame.phone || flow.preps.length < MAY ? [] : foldedIn(flow), at = (detail: Detail, row: readonly FlowPrep[]): Arrangement => largest(flow, reading, frame, said, detail, row);
  if (like !== undefined && like.over > 0 && like.of === listed(flow) && (!like.folded || folds.length > 0)) {
    const again = nearby(like, hasty, (over, limit) => standAt(flow, reading, frame, said, over, limit, like.detail, like.folded ? folds : []));
    if (again !== null) return again;
  }
  const fold = (): Arrangement => { const row = at('all', folds); return row.as.cost <= WELL ? row : asMuch(flow, row, (detail) => at(detail, folds)); };
  if (folds.length > 0 && flow.preps.length >= FOLDS) return fold();
  const whole = at(told ? 'all' : 'none', []);
  if (folds.length > 0 && whole.as.cost > 0) {
    const folded = fold();
    if (whole.as.cost > folded.as.cost) return folded;
  }
  if (!told || frame.phone || (whole.as.cost === 0 && whole.k >= SMALLER * Math.min(1.5, frame.stand.scale / 2))) return whole;
  return asMuch(flow, whole, (detail) => at(detail, []));
}

/** As they stood, else at the largest smaller scale at which no more is lost; else where least is, if there is no time (`hasty`), or null, and all is looked for anew. */
function nearby(like: Arranged, hasty: boolean, at: (over: number, limit: number) => Arrangement | null): Arrangement | null {
  let best: Arrangement | null = null;
  for (const over of [like.over, ...STEPS.filter((n) => n > like.over)]) {
    const tried = at(over, best?.as.cost ?? Infinity);
    if (tried === null) continue;
    if (tried.as.cost <= like.cost) return tried;
    if (best === null || tried.as.cost < best.as.cost) best = tried;
  }
  return hasty ? best : null;
}

/** As much told as does not cost a fall or a much smaller scale, `whole` being with all of it; what presses is told in any case, however small its vessel. */
function asMuch(flow: Flow, whole: Arrangement, at: (detail: Detail) => Arrangement): Arrangement {
  const plain = at('none'), good = (a: Arrangement): boolean => a.as.cost <= plain.as.cost && a.k >= SMALLER * plain.k;
  if (good(whole)) return whole;
  const few = at('figures');
  return good(few) || flow.preps.some((prep) => prep.reading?.gas !== undefined) ? few : plain;
}

/** With a row a drawing in which one fall finds no way is not made smaller for it. */
const WELL = 2;

function largest(flow: Flow, reading: Reading, frame: Frame, said: readonly Box[], detail: Detail, folds: readonly FlowPrep[] = []): Arrangement {
  let best: Arrangement | null = null;
  for (const n of STEPS) {
    const tried = standAt(flow, reading, frame, said, n, best === null ? Infinity : best.as.cost, detail, folds);
    if (tried === null) continue;
    // A fall that finds no way costs less than two things in one place, and more than a somewhat smaller scale.
    if (best === null || tried.as.cost < best.as.cost - 1e-9) best = tried;
    if (tried.as.cost <= (folds.length > 0 ? WELL : 0)) break;
  }
  return best ?? { k: 1, rowK: null, placed: [], streams: [], hose: null, written: [], raw: [], overlaps: 0, missed: 0, as: { detail, over: 0, folded: false, cost: 0, of: listed(flow) } };
}

/** Everything at the glass's scale over this; null where vessels would be larger than they are. */
function standAt(flow: Flow, reading: Reading, frame: Frame, said: readonly Box[], over: number, limit: number, detail: Detail, folds: readonly FlowPrep[]): Arrangement | null {
  const k = frame.stand.scale / over;
  if (k > 1.5) return null;
  const stood = frame.phone ? arrangePhone(flow, reading, frame, k, said) : arrangeAt(flow, reading, frame, k, said, limit, detail, folds);
  return { ...stood, as: { detail, over, folded: folds.length > 0, cost: cost(stood), of: listed(flow) } };
}

const listed = (flow: Flow): string => flow.preps.map((prep) => prep.key).join('|');

function cost(a: Omit<Arrangement, 'as'>): number { return a.overlaps * 10 + a.missed * 2 + (a.k < 0.45 ? 3 : 0); }

function obstacles(frame: Frame, folded: boolean): Box[] {
  const { stand, left, right, brim } = frame;
  const y = lineOf(frame);
  return [
    ...glassRoom(frame),
    { x: right, y: Math.min(y - 70, y > frame.height - 330 ? 140 : y), width: frame.width - right, height: frame.height },
    { x: 0, y: y - 8, width: left, height: 20 },
    { x: 0, y: frame.height - (folded ? 52 : 34), width: 150, height: 52 },
    { x: Math.max(frame.dims - 40, 150), y: frame.height - 56, width: frame.width, height: 56 },
    { x: stand.axis + (right - stand.axis) * 0.35, y: brim - 92, width: (right - stand.axis) * 0.65, height: 92 },
    ...(frame.head === null ? [] : [frame.head]),
  ];
}

/** Where a siphon's hose comes over the rim of the glass. */
const crestOf = ({ left, brim }: Frame): Box => ({ x: left - 80, y: brim - 46, width: 136, height: 50 });

function arrangeAt(flow: Flow, reading: Reading, frame: Frame, k: number, said: readonly Box[], limit: number, detail: Detail, folds: readonly FlowPrep[]): Omit<Arrangement, 'as'> {
  const board = new Board(flow, reading, frame, k, [...obstacles(frame, folds.length > 0).filter((_, i) => i !== 6 || (reading.glass?.garnish.length ?? 0) > 0), ...said], detail);
  const { stand } = frame, line = lineOf(frame), steady = steadyLine(frame);
  const waiting = new Map(flow.preps.map((p) => [p.key, p]));
  const biggest = (pours: readonly Pour[]): Pour[] => [...pours].filter((p) => waiting.has(p.from)).sort((a, b) => (b.mL ?? 0) - (a.mL ?? 0));
  const pressed = biggest(flow.glass.takes).filter((t) => waiting.get(t.from)?.reading?.vessel === 'siphon');
  const row = folds.length === 0 ? null : standRow(board, folds, pressed.length === 0 ? null : crestOf(frame));
  board.folded = row !== null;
  for (const prep of folds) waiting.delete(prep.key);
  for (const t of pressed) waiting.delete(t.from);

  // The vessel the drink is mixed in, and its fall into the glass.
  const receivers: { key: string; placed: Placed }[] = [];
  let free: readonly Pour[] = [];
  if (flow.build.vessel !== null) {
    const { stage } = flow.build;
    const volume = stage?.figures['volume'] ?? reading.figures['volume'];
    const vessel = vesselFor(flow.build.vessel, (volume?.value ?? 150) + 250), size = vesselSize(vessel, k);
    const ice = flow.build.ice ? (stage?.figures['ice_left']?.value ?? 0) / 0.917 : 0;
    // It stands by the glass, not by the line: when the level moves it stays, with all that stands above it.
    const usual = frame.brim + (stand.floor - frame.brim) * 0.15;
    const shelf = Math.min(steady - 20, usual - 20, frame.brim - 46 + size.height);
    const mL = volume === undefined ? null : volume.value + ice;
    const caption = buildCaption(flow.build);
    const axis = frame.left - 80 - size.width / 2;
    const mixed = board.put(null, 'build', vessel, mL, axis, shelf, caption, [])
      ?? putWithCaptionAt(board, 'build', vessel, mL, axis, shelf, caption, overTheFall(axis + size.width / 2 + 8, shelf - size.height, streamWidth(volume?.value ?? 150, true), caption, { x: stand.axis - (stand.axis - frame.left) * 0.12, y: line }), [...said, ...board.placed.flatMap((p) => [p.box, p.captionAt])]);
    if (mixed !== null) {
      const level = line, width = streamWidth(volume?.value ?? 150, true);
      const land = stand.axis - (stand.axis - frame.left) * 0.12;
      if (!board.pour(mixed, { key: 'glass', near: frame.left, lip: frame.brim, land, level }, { from: 'build', amount: volume === undefined ? '' : volumeShown(volume.value), mL: volume?.value ?? 150 }, 1, true)) board.overlaps += 1;
      receivers.push({ key: 'build', placed: mixed });
      const givers = biggest(flow.build.takes);
      free = row === null ? givers : flow.build.takes;
      const one = givers[0], two = givers[1];
      const lip = shelf - size.height, floor = shelf - vessel.base * k, target = Math.max(lip + size.height * 0.45, floor - levelOf(vessel, mL ?? 0) * k);
      if (one !== undefined) placeDonor(board, waiting, one, mixed, { key: 'build', near: axis - size.width / 2, lip, land: axis - size.width * 0.2, level: target }, 1, receivers, 0);
      if (two !== undefined) placeDonor(board, waiting, two, mixed, { key: 'build', near: axis + size.width / 2, lip, land: axis + size.width * 0.12, level: target }, -1, receivers, width + caption.height - 22);
    }
  } else {
    const givers = biggest(flow.glass.takes);
    free = givers;
    const one = givers[0];
    if (one !== undefined) {
      const prep = waiting.get(one.from) as FlowPrep, { vessel, mL } = vesselOf(prep), size = vesselSize(vessel, k);
      const axis = frame.left - 64 - size.width / 2, shelf = Math.min(steady - 64, frame.brim - 54 + size.height);
      const donor = board.put(prep, prep.key, vessel, mL, axis, shelf, board.caption(prep), ['left', 'under-left', 'under']);
      if (donor !== null) {
        waiting.delete(prep.key);
        receivers.push({ key: prep.key, placed: donor });
        board.pour(donor, { key: 'glass', near: frame.left, lip: frame.brim, land: frame.left + (stand.axis - frame.left) * 0.7, level: line }, one, 1, true);
      }
    }
  }
  // Up the stair: what goes into a donor stands one step further left and up.
  for (let i = flow.build.vessel === null ? 0 : 1; i < receivers.length; i += 1) {
    const { key, placed } = receivers[i] as { key: string; placed: Placed };
    const give = biggest(placed.prep?.takes ?? [])[0];
    if (give === undefined) continue;
    const size = vesselSize(placed.vessel, k), lip = placed.shelf - size.height;
    placeDonor(board, waiting, give, placed, { key, near: placed.axis - size.width / 2, lip, land: placed.axis - size.width * 0.15, level: placed.shelf - (placed.vessel.base + levelOf(placed.vessel, placed.mL ?? 0)) * k }, 1, receivers, 0);
  }
  // Only what is under pressure rises: the siphon stands below the line beside the glass.
  let right = frame.left - 92;
  for (const [i, take] of pressed.entries()) {
    const prep = flow.preps.find((p) => p.key === take.from) as FlowPrep, { vessel, mL } = vesselOf(prep), size = vesselSize(vessel, k);
    const shelf = Math.min(steady + 30 + size.height, frame.height - 74);
    const placed = board.put(prep, prep.key, vessel, mL, right - size.width / 2, shelf, board.caption(prep), ['under-left', 'under', 'left']);
    if (placed === null) { board.missed += 2; waiting.set(prep.key, prep); continue; }
    if (i === 0) { board.hose = { from: prep.key, amount: take.amount, grip: take.grip }; board.poured.add(`${prep.key}>glass`); }
    right = Math.min(placed.box.x, placed.captionAt.x) - 30;
  }
  if (row !== null && board.hose !== null) board.taken.add(crestOf(frame));
  // What is bought stands in words at the vessel that takes it; letters there for what could not fall.
  writeAtReceivers(board, free);
  // What is already worse than another scale need not be finished.
  if (board.overlaps * 10 + board.missed * 2 < limit) standRest(board, [...waiting.values()]);
  else board.overlaps += waiting.size + 1;
  const raw = flow.preps.length === 0 && flow.build.vessel === null ? flow.glass.bought.slice(0, 4) : [];
  return { k, rowK: row?.k ?? null, placed: board.placed, streams: board.streams, hose: board.hose, written: board.written, raw, overlaps: board.overlaps, missed: board.missed };
}

/** Where the words of the mixing vessel stand: over its fall; where the drawing ends above, beyond the fall at that height. */
function overTheFall(lip: number, top: number, width: number, caption: Caption, land: { readonly x: number; readonly y: number }): { readonly x: number; readonly y: number } {
  const y = top - width - 5 - caption.height;
  if (y >= 10) return { x: lip, y };
  const below = 10 + caption.height - top + width / 2;
  const reach = below > 0 && land.y > top ? (land.x - lip) * Math.sqrt(Math.min(1, below / (land.y - top))) + width : 0;
  return { x: lip + reach + 6, y: 10 };
}

function putWithCaptionAt(board: Board, key: string, vessel: Vessel, mL: number | null, axis: number, shelf: number, caption: Caption, at: { readonly x: number; readonly y: number }, said: readonly Box[]): Placed | null {
  const size = vesselSize(vessel, board.k), box = { x: axis - size.width / 2, y: shelf - size.height, width: size.width, height: size.height };
  const spot: Box = { x: at.x, y: Math.max(10, at.y), width: caption.width, height: caption.height };
  if (!board.free(box) || said.some((other) => overlap(other, spot))) { board.overlaps += 1; return null; }
  const placed: Placed = { key, prep: null, vessel, axis, shelf, k: board.k, box, caption, captionAt: spot, mL };
  board.placed.push(placed);
  board.taken.add(box, spot);
  return placed;
}

interface Target { readonly key: string; readonly near: number; readonly lip: number; readonly land: number; readonly level: number }

/** Where letters with their amounts stand between the mixing vessel and its donor, px. */
const BESIDE = [112, 132, 40];

/** A donor beside and above its receiver; left side pours to the right, right side to the left. */
function placeDonor(board: Board, waiting: Map<string, FlowPrep>, pour: Pour, to: Placed, target: Target, side: 1 | -1, receivers: { key: string; placed: Placed }[], stream: number): void {
  const prep = waiting.get(pour.from);
  if (prep === undefined) return;
  const { vessel, mL } = vesselOf(prep), size = vesselSize(vessel, board.k);
  if (vessel.kind === 'tray' || vessel.kind === 'freezer box') return;
  const caption = board.caption(prep);
  const rises = side === 1 ? [-6, 10, 24, -20, ...(board.folded ? [-34, -50] : [])] : [-(stream + 44), -(stream + 62), -(stream + 84)];
  const asides = side === -1 ? [34, 60, 96] : target.key === 'build' && board.folded ? BESIDE : [16, 26, 40];
  // letters beside the vessel go before a donor that is near
  for (const [rise, aside] of board.folded ? asides.flatMap((a) => rises.map((r) => [r, a] as const)) : rises.flatMap((r) => asides.map((a) => [r, a] as const))) {
    const shelf = target.lip + (side === 1 ? rise + 8 : rise);
    const axis = side === 1 ? to.box.x - aside - size.width / 2 : to.box.x + to.box.width + aside + size.width / 2;
    const before = { placed: board.placed.length, taken: board.taken.length };
    const donor = board.put(prep, prep.key, vessel, mL, axis, shelf, caption, side === 1 ? ['under-left', 'under', 'left'] : ['right']);
    if (donor === null) continue;
    if (board.pour(donor, target, pour, side, false)) { waiting.delete(prep.key); receivers.push({ key: prep.key, placed: donor }); return; }
    board.placed.length = before.placed;
    board.taken.back(before.taken);
  }
  board.missed += board.folded ? stair(prep, waiting) : 1;
}

/** How many falls one after another would end in what a prep gives: without it none of them is drawn. */
function stair(prep: FlowPrep, waiting: ReadonlyMap<string, FlowPrep>, most = 12): number {
  const givers = prep.takes.map((t) => waiting.get(t.from)).filter((p) => p !== undefined && p !== prep);
  return 1 + (givers.length === 0 || most === 0 ? 0 : Math.max(...givers.map((p) => stair(p as FlowPrep, waiting, most - 1))));
}
