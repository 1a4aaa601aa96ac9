import type { Dart, DrawnPiece, Edge, EdgeId, EdgeKind } from '../garment/index.ts';
import {
  SAME_MM,
  angleBetween,
  cubicCount,
  distance,
  offsetOutline,
  pathEnd,
  pathStart,
  placeTangent,
} from '../geometry/index.ts';
import type { CornerStyle, OffsetSide, Path, Ring } from '../geometry/index.ts';
import { dartCap } from './dart-cap.ts';
import type { SewingOrder } from './sewing-order.ts';

/** A run of the cutting outline: of one edge, or the cap over a dart's mouth (then `dart` says which). */
export interface CuttingSide {
  readonly edge?: EdgeId;
  readonly dart?: string;
  readonly kind: EdgeKind;
  readonly stitch: Path;
  readonly cut: Path;
  readonly width: number;
}

export interface Cutting {
  readonly sides: readonly CuttingSide[];
  /** The whole outline, counter-clockwise. */
  readonly outline: Ring;
  /** mm² cut off where a hollow is tighter than its allowance: there the outline, not the sides, is right. */
  readonly looped: number;
}

interface Part {
  readonly edge?: Edge<'one'>;
  readonly dart?: string;
  readonly kind: EdgeKind;
  readonly path: Path;
  readonly width: number;
  readonly order: number;
}

const MITRE: CornerStyle = { kind: 'mitre' };
/** Corners blunter than this (turn in radians, 60°): a mirrored end would be a beak; it is squared instead. */
const BLUNT = Math.PI / 3;
/** Nearly straight on (15°): no corner to shape. */
const STRAIGHT_ON = Math.PI / 12;

/**
 * The cutting outline of a piece: every edge moved out by its allowance; each dart spanned by a cap shaped for the way it is pressed, so that the
 * line goes round outside its mouth. Corners by trade habit: a hem is shaped to turn up, and of two seams the one sewn first
 * ends so that, pressed open, it lies along the edge of the other (common practice).
 * This is the one line that is printed, written into files and laid on the cloth.
 */
export function cuttingOutline(piece: DrawnPiece, order: SewingOrder): Cutting {
  const parts = partsOf(piece, order);
  const n = parts.length;
  const ends = parts.map((p, i) => cornerStyles(p, parts[(i + 1) % n]!));
  const sides: OffsetSide[] = parts.map((p, i) => ({
    path: p.path,
    width: p.width,
    start: ends[(i + n - 1) % n]![1],
    end: ends[i]![0],
  }));
  const offset = offsetOutline(sides);
  return {
    sides: parts.map((p, i) => ({
      ...(p.edge ? { edge: p.edge.id } : {}),
      ...(p.dart === undefined ? {} : { dart: p.dart }),
      kind: p.kind,
      stitch: p.path,
      cut: offset.sides[i]!,
      width: p.width,
    })),
    outline: offset.outline,
    looped: offset.looped,
  };
}

function partsOf(piece: DrawnPiece, order: SewingOrder): Part[] {
  const { edges, darts } = piece;
  const n = edges.length;
  const parts: Part[] = [];
  const dartAt = (i: number): Dart | undefined => darts.find((d) => d.legs[0] === edges[i % n]!.id);
  // Start behind a dart, so that none is split by the end of the list.
  let start = 0;
  while (start < n && edges[start]!.kind === 'dart') start++;
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    const edge = edges[i]!;
    const dart = dartAt(i);
    const second = edges[(i + 1) % n]!;
    if (dart && dart.legs[1] === second.id) {
      // A closed dart has no mouth to span: its two edges meet.
      if (distance(pathStart(edge.path), pathEnd(second.path)) <= SAME_MM) {
        k++;
        continue;
      }
      const before = edges[(i + n - 1) % n]!;
      const after = edges[(i + 2) % n]!;
      const path = dartCap(before.path, edge.path, second.path, after.path, dart.foldToward);
      if (path) {
        const toward = dart.foldToward === 'first' ? before : after;
        parts.push({ dart: dart.id, kind: 'dart', path, width: toward.allowance, order: Infinity });
        k++;
        continue;
      }
    }
    parts.push({
      edge,
      kind: edge.kind,
      path: edge.path,
      width: edge.kind === 'fold' ? 0 : edge.allowance,
      order: order(piece.id, edge.id) ?? Infinity,
    });
  }
  return parts;
}

/** Shape at the end of `a` and at the start of `b`, where they meet. At most one of the two is shaped. */
function cornerStyles(a: Part, b: Part): [CornerStyle, CornerStyle] {
  const plain: [CornerStyle, CornerStyle] = [MITRE, MITRE];
  if (a.kind === 'fold' || b.kind === 'fold' || a.kind === 'dart' || b.kind === 'dart') return plain;
  const turn = angleBetween(
    placeTangent(a.path, { cubic: cubicCount(a.path) - 1, t: 1 }),
    placeTangent(b.path, { cubic: 0, t: 0 }),
  );
  if (turn < STRAIGHT_ON) return plain;
  const shape: CornerStyle = turn < BLUNT ? { kind: 'square' } : { kind: 'mirrored' };
  const [ra, rb] = [rank(a), rank(b)];
  if (ra === rb) return plain;
  return ra < rb ? [shape, MITRE] : [MITRE, shape];
}

/** Who shapes the corner: hems first, then openings that are faced back, then seams in the order they are sewn; the rest last. */
const rank = (p: Part): number => (p.kind === 'hem' ? -2 : p.kind === 'opening' ? -1 : p.order);
