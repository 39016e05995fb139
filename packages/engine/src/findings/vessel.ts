import { CUBE, ICE_DENSITY, SPHERE, cutOf, solidShare } from '../glass/index.ts';
import type { BuildResult, Heaped } from '../program/build.ts';
import type { Context } from '../program/context.ts';
import { limit } from '../program/limits.ts';
import { behindStep } from '../program/words.ts';
import type { Facts } from './facts.ts';
import { nextGlass } from './glass.ts';

/** Ice and liquid in a shaker, mixing glass or blender, and ice that must go through the mouth of the glass. @source none - geometry */
export function vessel({ ctx, build }: Facts): void {
  if (!build) return;
  for (const h of build.heaped) overfull(ctx, build, h);
  fits(ctx, build);
}

const KINDS = [[/blend/, 'blender'], [/stir/, 'mixing glass'], [/./, 'shaker']] as const;

/** Of a vessel's least volume: what is below it by what is written needs no question. @source none - definition */
const NEAR = limit('vessel-overfull', 'near');

function overfull(ctx: Context, build: BuildResult, { step, filled, ice }: Heaped): void {
  const kind = KINDS.find(([verb]) => verb.test(step.verb))![1], size = step.vessel_mL?.value;
  const row = ctx.tables.assumption(`vessel/${kind} volume`)!, value = Number(row.value), share = solidShare(ice.kind);
  // asked only where it may matter: no assumption to be listed with every drink
  const written = build.puts.reduce((sum, p) => sum + (p.from < step.span.from ? p.nominal ?? 0 : 0), 0), heap = ctx.book.list[ice.mass]!.value / ICE_DENSITY;
  if (size === undefined && Math.max(written + heap, heap / share) < NEAR * (row.low ?? value)) return;
  const holds = size !== undefined ? -1 : ctx.assume(`vessel/${kind} volume`, step.path, 'tool', `vessel/${kind} volume`, row.say.includes(':') ? undefined : behindStep(step, row.say, ctx.document.text));
  ctx.margins.push({
    code: 'vessel-overfull', at: step.path, unit: 'mL', sources: ['common-practice'], words: { holds: size ?? value, degree: kind },
    // liquid stands between the pieces until it covers them
    op: ({ s, x }, out, i) => {
      const solid = x[ice.mass]! / ICE_DENSITY;
      out[i] = Math.max(s[filled]! + solid, solid / share) - (holds >= 0 ? x[holds]! : size!);
    },
  });
}

/** Pieces that are one to a glass, mm. @source common-practice */
const LARGE = limit('ice-does-not-fit', 'large');

/** Wide pieces against the mouth: a cube by its diagonal, a sphere by its width. */
function fits(ctx: Context, build: BuildResult): void {
  const ice = build.glassIce;
  // small pieces go through any mouth
  if (!ice || ice.count === 0 || ice.size_mm < LARGE) return;
  const cut = cutOf(ice.kind), wide = cut === CUBE ? Math.SQRT2 : cut === SPHERE ? 1 : 0;
  if (wide === 0) return;
  const { profile, brim_mL, holding, shape } = build.glass, mouth = 2 * profile[profile.length - 1]![1];
  const last = build.steps.find((x) => x.ice && x.ice.size_mm === ice.size_mm) ?? build.steps[build.steps.length - 1], head = ctx.document.head.glass;
  ctx.margins.push({
    code: 'ice-does-not-fit', at: last?.path ?? ['glass'], unit: 'mm', sources: ['common-practice'], words: { size: ice.size_mm, glass: shape.name, ...(cut === SPHERE ? { degree: 'sphere' } : {}) }, ...(build.glass.assumed ? { cap: 'warn' as const } : {}),
    op: ({ x }, out, i) => { out[i] = x[ice.size]! * wide - mouth * Math.sqrt(x[holding]! / brim_mL); },
    live: { needs: ({ x }, out, i) => { out[i] = x[ice.size]! * wide; }, mouth: (_, out, i) => { out[i] = mouth; } },
    remedy: () => {
      const shapes = ctx.tables.glasses.map((key) => ctx.tables.glass(key)!).filter((g) => 2 * g.profile[g.profile.length - 1]![1] > ice.size_mm * wide * 1.09);
      const wider = nextGlass(shapes, shape.key, brim_mL);
      return wider && head ? { key: 'larger-glass', words: { glass: wider.name }, splices: [{ from: head.span.from, to: head.span.to, key: wider.key }] } : undefined;
    },
  });
}
