import { BLOCK } from '../matter/constituents.ts';

export type PhaseKind = 'liquid' | 'solids' | 'curd' | 'fat';

/** Offsets of the slots that describe the ice in a content: g, °C, and the area law area = area0 (m / m0)^(2/3) with m0 in g, area0 in m². */
export interface IceSlots { readonly mass: number; readonly celsius: number; readonly mass0: number; readonly area0: number }

/** A vessel's contents: a stack of phases over one flat buffer, its ice and the vessel as a body of its own (°C, J/K). */
export class Content {
  private readonly phases = new Map<PhaseKind, number>();
  private iceSlots: IceSlots | null = null;
  private readonly layout: Layout;
  readonly name: string;
  readonly vessel: number;

  constructor(layout: Layout, name: string) {
    this.layout = layout;
    this.name = name;
    this.vessel = layout.take(2);
  }

  /** Offset of a phase's block; made when first asked for. */
  phase(kind: PhaseKind): number {
    let at = this.phases.get(kind);
    if (at === undefined) { at = this.layout.take(BLOCK); this.phases.set(kind, at); }
    return at;
  }

  has(kind: PhaseKind): boolean { return this.phases.has(kind); }
  get all(): IterableIterator<[PhaseKind, number]> { return this.phases.entries(); }
  get ice(): IceSlots {
    if (!this.iceSlots) {
      const at = this.layout.take(4);
      this.iceSlots = { mass: at, celsius: at + 1, mass0: at + 2, area0: at + 3 };
    }
    return this.iceSlots;
  }
  get hasIce(): boolean { return this.iceSlots !== null; }
}

/** Hands out places in the workspace's one buffer. */
export class Layout {
  length = 0;
  readonly contents: Content[] = [];
  take(n: number): number { const at = this.length; this.length += n; return at; }
  content(name: string): Content { const c = new Content(this, name); this.contents.push(c); return c; }
}
