import { alterFinding } from '../words/words-table.ts';
import {
  angleBetween,
  distance,
  dot,
  linePath,
  nearestPlace,
  pathAt,
  pathIntersections,
  scale,
  sub,
  unit,
} from '../../geometry/index.ts';
import type { Point } from '../../geometry/index.ts';
import { sideOf, t, type Phrase, keyWord, len, edgesOf, hasRole } from '../../garment/index.ts';
import type { DrawnPiece, EdgeRole, Half } from '../../garment/index.ts';
import type { Param, Values } from '../entry/alteration.ts';
import { ON_EDGE_MM } from '../move/carry.ts';
import { cut, draw, tell } from '../follow/change.ts';
import type { Change } from '../follow/change.ts';
import { dartOf } from '../dart/dart.ts';
import { hingePart, openingAngle, openingAt } from '../move/hinge.ts';
import { choiceParam, inch, lengthParam } from '../entry/param.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';
import { withEdge } from '../role/roles.ts';
import { outward } from '../move/run-on.ts';

/** Parameters of closing a gap at an edge. */
export const gapParams = (name: Phrase): readonly Param[] => [
  lengthParam('gap', name, {
    default: inch(0.25),
    min: 0,
    max: 40,
    limit: {
      most: inch(0.75),
      say: t`A larger gap is bust or back width missing elsewhere.`,
      source: 'common practice',
    },
  }),
  choiceParam('half', t`where`, [
    { id: 'front', name: t`front` },
    { id: 'back', name: t`back` },
  ]),
];

export const sayGap = (what: Phrase, values: Values): Phrase =>
  t`${what}, ${keyWord('half', values.word('half'))}: gap of ${len(values.mm('gap'))} on each half folded out into the nearest dart or seam`;

interface Fold {
  readonly hinge: Point;
  readonly other?: Point;
  /** The dart that opens, or the edge the fold runs out at. */
  readonly into: string;
  readonly reach?: number;
}

/** Whether a dart opens in the side, the armhole or the shoulder, away from the waist. */
function opensAside(piece: DrawnPiece, dart: string): boolean {
  const n = piece.edges.length;
  const before = piece.edges[(dartOf(piece, dart).first + n - 1) % n]!;
  return (['side', 'armhole', 'shoulder'] as const).some((role) => hasRole(before, role));
}

/** Where the fold ends: at the point of the dart that serves the bust (or the first one), else on the nearest seam across. */
function foldEnd(piece: DrawnPiece, mouth: Point, role: EdgeRole): Fold {
  const dart = piece.darts.find((d) => d.serves === 'bust' && opensAside(piece, d.id)) ?? piece.darts[0];
  if (dart) {
    const d = dartOf(piece, dart.id);
    const middle = { x: (d.a.x + d.b.x) / 2, y: (d.a.y + d.b.y) / 2 };
    return { hinge: d.point, other: middle, into: dart.name, reach: distance(d.point, d.a) };
  }
  // No dart: to nothing at a seam, where paper may hinge without a change of that seam's length.
  const roles: readonly EdgeRole[] = role === 'neck' ? ['panel', 'armhole'] : ['panel', 'neck'];
  for (const seam of roles) {
    const edge = edgesOf(piece, seam)[0];
    if (!edge) continue;
    for (const share of [0.5, 0.35, 0.65, 0.2, 0.8]) {
      const hinge = pathAt(edge.path, share);
      const line = linePath(mouth, hinge);
      const blocked = piece.edges.some((e) =>
        pathIntersections(line, e.path).some(
          (hit) => distance(hit.point, mouth) > 1 && distance(hit.point, hinge) > 1,
        ),
      );
      if (!blocked) return { hinge, into: edge.name };
    }
  }
  throw new Refusal('no-way-out', { piece: piece.name }, { piece: piece.id });
}

/** Of the two parts of a fold from an edge to a seam the one turns that has no centre line: centre and fold stay on the grain. */
function turnsBefore(piece: DrawnPiece, mouth: string, hinge: Point): boolean {
  const n = piece.edges.length;
  const at = piece.edges.findIndex((e) => e.id === mouth);
  const to = piece.edges.findIndex((e) => nearestPlace(e.path, hinge).distance < ON_EDGE_MM);
  for (let i = (at + 1) % n; i !== to && i !== at; i = (i + 1) % n) {
    if (hasRole(piece.edges[i]!, 'centre') || piece.edges[i]!.kind === 'fold') return true;
  }
  return false;
}

/** A panel seam takes the gap in as a dart would, running out to nothing at this share of the way along it. */
const TAKEN_IN_TO = 0.4;

/** Sine of the flattest angle between seam and edge at which a pinch still counts whole (30°). */
const LEAST_SLANT = 0.5;

/** The corners where panel seams of the piece run into the edge, each moved in until the edge is shorter by `mm`. */
function takenIn(piece: DrawnPiece, role: EdgeRole, mm: number): Pull[] {
  const n = piece.edges.length;
  return piece.edges.flatMap((edge, i): Pull[] => {
    if (!hasRole(edge, 'panel')) return [];
    const [before, after] = [piece.edges[(i + n - 1) % n]!, piece.edges[(i + 1) % n]!];
    const atEnd = hasRole(after, role);
    if (!atEnd && !hasRole(before, role)) return [];
    const into = scale(atEnd ? outward(after.path, 'start') : outward(before.path, 'end'), -1);
    // Square to the seam, so that it keeps its length as a pinched one does; so far that the edge is shorter by the whole amount.
    const along = outward(edge.path, atEnd ? 'end' : 'start');
    const square = unit(sub(into, scale(along, dot(into, along))));
    const by = scale(square, mm / Math.max(LEAST_SLANT, dot(into, square)));
    return [
      { edge: edge.id, at: atEnd ? 1 : 0, by },
      { edge: edge.id, at: atEnd ? 1 - TAKEN_IN_TO : TAKEN_IN_TO, by: { x: 0, y: 0 }, smooth: true },
    ];
  });
}

/** Where no dart can take the gap, a panel seam that runs into the edge does: half on each of its sides. False when there is none. */
function seamTakesGap(change: Change, panels: readonly DrawnPiece[], role: EdgeRole, gap: number): boolean {
  const reached = panels.filter((p) => takenIn(p, role, gap / 2).length > 0);
  if (reached.length < 2) return false;
  for (const { id } of reached) draw(change, id, (piece) => pullEdges(piece, takenIn(piece, role, gap / 2)));
  const pieces = reached.map((p) => p.name);
  const values = { pieces, gap, to: { way: 'between' as const, role } };
  tell(change, alterFinding('gap-closed', 'note', { piece: reached[0]!.id }, values, { amount: gap }));
  return true;
}

/**
 * Folds a wedge out at the middle of an edge, to nothing at a dart's point (which opens by the same angle) or at the seamline across.
 * Tells where it went.
 */
export function closeGap(change: Change, role: EdgeRole, values: Values): void {
  // The armhole stood away from the body; the arm is as thick as before.
  if (role === 'armhole') change.armKept = true;
  const found = withEdge(change.garment, values.word('half') as Half, role);
  for (const side of new Set(found.map((p) => sideOf(p)))) {
    const panels = found.filter((p) => sideOf(p) === side);
    const dart = panels.find((p) => p.darts.length > 0);
    if (!dart && seamTakesGap(change, panels, role, values.mm('gap'))) continue;
    // On panels the gap is taken where the half's edge begins.
    foldOut(change, panels[0]!, role, values.mm('gap'));
  }
}

function foldOut(change: Change, panel: DrawnPiece, role: EdgeRole, gap: number): void {
  cut(change, panel.id, (piece) => {
    const edge = edgesOf(piece, role)[0]!;
    const mouth = pathAt(edge.path, 0.5);
    const fold = foldEnd(piece, mouth, role);
    const angle = openingAngle(gap, distance(mouth, fold.hinge));
    const toDart = fold.other ? angleBetween(sub(mouth, fold.hinge), sub(fold.other, fold.hinge)) : 0;
    const to =
      fold.reach === undefined
        ? { way: 'seam' as const, edge: edge.name, seam: fold.into }
        : {
            way: 'dart' as const,
            edge: edge.name,
            dart: fold.into,
            opens: openingAt(angle, fold.reach),
          };
    const where = { piece: piece.id, edge: edge.id };
    const values = { pieces: [piece.name], gap, to };
    tell(change, alterFinding('gap-closed', 'note', where, values, { amount: gap }));
    // The part between mouth and dart turns; which one it is depends on the side the dart lies.
    if (fold.other) {
      return toDart > 0
        ? (p) => hingePart(p, { hinge: fold.hinge, mouth, other: fold.other!, angle: -angle })
        : (p) => hingePart(p, { hinge: fold.hinge, mouth: fold.other!, other: mouth, angle });
    }
    const before = turnsBefore(piece, edge.id, fold.hinge);
    return (p) => hingePart(p, { hinge: fold.hinge, mouth, angle: -angle, before });
  });
}
