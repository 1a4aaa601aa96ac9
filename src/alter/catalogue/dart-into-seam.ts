import { t, hasRole } from '../../garment/index.ts';
import { alterFinding } from '../words/words-table.ts';
import {
  pathAt,
  pathEnd,
  pathLength,
  pathLineIntersections,
  pathStart,
  shareAtPlace,
  sub,
  unit,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { DrawnPiece, EdgeRole } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { draw, tell, mapSeams } from '../follow/change.ts';
import { easeDart } from '../follow/dart-change.ts';
import { chosenDart, DART_PARAMS, sayDart } from '../ways/dart-choice.ts';
import { dartOf } from '../dart/dart.ts';
import { pullEdges } from '../move/pull.ts';
import type { Pull } from '../move/pull.ts';
import { Refusal } from '../words/refusal.ts';

interface Way {
  /** The edge between the dart and the seam that takes it in, and which of its ends meets that seam. */
  readonly mouth: string;
  readonly end: 'start' | 'end';
  readonly seam: string;
}

const TAKES_IN: readonly EdgeRole[] = ['side', 'panel', 'centre', 'shoulder', 'armhole'];

/** The seam nearest to the dart along its own edge: side, panel or centre seam, never a fold. */
function nearestSeam(piece: DrawnPiece, dart: string): Way {
  const d = dartOf(piece, dart);
  const n = piece.edges.length;
  const options = (
    [
      [(d.second + 1) % n, (d.second + 2) % n, 'end'],
      [(d.first + n - 1) % n, (d.first + n - 2) % n, 'start'],
    ] as const
  ).flatMap(([mouth, seam, end]): Way[] => {
    const edge = piece.edges[seam]!;
    return edge.kind === 'seam' && TAKES_IN.some((role) => hasRole(edge, role))
      ? [{ mouth: piece.edges[mouth]!.id, end, seam: edge.id }]
      : [];
  });
  const found = options[0];
  if (!found) throw new Refusal('no-seam', { piece: piece.name }, { piece: piece.id });
  return found;
}

/** The corner taken in by the intake along the mouth's edge; the seam runs back to its old line at the height of the dart's point. */
function takeIn(piece: DrawnPiece, way: Way, intake: number, pointY: number): Pull[] {
  const mouth = piece.edges.find((e) => e.id === way.mouth)!;
  const seam = piece.edges.find((e) => e.id === way.seam)!;
  const inwards =
    way.end === 'end'
      ? unit(sub(pathStart(mouth.path), pathEnd(mouth.path)))
      : unit(sub(pathEnd(mouth.path), pathStart(mouth.path)));
  return [
    { edge: way.mouth, at: way.end === 'end' ? 1 : 0, by: { x: inwards.x * intake, y: inwards.y * intake } },
    ...stillAt(seam, pointY),
  ];
}

/** The seam stays where it is at the height of the dart's point, and below. */
function stillAt(seam: DrawnPiece['edges'][number], pointY: number): Pull[] {
  const back = pathLineIntersections(seam.path, { x: 0, y: pointY }, { x: 1, y: pointY })[0];
  return back
    ? [{ edge: seam.id, at: shareAtPlace(seam.path, back.place), by: { x: 0, y: 0 }, smooth: true }]
    : [];
}

/** Near enough to the corner to give the seam's direction there. */
const NEAR = 0.02;
/** Each move disturbs the other length a little, the lines meeting nearly square; so many rounds leave less than a hundredth of a millimetre. */
const ROUNDS = 8;

/**
 * Slanted, the seam is longer than it was: its corner slides down along it until it is as long as its partner expects, and in or out until the mouth's edge
 * is short of its old length by what the dart took.
 */
function keepLengths(piece: DrawnPiece, way: Way, wanted: Lengths, pointY: number): DrawnPiece {
  let now = piece;
  for (let round = 0; round < ROUNDS; round++) {
    const edges = [now.edges.find((e) => e.id === way.seam)!, now.edges.find((e) => e.id === way.mouth)!];
    const [seam, mouth] = edges as [(typeof edges)[number], (typeof edges)[number]];
    // The seam starts where the mouth ends, or ends where it starts.
    const seamWay = inFrom(seam.path, way.end === 'start');
    const mouthWay = inFrom(mouth.path, way.end === 'end');
    const down = pathLength(seam.path) - wanted.seam;
    const inwards = pathLength(mouth.path) - wanted.mouth;
    now = pullEdges(now, [
      {
        edge: way.mouth,
        at: way.end === 'end' ? 1 : 0,
        by: { x: seamWay.x * down + mouthWay.x * inwards, y: seamWay.y * down + mouthWay.y * inwards },
      },
      ...stillAt(seam, pointY),
    ]);
  }
  return now;
}

interface Lengths {
  readonly seam: number;
  readonly mouth: number;
}

/** Direction from a path's end (its start) back into it. */
function inFrom(path: Path, atEnd: boolean): Point {
  return unit(atEnd ? sub(pathAt(path, 1 - NEAR), pathEnd(path)) : sub(pathAt(path, NEAR), pathStart(path)));
}

export const dartIntoSeam: Alteration = {
  id: 'dart-into-seam',
  group: 'darts',
  name: t`Dart moved into a seam`,
  when: t`A dart next to a seam is left out, and the seam takes in what it took.`,
  source: 'docs/trade.md 5.0 (redraw dart or seam: NM228, seen), 5.13 (drop a dart, redistribute; memory)',
  params: DART_PARAMS,
  reach: [
    t`the neighbouring seam from the mouth to the height of the dart point`,
    t`the width at the mouth stays`,
    t`lining`,
  ],
  shows: { on: 'skirt', params: { piece: 'front', dart: 'dart' } },
  make(change, values) {
    const { piece, dart } = chosenDart(change, values);
    const pointY = dartOf(piece, dart).point.y;
    const way = nearestSeam(piece, dart);
    const seams = change.garment.seams;
    const intake = easeDart(change, piece.id, dart);
    // Nothing is eased after all: the seams keep the joins they had.
    mapSeams(change, (seam) => {
      const old = seams.find((s) => s.id === seam.id);
      return old ? { ...seam, join: old.join } : seam;
    });
    draw(change, piece.id, (p) => {
      const size = (id: string): number => pathLength(p.edges.find((e) => e.id === id)!.path);
      const wanted = { seam: size(way.seam), mouth: size(way.mouth) - intake };
      return keepLengths(pullEdges(p, takeIn(p, way, intake, pointY)), way, wanted, pointY);
    });
    tell(
      change,
      alterFinding(
        'seam-takes-dart',
        'note',
        { piece: piece.id, edge: way.seam },
        { piece: piece.name, intake },
        { amount: intake },
      ),
    );
  },
  sentence: (values) => t`${sayDart(values)}: left out, taken in at the seam beside it`,
};
