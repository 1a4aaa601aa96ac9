import type { DrawnPiece, Finding, Garment } from '../garment/index.ts';
import { say } from '../garment/index.ts';
import {
  STORED_MM,
  distance,
  pathEnd,
  pathLength,
  pathStart,
  pathsArea,
  selfIntersections,
} from '../geometry/index.ts';
import { centreCorners, dartJoints, seamJoints } from './corner.ts';
import type { Joint } from './corner.ts';
import { seamSeverity } from './walk.ts';

/** An edge shorter than this cannot be stitched as an edge of its own (about one stitch). */
const TINY_MM = 2;
/** A corner inside one edge sharper than this has turned back on itself: no drawn seam does. */
const BACK_DEG = 120;
/** Joined corners: the sum may miss 180° by this much (trade.md 6.3: 2 to 3). */
export const CORNER_DEG = 3;
/** A corner that misses by more than this was drawn as a corner (a V neck, a shaped hem). */
export const MEANT_DEG = 15;
/** Centre line against grain: 1/8 in over 20 in (trade.md 6.4). */
const GRAIN_DEG = 0.36;
/** More than this and the grain was set on the slant on purpose. */
const SLANT_DEG = 5;

const known = new WeakMap<DrawnPiece, readonly Finding[]>();

/**
 * What is wrong with one outline by itself. Findings: `outline-not-a-number`, `outline-open`, `outline-inverted`,
 * `outline-crosses-itself`, `edge-turns-back` (errors); `edge-tiny` (warning); `dart-legs-differ` (by the seam table, remedy: true);
 * `corner-not-square` (note, at folds and openings); `grain-missing` (note), `grain-off` (warning). Remembered per piece.
 */
export function checkOutline(piece: DrawnPiece): readonly Finding[] {
  let findings = known.get(piece);
  if (!findings) known.set(piece, (findings = outlineFindings(piece)));
  return findings;
}

function outlineFindings(piece: DrawnPiece): Finding[] {
  const where = { piece: piece.id };
  if (piece.edges.some((e) => e.path.some((p) => !Number.isFinite(p.x) || !Number.isFinite(p.y)))) {
    return [
      {
        code: 'outline-not-a-number',
        severity: 'error',
        where,
        message: `${piece.name}: part of the outline could not be worked out, so the piece cannot be drawn.`,
      },
    ];
  }
  const paths = piece.edges.map((e) => e.path);
  const findings: Finding[] = [];
  piece.edges.forEach((edge, i) => {
    const next = piece.edges[(i + 1) % piece.edges.length]!;
    const gap = distance(pathEnd(edge.path), pathStart(next.path));
    if (gap > STORED_MM) {
      findings.push({
        code: 'outline-open',
        severity: 'error',
        where: { ...where, edge: edge.id, at: pathEnd(edge.path) },
        amount: gap,
        message: `${piece.name}: ${edge.name} ends ${say(gap)} from where ${next.name} begins. The outline must be closed to be cut.`,
      });
    }
    const length = pathLength(edge.path);
    if (length < TINY_MM) {
      findings.push({
        code: 'edge-tiny',
        severity: 'warning',
        where: { ...where, edge: edge.id, at: pathStart(edge.path) },
        amount: length,
        message: `${piece.name}: ${edge.name} is only ${say(length)} long. Look whether an alteration has eaten it.`,
      });
    }
    const back = turnsBack(edge.path);
    if (back) {
      findings.push({
        code: 'edge-turns-back',
        severity: 'error',
        where: { ...where, edge: edge.id, at: back },
        message: `${piece.name}: ${edge.name} turns back on itself. An alteration asks more of this curve than it has room for.`,
      });
    }
  });
  if (pathsArea(paths) <= 0) {
    findings.push({
      code: 'outline-inverted',
      severity: 'error',
      where,
      message: `${piece.name}: the outline has turned inside out.`,
    });
  }
  for (const meeting of selfIntersections(paths)) {
    if (meeting.kind !== 'crosses') continue;
    const [a, b] = [piece.edges[meeting.a.path]!, piece.edges[meeting.b.path]!];
    findings.push({
      code: 'outline-crosses-itself',
      severity: 'error',
      where: { ...where, edge: a.id, at: meeting.point },
      message: `${piece.name}: ${a === b ? `${a.name} crosses itself` : `${a.name} crosses ${b.name}`}. The piece cannot be cut like this.`,
    });
  }
  return [...findings, ...dartFindings(piece), ...squareFindings(piece), ...grainFindings(piece)];
}

/** Where an edge turns by more than BACK_DEG at a joint of its cubics; undefined where it does not. */
function turnsBack(path: DrawnPiece['edges'][number]['path']): (typeof path)[number] | undefined {
  for (let i = 3; i + 3 < path.length; i += 3) {
    const ax = path[i]!.x - path[i - 1]!.x;
    const ay = path[i]!.y - path[i - 1]!.y;
    const bx = path[i + 1]!.x - path[i]!.x;
    const by = path[i + 1]!.y - path[i]!.y;
    // Handles shorter than what is stored have no direction to speak of.
    if (Math.hypot(ax, ay) < STORED_MM || Math.hypot(bx, by) < STORED_MM) continue;
    if (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > (BACK_DEG * Math.PI) / 180)
      return path[i];
  }
  return undefined;
}

function dartFindings(piece: DrawnPiece): Finding[] {
  return piece.darts.flatMap((dart): Finding[] => {
    const first = piece.edges.find((e) => e.id === dart.legs[0]);
    const second = piece.edges.find((e) => e.id === dart.legs[1]);
    if (!first || !second) {
      return [
        {
          code: 'dart-without-legs',
          severity: 'error',
          where: { piece: piece.id },
          message: `${piece.name}: the ${dart.name} has lost one of its legs.`,
        },
      ];
    }
    const off = pathLength(first.path) - pathLength(second.path);
    const severity = seamSeverity(off);
    if (!severity) return [];
    return [
      {
        code: 'dart-legs-differ',
        severity,
        where: { piece: piece.id, edge: (off > 0 ? first : second).id },
        amount: Math.abs(off),
        message: `${piece.name}: the legs of the ${dart.name} differ by ${say(Math.abs(off))}, so it cannot be stitched flat.`,
        remedy: { say: 'True the darts', steps: [{ id: `true-${piece.id}-${dart.id}`, kind: 'true' }] },
      },
    ];
  });
}

function squareFindings(piece: DrawnPiece): Finding[] {
  return centreCorners(piece).flatMap(({ side, off }): Finding[] => {
    if (Math.abs(off) <= CORNER_DEG || Math.abs(off) > MEANT_DEG) return [];
    const line = piece.edges[side.lineEdge]!;
    const fold = piece.edges[side.seamEdge]!.kind === 'fold';
    return [
      {
        code: 'corner-not-square',
        severity: 'note',
        where: { piece: piece.id, edge: line.id, at: pathStart(piece.edges[side.corner]!.path) },
        amount: off,
        message: `${piece.name}: ${line.name} meets the ${fold ? 'fold' : 'opening'} at ${Math.round(side.angle)}° instead of square, so it will come to a ${off > 0 ? 'peak' : 'dip'} when ${fold ? 'unfolded' : 'closed'}.`,
      },
    ];
  });
}

function grainFindings(piece: DrawnPiece): Finding[] {
  const grain = piece.lines.find((l) => l.kind === 'grain');
  if (!grain) {
    return [
      {
        code: 'grain-missing',
        severity: 'note',
        where: { piece: piece.id },
        message: `${piece.name} has no grainline, so nothing says how it lies on the cloth.`,
      },
    ];
  }
  const fold = piece.edges.find((e) => e.kind === 'fold');
  if (!fold) return [];
  const off = Math.abs(directionOf(fold.path) - directionOf(grain.path)) % 180;
  const angle = Math.min(off, 180 - off);
  if (angle <= GRAIN_DEG || angle > SLANT_DEG) return [];
  return [
    {
      code: 'grain-off',
      severity: 'warning',
      where: { piece: piece.id, edge: fold.id },
      amount: angle,
      message: `${piece.name}: the grainline leans ${angle.toFixed(1)}° against the fold. Cut on the fold, the grain follows the fold.`,
    },
  ];
}

function directionOf(path: DrawnPiece['edges'][number]['path']): number {
  const a = pathStart(path);
  const d = pathEnd(path);
  return (Math.atan2(d.y - a.y, d.x - a.x) * 180) / Math.PI;
}

/** Every outline, and how the lines run on across seams and darts. Adds `corner-not-smooth` (note, remedy: true the seam). */
export function checkOutlines(garment: Garment): readonly Finding[] {
  return [
    ...garment.pieces.flatMap((piece) => [
      ...checkOutline(piece),
      ...dartJoints(piece).flatMap((joint) => smoothFinding(joint, undefined)),
    ]),
    ...garment.seams.flatMap((seam) =>
      seamJoints(garment, seam).flatMap((joint) => smoothFinding(joint, seam.name)),
    ),
  ];
}

function smoothFinding(joint: Joint, seam: string | undefined): Finding[] {
  if (Math.abs(joint.off) <= CORNER_DEG || Math.abs(joint.off) > MEANT_DEG) return [];
  const { piece, lineEdge, corner } = joint.a;
  const line = piece.edges[lineEdge]!;
  const across = seam === undefined ? 'over its folded dart' : `across the seam “${seam}”`;
  return [
    {
      code: 'corner-not-smooth',
      severity: 'note',
      where: {
        piece: piece.id,
        edge: line.id,
        at: pathStart(piece.edges[corner]!.path),
        ...(seam === undefined ? {} : { seam: joint.seam }),
      },
      amount: joint.off,
      message: `${piece.name}: ${line.name} turns by ${Math.abs(joint.off).toFixed(0)}° ${across} (${Math.round(joint.a.angle)}° and ${Math.round(joint.b.angle)}°, together they should make 180°).`,
      remedy: {
        say: 'Smooth it by truing',
        steps: [
          seam === undefined
            ? { id: `true-${piece.id}`, kind: 'true' }
            : { id: `true-${joint.seam}`, kind: 'true', seams: [joint.seam] },
        ],
      },
    },
  ];
}
