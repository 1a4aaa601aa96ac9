import type { DrawnPiece, Finding, Garment } from '../garment/index.ts';
import { t } from '../garment/index.ts';
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
import { checkFinding } from './words-table.ts';

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
    return [checkFinding('outline-not-a-number', 'error', where, { piece: piece.name })];
  }
  const paths = piece.edges.map((e) => e.path);
  const findings: Finding[] = [];
  piece.edges.forEach((edge, i) => {
    const next = piece.edges[(i + 1) % piece.edges.length]!;
    const gap = distance(pathEnd(edge.path), pathStart(next.path));
    if (gap > STORED_MM) {
      findings.push(
        checkFinding(
          'outline-open',
          'error',
          { ...where, edge: edge.id, at: pathEnd(edge.path) },
          { piece: piece.name, edge: edge.name, next: next.name, gap },
          { amount: gap },
        ),
      );
    }
    const length = pathLength(edge.path);
    if (length < TINY_MM) {
      findings.push(
        checkFinding(
          'edge-tiny',
          'warning',
          { ...where, edge: edge.id, at: pathStart(edge.path) },
          { piece: piece.name, edge: edge.name, length },
          { amount: length },
        ),
      );
    }
    const back = turnsBack(edge.path);
    if (back) {
      findings.push(
        checkFinding(
          'edge-turns-back',
          'error',
          { ...where, edge: edge.id, at: back },
          { piece: piece.name, edge: edge.name },
        ),
      );
    }
  });
  if (pathsArea(paths) <= 0) {
    findings.push(checkFinding('outline-inverted', 'error', where, { piece: piece.name }));
  }
  for (const meeting of selfIntersections(paths)) {
    if (meeting.kind !== 'crosses') continue;
    const [a, b] = [piece.edges[meeting.a.path]!, piece.edges[meeting.b.path]!];
    findings.push(
      checkFinding(
        'outline-crosses-itself',
        'error',
        { ...where, edge: a.id, at: meeting.point },
        { piece: piece.name, edge: a.name, other: a === b ? null : b.name },
      ),
    );
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
        checkFinding(
          'dart-without-legs',
          'error',
          { piece: piece.id },
          { piece: piece.name, dart: dart.name },
        ),
      ];
    }
    const off = pathLength(first.path) - pathLength(second.path);
    const severity = seamSeverity(off);
    if (!severity) return [];
    return [
      checkFinding(
        'dart-legs-differ',
        severity,
        { piece: piece.id, edge: (off > 0 ? first : second).id },
        { piece: piece.name, dart: dart.name, off: Math.abs(off) },
        {
          amount: Math.abs(off),
          remedy: { say: t`True the darts`, steps: [{ id: `true-${piece.id}-${dart.id}`, kind: 'true' }] },
        },
      ),
    ];
  });
}

function squareFindings(piece: DrawnPiece): Finding[] {
  return centreCorners(piece).flatMap(({ side, off }): Finding[] => {
    if (Math.abs(off) <= CORNER_DEG || Math.abs(off) > MEANT_DEG) return [];
    const line = piece.edges[side.lineEdge]!;
    const fold = piece.edges[side.seamEdge]!.kind === 'fold';
    return [
      checkFinding(
        'corner-not-square',
        'note',
        { piece: piece.id, edge: line.id, at: pathStart(piece.edges[side.corner]!.path) },
        { piece: piece.name, edge: line.name, angle: side.angle, fold, peak: off > 0 },
        { amount: off },
      ),
    ];
  });
}

function grainFindings(piece: DrawnPiece): Finding[] {
  const grain = piece.lines.find((l) => l.kind === 'grain');
  if (!grain) {
    return [checkFinding('grain-missing', 'note', { piece: piece.id }, { piece: piece.name })];
  }
  const fold = piece.edges.find((e) => e.kind === 'fold');
  if (!fold) return [];
  const off = Math.abs(directionOf(fold.path) - directionOf(grain.path)) % 180;
  const angle = Math.min(off, 180 - off);
  if (angle <= GRAIN_DEG || angle > SLANT_DEG) return [];
  return [
    checkFinding(
      'grain-off',
      'warning',
      { piece: piece.id, edge: fold.id },
      { piece: piece.name, angle },
      { amount: angle },
    ),
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
  return [
    checkFinding(
      'corner-not-smooth',
      'note',
      {
        piece: piece.id,
        edge: line.id,
        at: pathStart(piece.edges[corner]!.path),
        ...(seam === undefined ? {} : { seam: joint.seam }),
      },
      {
        piece: piece.name,
        edge: line.name,
        off: joint.off,
        seam: seam ?? null,
        a: joint.a.angle,
        b: joint.b.angle,
      },
      {
        amount: joint.off,
        remedy: {
          say: t`Smooth it by truing`,
          steps: [
            seam === undefined
              ? { id: `true-${piece.id}`, kind: 'true' }
              : { id: `true-${joint.seam}`, kind: 'true', seams: [joint.seam] },
          ],
        },
      },
    ),
  ];
}
