import type { Reading } from '../reading.ts';
import type { Frame } from '../frame.ts';
import { overlap, type Box } from '../pen/pad.ts';
import { SIZE, cut, textWidth } from '../pen/lettering.ts';
import { buildCaption, captionKept, captionOf, type Caption } from './caption.ts';
import { tellsOf } from './facts.ts';
import { clears, streamWidth, type Fall } from './fall.ts';
import type { Flow, FlowPrep, Pour } from './flow.ts';
import { boxOf, levelOf, vesselFor, vesselSize, type Vessel } from './vessel.ts';

export interface Placed { readonly key: string; readonly prep: FlowPrep | null; readonly vessel: Vessel; readonly axis: number; readonly shelf: number; readonly k: number; readonly box: Box; readonly caption: Caption; readonly captionAt: Box; readonly mL: number | null }
export interface Stream { readonly from: string; readonly to: string; readonly amount: string; readonly fall: Fall; readonly label: Box; readonly into: boolean }
export interface Written { readonly box: Box; readonly lines: readonly { readonly giver: string | null; readonly text: string }[]; readonly anchor: 'start' | 'end' }
export interface Hose { readonly from: string; readonly amount: string }
export interface Arrangement {
  readonly k: number;
  readonly placed: readonly Placed[];
  readonly streams: readonly Stream[];
  readonly hose: Hose | null;
  readonly written: readonly Written[];
  /** raw measures that fall from above where there is no prep and no vessel before the glass */
  readonly raw: readonly string[];
  readonly overlaps: number;
  /** falls that were wished for and found no way */
  readonly missed: number;
}

const STEPS = [2, 2.5, 3, 3.5, 4, 5, 6, 8, 10];

/** How much captions tell where there is room: all of it, the figures of pressure and cloth alone, neither. */
type Detail = 'all' | 'figures' | 'none';
/** More words are not worth vessels that are smaller than this, against those with fewer. */
const SMALLER = 0.6;

/** Places for every vessel upstream of the glass at one scale: the largest at which nothing touches, the words that stand already (`said`) among it. */
export function arrange(flow: Flow, reading: Reading, frame: Frame, said: readonly Box[]): Arrangement {
  const told = flow.preps.some((prep) => prep.reading?.gas !== undefined || (prep.reading?.cloth !== undefined && tellsOf(prep.reading.cloth)));
  const whole = largest(flow, reading, frame, said, told ? 'all' : 'none');
  if (!told || frame.phone || (cost(whole) === 0 && whole.k >= SMALLER * Math.min(1.5, frame.stand.scale / 2))) return whole;
  const plain = largest(flow, reading, frame, said, 'none'), good = (a: Arrangement): boolean => cost(a) <= cost(plain) && a.k >= SMALLER * plain.k;
  if (good(whole)) return whole;
  const few = largest(flow, reading, frame, said, 'figures');
  // what presses is said, however small its vessel
  return good(few) || flow.preps.some((prep) => prep.reading?.gas !== undefined) ? few : plain;
}

function largest(flow: Flow, reading: Reading, frame: Frame, said: readonly Box[], detail: Detail): Arrangement {
  let best: Arrangement | null = null;
  for (const n of STEPS) {
    const k = frame.stand.scale / n;
    if (k > 1.5) continue;
    const tried: Arrangement = frame.phone ? arrangePhone(flow, reading, frame, k, said) : arrangeAt(flow, reading, frame, k, said, best === null ? Infinity : cost(best), detail);
    // A fall that finds no way costs less than two things in one place, and more than a somewhat smaller scale.
    if (best === null || cost(tried) < cost(best) - 1e-9) best = tried;
    if (cost(tried) === 0) break;
  }
  return best ?? { k: 1, placed: [], streams: [], hose: null, written: [], raw: [], overlaps: 0, missed: 0 };
}

function cost(a: Arrangement): number { return a.overlaps * 10 + a.missed * 2 + (a.k < 0.45 ? 3 : 0); }

/** A jar that a cloth hangs in has room for what lies in it as well. */
function vesselOf(prep: FlowPrep): { vessel: Vessel; mL: number | null } {
  const mL = prep.reading?.yield.value ?? null, cloth = prep.reading?.cloth;
  return { vessel: vesselFor(prep.reading?.vessel ?? 'jar', (mL ?? 200) + (cloth !== undefined && tellsOf(cloth) ? 2 * cloth.mass.value : 0)), mL };
}

class Board {
  readonly placed: Placed[] = [];
  readonly streams: Stream[] = [];
  readonly written: Written[] = [];
  readonly poured = new Set<string>();
  hose: Hose | null = null;
  overlaps = 0;
  missed = 0;
  constructor(readonly flow: Flow, readonly reading: Reading, readonly frame: Frame, readonly k: number, readonly taken: Box[], readonly detail: Detail = 'all') {}

  /** What stands beside a prep's vessel, with as much as this arrangement tells. */
  caption(prep: FlowPrep): Caption {
    let caption = captionKept(prep, this.flow, this.poured);
    if (this.detail !== 'all') while (caption.less !== undefined && (this.detail === 'none' || caption.less.less !== undefined)) caption = caption.less;
    return caption;
  }

  /** Free of everything placed so far, and inside the drawing. */
  free(box: Box, gap = 5): boolean {
    return box.x >= 6 && box.y >= 6 && box.x + box.width <= this.frame.width - 6 && box.y + box.height <= this.frame.height - 4 && !this.taken.some((b) => overlap(b, box, gap));
  }

  put(prep: FlowPrep | null, key: string, vessel: Vessel, mL: number | null, axis: number, shelf: number, caption: Caption, where: readonly ('under' | 'right' | 'left' | 'under-left')[], k = this.k): Placed | null {
    const size = vesselSize(vessel, k), box = boxOf(vessel, axis, shelf, k);
    if (!this.free(box)) return null;
    const spotOf = ({ width, height }: Caption): Box | undefined => {
      for (const w of where) {
        const x = w === 'under' ? axis - size.width / 2 - 3 : w === 'under-left' ? axis + size.width / 2 - width : w === 'right' ? axis + size.width / 2 + 14 : axis - size.width / 2 - 14 - width;
        const spot = { x, y: w === 'right' ? shelf - size.height + 6 : w === 'left' ? shelf - size.height + 22 : shelf + 8, width, height };
        if (this.free(spot, 4)) return spot;
      }
      return undefined;
    };
    // where the fewest lines find no room, more do not either
    let least = caption;
    while (least.less !== undefined) least = least.less;
    if (least !== caption && spotOf(least) === undefined) return null;
    for (let tried: Caption | undefined = caption; tried !== undefined; tried = tried.less) {
      const spot = spotOf(tried);
      if (spot === undefined) continue;
      const placed: Placed = { key, prep, vessel, axis, shelf, k, box, caption: tried, captionAt: spot, mL };
      this.placed.push(placed);
      this.taken.push(box, spot);
      return placed;
    }
    return null;
  }

  /** A stream between two vessels, if its curve passes the near lip and its label finds room. */
  pour(from: Placed, to: { readonly key: string; readonly near: number; readonly lip: number; readonly land: number; readonly level: number }, pour: Pour, side: 1 | -1, into: boolean): boolean {
    const half = Math.max(...from.vessel.profile.slice(-1).map(([, r]) => r)) * from.k;
    const wall = Math.max(from.vessel.wall * from.k, 2);
    const fall: Fall = { lip: [from.axis + side * (half + wall), from.shelf - vesselSize(from.vessel, from.k).height + vesselSize(from.vessel, from.k).above], wall, side, land: [to.land, to.level], width: streamWidth(pour.mL, into) };
    if ((to.land - fall.lip[0]) * side < 8 || fall.lip[1] > to.level - 12 || !clears(fall, [to.near, to.lip], into ? 8 : 6)) return false;
    const width = textWidth(pour.amount, SIZE.body, 500) + 4;
    // The amount stands 8 px clear of the stream on its outer side, or inside of it where that is taken.
    const spot = (u: number, outer: boolean): Box => {
      const x = fall.lip[0] + (to.land - fall.lip[0]) * u, y = fall.lip[1] - fall.width / 2 + (to.level - fall.lip[1]) * u * u, right = outer === (side === 1);
      return { x: right ? x + fall.width * 0.5 + 9 : x - fall.width * 0.5 - 9 - width, y: outer ? y - 17 : y + 2, width, height: 15 };
    };
    const label = [spot(0.5, true), spot(0.4, true), spot(0.3, true), spot(0.65, true), spot(0.5, false), spot(0.35, false)].find((box) => this.free(box, 5));
    const along = Array.from({ length: 9 }, (_, i): Box => { const v = (i + 1) / 10; return { x: fall.lip[0] + (to.land - fall.lip[0]) * v - 3, y: fall.lip[1] - fall.width / 2 + (to.level - fall.lip[1]) * v * v - 3, width: 6, height: 6 }; });
    if (label === undefined || [...this.streams.map((s) => s.label), ...this.placed.map((p) => p.captionAt)].some((words) => along.some((box) => overlap(box, words, -5)))) return false;
    this.streams.push({ from: from.key, to: to.key, amount: pour.amount, fall, label, into });
    this.poured.add(`${from.key}>${to.key}`);
    this.taken.push(label);
    this.taken.push(...along);
    return true;
  }
}

function obstacles(frame: Frame): Box[] {
  const { stand, left, right, washline, brim } = frame;
  const y = washline ?? brim + 60;
  return [
    { x: left - 4, y: brim - 8, width: right - left + 8, height: frame.height - brim + 8 },
    { x: frame.dims - 22, y: brim - 8, width: 60, height: frame.height - brim },
    { x: right, y: Math.min(y - 70, y > frame.height - 330 ? 140 : y), width: frame.width - right, height: frame.height },
    { x: 0, y: y - 8, width: left, height: 20 },
    { x: 0, y: frame.height - 34, width: 150, height: 34 },
    { x: Math.max(frame.dims - 40, 150), y: frame.height - 56, width: frame.width, height: 56 },
    { x: stand.axis + (right - stand.axis) * 0.35, y: brim - 92, width: (right - stand.axis) * 0.65, height: 92 },
    ...(frame.head === null ? [] : [frame.head]),
  ];
}

function arrangeAt(flow: Flow, reading: Reading, frame: Frame, k: number, said: readonly Box[], limit: number, detail: Detail): Arrangement {
  const board = new Board(flow, reading, frame, k, [...obstacles(frame).filter((_, i) => i !== 6 || (reading.glass?.garnish.length ?? 0) > 0), ...said], detail);
  const { stand } = frame, line = frame.washline ?? frame.brim + 60;
  const waiting = new Map(flow.preps.map((p) => [p.key, p]));
  const biggest = (pours: readonly Pour[]): Pour[] => [...pours].filter((p) => waiting.has(p.from)).sort((a, b) => (b.mL ?? 0) - (a.mL ?? 0));
  const pressed = biggest(flow.glass.takes).filter((t) => waiting.get(t.from)?.reading?.vessel === 'siphon');
  for (const t of pressed) waiting.delete(t.from);

  // The vessel the drink is mixed in, and its fall into the glass.
  const receivers: { key: string; placed: Placed }[] = [];
  let free: readonly Pour[] = [];
  if (flow.build.vessel !== null) {
    const stage = reading.stages.find((s) => s.step === flow.build.step);
    const volume = stage?.figures['volume'] ?? reading.figures['volume'];
    const vessel = vesselFor(flow.build.vessel, (volume?.value ?? 150) + 250), size = vesselSize(vessel, k);
    const ice = flow.build.ice ? (stage?.figures['ice_left']?.value ?? 0) / 0.917 : 0;
    // It stands by the glass, not by the line: when the level moves it stays.
    const usual = frame.brim + (stand.floor - frame.brim) * 0.15;
    const shelf = Math.min(line - 20, usual - 20, frame.brim - 46 + size.height);
    const mL = volume === undefined ? null : volume.value + ice;
    const caption = buildCaption(flow.build, reading);
    const axis = frame.left - 80 - size.width / 2;
    const mixed = board.put(null, 'build', vessel, mL, axis, shelf, caption, [])
      ?? putWithCaptionAt(board, 'build', vessel, mL, axis, shelf, caption, overTheFall(axis + size.width / 2 + 8, shelf - size.height, streamWidth(volume?.value ?? 150, true), caption, { x: stand.axis - (stand.axis - frame.left) * 0.12, y: line }), said);
    if (mixed !== null) {
      const level = line, width = streamWidth(volume?.value ?? 150, true);
      const land = stand.axis - (stand.axis - frame.left) * 0.12;
      if (!board.pour(mixed, { key: 'glass', near: frame.left, lip: frame.brim, land, level }, { from: 'build', amount: volume === undefined ? '' : `${Math.round(volume.value)} ml`, mL: volume?.value ?? 150 }, 1, true)) board.overlaps += 1;
      receivers.push({ key: 'build', placed: mixed });
      const givers = biggest(flow.build.takes);
      free = givers;
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
      const axis = frame.left - 64 - size.width / 2, shelf = Math.min(line - 64, frame.brim - 54 + size.height);
      const donor = board.put(prep, prep.key, vessel, mL, axis, shelf, board.caption(prep), ['left', 'under-left', 'under']);
      if (donor !== null) {
        waiting.delete(prep.key);
        receivers.push({ key: prep.key, placed: donor });
        board.pour(donor, { key: 'glass', near: frame.left, lip: frame.brim, land: frame.left + (stand.axis - frame.left) * 0.7, level: line }, one, 1, true);
      }
    }
  }
  // Up the stair: what goes into a donor stands one step further left and up.
  for (const { key, placed } of [...receivers].slice(flow.build.vessel === null ? 0 : 1)) {
    const give = biggest(placed.prep?.takes ?? [])[0];
    if (give === undefined) continue;
    const size = vesselSize(placed.vessel, k), lip = placed.shelf - size.height;
    placeDonor(board, waiting, give, placed, { key, near: placed.axis - size.width / 2, lip, land: placed.axis - size.width * 0.15, level: placed.shelf - (placed.vessel.base + levelOf(placed.vessel, placed.mL ?? 0)) * k }, 1, receivers, 0);
  }
  // Only what is under pressure rises: the siphon stands below the line beside the glass.
  let right = frame.left - 92;
  for (const [i, take] of pressed.entries()) {
    const prep = flow.preps.find((p) => p.key === take.from) as FlowPrep, { vessel, mL } = vesselOf(prep), size = vesselSize(vessel, k);
    const shelf = Math.min(line + 30 + size.height, frame.height - 74);
    const placed = board.put(prep, prep.key, vessel, mL, right - size.width / 2, shelf, board.caption(prep), ['under-left', 'under', 'left']);
    if (placed === null) { board.missed += 2; waiting.set(prep.key, prep); continue; }
    if (i === 0) { board.hose = { from: prep.key, amount: take.amount }; board.poured.add(`${prep.key}>glass`); }
    right = Math.min(placed.box.x, placed.captionAt.x) - 30;
  }
  // What is bought stands in words at the vessel that takes it; letters there for what could not fall.
  writeAtReceivers(board, free);
  // What is already worse than another scale need not be finished.
  if (board.overlaps * 10 + board.missed * 2 < limit) standRest(board, [...waiting.values()]);
  else board.overlaps += waiting.size + 1;
  const raw = flow.preps.length === 0 && flow.build.vessel === null ? flow.glass.bought.slice(0, 4) : [];
  return { k, placed: board.placed, streams: board.streams, hose: board.hose, written: board.written, raw, overlaps: board.overlaps, missed: board.missed };
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
  board.taken.push(box, spot);
  return placed;
}

interface Target { readonly key: string; readonly near: number; readonly lip: number; readonly land: number; readonly level: number }

/** A donor beside and above its receiver; left side pours to the right, right side to the left. */
function placeDonor(board: Board, waiting: Map<string, FlowPrep>, pour: Pour, to: Placed, target: Target, side: 1 | -1, receivers: { key: string; placed: Placed }[], stream: number): void {
  const prep = waiting.get(pour.from);
  if (prep === undefined) return;
  const { vessel, mL } = vesselOf(prep), size = vesselSize(vessel, board.k);
  if (vessel.kind === 'tray' || vessel.kind === 'freezer box') return;
  const caption = board.caption(prep);
  const rises = side === 1 ? [-6, 10, 24, -20] : [-(stream + 44), -(stream + 62), -(stream + 84)];
  for (const rise of rises) for (const aside of side === 1 ? [16, 26, 40] : [34, 60, 96]) {
    const shelf = target.lip + (side === 1 ? rise + 8 : rise);
    const axis = side === 1 ? to.box.x - aside - size.width / 2 : to.box.x + to.box.width + aside + size.width / 2;
    const before = { placed: board.placed.length, taken: board.taken.length };
    const donor = board.put(prep, prep.key, vessel, mL, axis, shelf, caption, side === 1 ? ['under-left', 'under', 'left'] : ['right']);
    if (donor === null) continue;
    if (board.pour(donor, target, pour, side, false)) { waiting.delete(prep.key); receivers.push({ key: prep.key, placed: donor }); return; }
    board.placed.length = before.placed;
    board.taken.length = before.taken;
  }
  board.missed += 1;
}

function writeAtReceivers(board: Board, takes: readonly Pour[]): void {
  const { flow, frame } = board;
  const letter = (key: string): string | null => flow.preps.find((p) => p.key === key)?.letter ?? null;
  const build = board.placed.find((p) => p.key === 'build');
  if (build !== undefined) {
    const lines = [...takes.filter((t) => !board.poured.has(`${t.from}>build`)).map((t) => ({ giver: letter(t.from), text: t.amount })), ...flow.build.bought.map((text) => ({ giver: null, text }))];
    if (lines.length > 0) write(board, lines, [{ right: build.box.x - 9, bottom: build.shelf }, { right: build.box.x - 9, bottom: build.shelf - 20 }, { right: build.box.x - 9, bottom: build.box.y + lines.length * 16 }]);
  }
  // A mixing vessel that found no room: what goes into it is said at the glass.
  const mixed = build === undefined ? { takes: flow.build.takes, bought: flow.build.bought } : { takes: [], bought: [] };
  const rest = [...mixed.takes, ...flow.glass.takes].filter((t) => !board.poured.has(`${t.from}>glass`)).map((t) => ({ giver: letter(t.from), text: t.amount }));
  const bought = flow.preps.length === 0 && flow.build.vessel === null ? flow.glass.bought.slice(4) : flow.glass.bought;
  const lines = [...rest, ...[...mixed.bought, ...bought].map((text) => ({ giver: null, text }))];
  if (lines.length > 0) write(board, lines, [{ left: frame.right + 14, bottom: Math.min(frame.brim, (frame.washline ?? frame.brim) - 84) - 6 }, { left: frame.right + 14, bottom: Math.min(frame.brim, (frame.washline ?? frame.brim) - 84) - 60 }]);
}

function write(board: Board, lines: readonly { giver: string | null; text: string }[], spots: readonly { right?: number; left?: number; bottom: number }[]): void {
  const width = Math.max(...lines.map((l) => textWidth(l.text, SIZE.small) + (l.giver === null ? 0 : 48)));
  const height = lines.reduce((sum, l) => sum + (l.giver === null ? 15 : 24), 0);
  for (const spot of spots) {
    const box: Box = { x: spot.left ?? (spot.right ?? 0) - width, y: spot.bottom - height, width, height };
    if (!board.free(box, 3)) continue;
    board.written.push({ box, lines, anchor: spot.left === undefined ? 'end' : 'start' });
    board.taken.push(box);
    return;
  }
  board.overlaps += 1;
}

/** Preps that pour nowhere here stand where there is room: below the line, then in a row at the top. */
function standRest(board: Board, rest: readonly FlowPrep[]): void {
  const { frame, flow } = board, line = frame.washline ?? frame.brim + 60;
  for (const prep of rest) {
    const { vessel, mL } = vesselOf(prep);
    const full = board.caption(prep), brief = captionOf(prep, flow, board.poured, true), tries: [number, Caption][] = [];
    for (let c: Caption | undefined = full; c !== undefined; c = c.less) tries.push([board.k, c]);
    const known = new Map<number, readonly (readonly [number, number, boolean])[]>();
    /** Where the vessel itself would find room, below the line and then above it. */
    const freeSpots = (k: number): readonly (readonly [number, number, boolean])[] => {
      const before = known.get(k);
      if (before !== undefined) return before;
      const size = vesselSize(vessel, k), spots: [number, number, boolean][] = [], half = size.width / 2, own = boxOf(vessel, 0, 0, k);
      const look = (x: number, y: number, low: boolean): void => { if (board.free({ x: x + own.x, y: y + own.y, width: own.width, height: own.height })) spots.push([x, y, low]); };
      for (let y = line + 34 + size.height; y + 10 < frame.height; y += 30) for (let x = 16 + half; x < frame.dims - 20 - half; x += 24) look(x, y, true);
      for (let y = 14 + size.height; y < line - 30; y += 36) for (let x = 16 + half; x < frame.width - 20 - half; x += 30) look(x, y, false);
      known.set(k, spots);
      return spots;
    };
    // what presses and what stays is worth a smaller vessel
    const done = [...tries.slice(0, 1), ...[0.75, 0.55].flatMap((part) => tries.slice(0, -1).map(([, c]) => [board.k * part, c] as const)), ...tries.slice(1), [board.k * 0.75, brief] as const, [board.k * 0.55, brief] as const].some(([k, said]) => {
      const size = vesselSize(vessel, k), caption: Caption = { ...said, less: undefined };
      return (['under', 'right'] as const).some((where) => {
        const below = where === 'under' ? caption.height : Math.max(0, caption.height + 6 - size.height), beside = where === 'under' ? Math.max(size.width, caption.width) / 2 : size.width / 2 + 14 + caption.width;
        return freeSpots(k).some(([x, y, low]) => (low ? y + below + 10 < frame.height && x < frame.dims - 20 - beside : y < line - below - 30 && x < frame.width - 20 - beside) && board.put(prep, prep.key, vessel, mL, x, y, caption, [where], k) !== null);
      });
    });
    if (!done) board.overlaps += 1;
  }
}

/**
 * On a phone the vessels stand small over the glass: what is pressed at the left, the vessel the drink is mixed in between its two
 * largest givers, the rest in a row. Letters stand under them; what goes where is a list at the right.
 */
function arrangePhone(flow: Flow, reading: Reading, frame: Frame, k: number, said: readonly Box[]): Arrangement {
  const board = new Board(flow, reading, frame, k, []);
  const takes = [...flow.build.takes, ...flow.glass.takes].map((t) => ({ giver: flow.preps.find((p) => p.key === t.from)?.letter ?? null, text: t.amount }));
  const all = [...takes, ...[...flow.build.bought, ...flow.glass.bought].map((text) => ({ giver: null, text }))];
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
    const stage = reading.stages.find((s) => s.step === flow.build.step), volume = stage?.figures['volume'] ?? reading.figures['volume'];
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
  return { k, placed: board.placed, streams: board.streams, hose: board.hose, written: board.written, raw: [], overlaps: board.overlaps, missed: 0 };
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
