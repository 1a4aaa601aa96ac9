import { fromShoulder, garmentKind, timesCut } from '../../garment/index.ts';
import type { DrawnPiece, Garment, GarmentKind, Level, LevelPlan } from '../../garment/index.ts';
import { boxAround, pathBox, pathLength, type Box, type Point } from '../../geometry/index.ts';
import type { BodyShape } from './body-shape.ts';
import { smoothPath } from './smooth.ts';

/** Where the garment's side hangs at a level of the figure: half its breadth as drawn, in the body's own proportion. */
export interface Hang {
  readonly level: Level;
  readonly y: number;
  readonly half: number;
  readonly bodyHalf: number;
}
export interface GarmentShape {
  readonly hangs: readonly Hang[];
  readonly trunk: string;
  readonly sleeves: readonly string[];
  /** The end of the sleeve on the right of the picture, from its outer to its inner side, and its fold at the elbow where it reaches so far. */
  readonly sleeveLines: { readonly hem: readonly Point[]; readonly elbow?: readonly Point[] } | null;
  /** Lowest line of it, for cropping the picture. */
  readonly bottom: number;
  readonly top: number;
}

const FIGURE_LEVELS = ['upper-bust', 'bust', 'under-bust', 'waist', 'high-hip', 'hip'] as const;
type FigureLevel = (typeof FIGURE_LEVELS)[number];
const isFigureLevel = (level: string): level is FigureLevel =>
  (FIGURE_LEVELS as readonly string[]).includes(level);
const mirror = (points: readonly Point[]): Point[] => points.map((p) => ({ x: -p.x, y: p.y })).reverse();

function boxOf(piece: DrawnPiece): Box {
  return boxAround(piece.edges.map((e) => pathBox(e.path)));
}

/** The lowest of the garment's level lines that the figure has too, how far the hem hangs below it, and how wide the hem is all round. */
function hemOf(garment: Garment): { level: FigureLevel; drop: number; girth: number } | null {
  let found: { level: FigureLevel; y: number; drop: number } | null = null;
  for (const level of FIGURE_LEVELS) {
    const ids = garment.levels.find((l) => l.level === level)?.pieces ?? [];
    for (const piece of garment.pieces.filter((p) => ids.includes(p.id))) {
      const line = piece.lines.find((l) => l.kind === 'level' && l.level === level);
      if (!line) continue;
      const y = pathBox(line.path).minY;
      const drop = y - boxOf(piece).minY;
      if (!found || FIGURE_LEVELS.indexOf(level) > FIGURE_LEVELS.indexOf(found.level))
        found = { level, y, drop };
    }
  }
  if (!found) return null;
  const trunk = new Set(garment.levels.find((l) => l.level === found.level)?.pieces ?? []);
  const girth = garment.pieces
    .filter((p) => trunk.has(p.id))
    .reduce(
      (sum, p) =>
        sum +
        timesCut(p) * p.edges.filter((e) => e.kind === 'hem').reduce((s, e) => s + pathLength(e.path), 0),
      0,
    );
  return { level: found.level, drop: found.drop, girth };
}

/** The garment's silhouette round the figure: at each level as much broader than the body as its target is larger. */
export function garmentShape(
  shape: BodyShape,
  kind: GarmentKind,
  plan: readonly LevelPlan[],
  garment: Garment,
  view: 'front' | 'back' = 'front',
): GarmentShape {
  const hangs: Hang[] = plan
    .filter((p) => isFigureLevel(p.level))
    .map((p) => {
      const body = shape.levels[p.level as FigureLevel];
      return { level: p.level, y: body.y, half: body.half * (p.target / p.body), bodyHalf: body.half };
    })
    .sort((a, b) => a.y - b.y);
  const hem = hemOf(garment);
  const lowest = hangs.at(-1);
  const hemY = hem ? shape.levels[hem.level].y + hem.drop : (lowest?.y ?? shape.levels.hip.y) + 60;
  const bottom = Math.min(hemY, shape.stature - 40);
  const hemHalf =
    hem && hem.girth > 0
      ? Math.max((hem.girth / Math.PI) * 0.56, (lowest?.half ?? 0) * 0.9)
      : (lowest?.half ?? shape.levels.hip.half) * 1.02;
  const below = !fromShoulder(kind);
  const p = shape.points;
  const shoulders: Point[] = below
    ? []
    : [
        { x: p.sideNeck.x * 1.16, y: p.sideNeck.y + 2 },
        { x: p.shoulder.x + 3, y: p.shoulder.y - 2 },
        { x: p.shoulder.x - 4, y: p.shoulder.y + 50 },
        { x: Math.max(p.armpit.x, (hangs[0]?.half ?? 0) * 0.97), y: p.armpit.y + 8 },
      ];
  const side = [
    ...shoulders,
    ...hangs.filter((h) => h.y < bottom - 15).map((h) => ({ x: h.half, y: h.y })),
    { x: hemHalf, y: bottom },
  ];
  const neckDrop: Point[] = below
    ? []
    : [{ x: 0, y: view === 'front' ? p.frontNeck.y + 8 : p.backNeck.y + 14 }];
  const left = smoothPath(side);
  const right = smoothPath(mirror(side));
  const dip = bottom + hemHalf * 0.05;
  const top = below ? (hangs[0]?.y ?? shape.levels.waist.y) : p.sideNeck.y;
  const neck = neckDrop[0]
    ? `Q${-p.sideNeck.x * 0.75} ${neckDrop[0].y} 0 ${neckDrop[0].y}Q${p.sideNeck.x * 0.75} ${neckDrop[0].y} ${side[0]!.x} ${side[0]!.y}`
    : `L${side[0]?.x ?? 0} ${side[0]?.y ?? 0}`;
  const trunk = garmentKind(kind).legs
    ? trousers(shape, side, bottom)
    : `${left}Q0 ${dip} ${-hemHalf} ${bottom}${right.replace(/^M[^C]*/, '')}${neck}Z`;
  const arms = sleeves(shape, plan, garment);
  return { hangs, trunk, sleeves: arms?.drawn ?? [], sleeveLines: arms?.lines ?? null, bottom, top };
}

/** Two legs from the seat down, as wide over the leg as the hip is over the hip. */
function trousers(shape: BodyShape, side: readonly Point[], bottom: number): string {
  const { knee, crotch, ankle } = shape.points;
  const wide = side.at(-1)!.x / shape.levels.hip.half;
  const legHalf = (shape.limbs.knee / Math.PI) * 0.62 * Math.max(1, wide);
  const out: Point[] = [
    ...side.slice(0, -1),
    { x: knee.x + legHalf, y: knee.y },
    { x: ankle.x + legHalf * 0.9, y: bottom },
  ];
  const inn: Point[] = [
    { x: Math.max(8, ankle.x - legHalf * 0.8), y: bottom },
    { x: Math.max(6, knee.x - legHalf * 0.8), y: knee.y },
    { x: 0, y: crotch.y + 20 },
  ];
  return `${smoothPath(out)}L${inn[0]!.x} ${inn[0]!.y}${smoothPath(inn).replace(/^M[^C]*/, '')}${smoothPath(mirror(inn)).replace(/^M[^C]*/, '')}L${-out.at(-1)!.x} ${bottom}${smoothPath(mirror(out)).replace(/^M[^C]*/, '')}Z`;
}

/** Sleeves, when there are any: from the shoulder down the arm as far as the piece is long. */
function sleeves(
  shape: BodyShape,
  plan: readonly LevelPlan[],
  garment: Garment,
): { drawn: readonly string[]; lines: NonNullable<GarmentShape['sleeveLines']> } | null {
  const ids = garment.levels.find((l) => l.level === 'upper-arm')?.pieces ?? [];
  const piece = garment.pieces.find((p) => ids.includes(p.id));
  const line = piece?.lines.find((l) => l.level === 'upper-arm');
  if (!piece || !line) return null;
  const { shoulder, wrist, armpit, elbow } = shape.points;
  const length = pathBox(line.path).minY - boxOf(piece).minY;
  const share = Math.min(
    1,
    (length + (armpit.y - shoulder.y)) / Math.hypot(wrist.x - shoulder.x, wrist.y - shoulder.y),
  );
  const at = (t: number): Point => ({
    x: shoulder.x + 6 + (wrist.x - shoulder.x) * t,
    y: shoulder.y + (wrist.y - shoulder.y) * t,
  });
  const half = (girth: number): number => (girth / Math.PI) * 0.52;
  const upper = plan.find((p) => p.level === 'upper-arm')?.target ?? shape.limbs.upperArm * 1.14;
  const end = plan.find((p) => p.level === 'wrist')?.target ?? upper * (1 - 0.36 * share);
  const [mid, low] = [at(share * 0.5), at(share)];
  const w = half(upper * 0.6 + end * 0.4);
  const outer: Point[] = [
    { x: shoulder.x - 2, y: shoulder.y - 4 },
    { x: shoulder.x + half(upper) * 0.78, y: shoulder.y + 30 },
    { x: mid.x + w + 6, y: mid.y },
    { x: low.x + half(end) + 4, y: low.y },
  ];
  const inner: Point[] = [
    { x: low.x - half(end), y: low.y + 6 },
    { x: Math.max(mid.x - w, Math.min(elbow.x, mid.x) - w), y: mid.y },
    { x: armpit.x + 2, y: armpit.y + 16 },
  ];
  const one = `${smoothPath(outer)}L${inner[0]!.x} ${inner[0]!.y}${smoothPath(inner).replace(/^M[^C]*/, '')}`;
  const twin = `${smoothPath(mirror(outer).reverse())}L${-inner[0]!.x} ${inner[0]!.y}${smoothPath(mirror(inner).reverse()).replace(/^M[^C]*/, '')}`;
  const hem = [outer[3]!, inner[0]!];
  if (elbow.y > low.y - 20) return { drawn: [one, twin], lines: { hem } };
  const x = shoulder.x + 6 + ((wrist.x - shoulder.x) * (elbow.y - shoulder.y)) / (wrist.y - shoulder.y);
  const bend = [
    { x: x + w, y: elbow.y },
    { x: x - w, y: elbow.y + 8 },
  ];
  return { drawn: [one, twin], lines: { hem, elbow: bend } };
}
