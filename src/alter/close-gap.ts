import { angleBetween, distance, pathAt, pathIntersections, linePath, sub } from '../geometry/index.ts';
import type { Point } from '../geometry/index.ts';
import { say } from '../garment/index.ts';
import type { DrawnPiece } from '../garment/index.ts';
import type { Param, Values } from './alteration.ts';
import { cut, tell } from './change.ts';
import type { Change } from './change.ts';
import { dartOf } from './dart.ts';
import { edgesOf } from './edge-role.ts';
import type { EdgeRole } from './edge-role.ts';
import { hingePart, openingAngle, openingAt } from './hinge.ts';
import { choiceParam, inch, lengthParam } from './param.ts';
import { Refusal } from './refusal.ts';
import { withEdge } from './roles.ts';
import type { Half } from './roles.ts';

/** Parameters of closing a gap at an edge. */
export const gapParams = (what: string): readonly Param[] => [
  lengthParam('gap', `gap at the ${what}, on each half`, {
    default: inch(0.25),
    min: 0,
    max: 40,
    limit: {
      most: inch(0.75),
      say: 'A larger gap is bust or back width missing elsewhere.',
      source: 'common practice',
    },
  }),
  choiceParam('half', 'where', [
    { id: 'front', name: 'front' },
    { id: 'back', name: 'back' },
  ]),
];

export const sayGap = (what: string, values: Values): string =>
  `${what}, ${values.word('half')}: gap of ${say(values.mm('gap'))} on each half folded out into the nearest dart or seam`;

interface Fold {
  readonly hinge: Point;
  readonly other?: Point;
  readonly into: string;
  readonly reach?: number;
}

/** Where the fold ends: at the point of the dart that serves the bust (or the first one), else on the nearest seam across. */
function foldEnd(piece: DrawnPiece, mouth: Point, role: EdgeRole): Fold {
  const dart =
    piece.darts.find((d) => d.serves === 'bust' && /side|arm|should/.test(`${d.id} ${d.name}`)) ??
    piece.darts[0];
  if (dart) {
    const d = dartOf(piece, dart.id);
    const middle = { x: (d.a.x + d.b.x) / 2, y: (d.a.y + d.b.y) / 2 };
    return { hinge: d.point, other: middle, into: `the ${dart.name}`, reach: distance(d.point, d.a) };
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
      if (!blocked) return { hinge, into: `nothing at the ${edge.name}` };
    }
  }
  throw new Refusal(
    'no-way-out',
    `${piece.name} has neither a dart nor a seam into which the gap could be folded.`,
    { piece: piece.id },
  );
}

/**
 * Folds a wedge out at the middle of an edge, to nothing at a dart's point (which opens by the same angle) or at the seamline across.
 * Tells where it went.
 */
export function closeGap(change: Change, role: EdgeRole, values: Values): void {
  const gap = values.mm('gap');
  for (const panel of withEdge(change.garment, values.word('half') as Half, role)) {
    const edges = edgesOf(panel, role);
    // Several armhole edges on panels of one half: the gap is taken where the half's armhole begins.
    if (role === 'armhole' && edges.length === 0) continue;
    cut(change, panel.id, (piece) => {
      const edge = edgesOf(piece, role)[0]!;
      const mouth = pathAt(edge.path, 0.5);
      const fold = foldEnd(piece, mouth, role);
      const angle = openingAngle(gap, distance(mouth, fold.hinge));
      const toDart = fold.other ? angleBetween(sub(mouth, fold.hinge), sub(fold.other, fold.hinge)) : 0;
      tell(change, {
        code: 'gap-closed',
        severity: 'note',
        where: { piece: piece.id, edge: edge.id },
        amount: gap,
        message: fold.reach
          ? `${piece.name}: ${say(gap)} folded out at the ${edge.name}; ${fold.into} opens by ${say(openingAt(angle, fold.reach))}.`
          : `${piece.name}: ${say(gap)} folded out at the ${edge.name}, to ${fold.into}.`,
      });
      // The part between mouth and dart turns; which one it is depends on the side the dart lies.
      if (fold.other) {
        return toDart > 0
          ? (p) => hingePart(p, { hinge: fold.hinge, mouth, other: fold.other!, angle: -angle })
          : (p) => hingePart(p, { hinge: fold.hinge, mouth: fold.other!, other: mouth, angle });
      }
      // Of the two parts the one with the centre stays: counter-clockwise of a neckline's middle lies the centre, of an armhole's the shoulder.
      const before = role === 'neck';
      return (p) => hingePart(p, { hinge: fold.hinge, mouth, angle: -angle, before });
    });
    return;
  }
}
