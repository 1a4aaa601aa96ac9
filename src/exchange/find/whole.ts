import { EVIDENCE_WORDS as SAY } from '../words/evidence-table.ts';
import {
  boxAround,
  pathBox,
  pathEnd,
  pathLength,
  pathMove,
  pathStart,
  pathsArea,
  placeTangent,
  cubicCount,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import { sideOf, timesTurned, pieceAt, middleOf } from '../../garment/index.ts';
import type { NestedPiece, Pattern } from '../../garment/index.ts';
import type { Placement } from '../write/sheet.ts';
import type { Evidence, Proposal, ProposedEdge, ProposedPiece } from './proposal.ts';

/** What a pattern that came whole with its file looks like as a proposal: everything as its maker wrote it, on the sheet where it lies. */
export function wholeProposal(
  pattern: Pattern,
  placement: Placement,
): Pick<Proposal, 'sizes' | 'pieces' | 'seams' | 'followers' | 'whole'> {
  const evidence = SAY['as-written']();
  const at = (piece: string): Point => placement[piece] ?? { x: 0, y: 0 };
  return {
    whole: pattern,
    sizes: pattern.chart.sizes.map((size) => ({ ...size, evidence })),
    pieces: pattern.pieces.map((piece) => asProposed(piece, at(piece.id), evidence)),
    seams: pattern.seams.map((seam) => {
      const lengths = (refs: typeof seam.a) =>
        pattern.chart.sizes.map((_, k) =>
          refs.reduce(
            (sum, ref) =>
              sum +
              pathLength(pieceAt(pattern, ref.piece)!.edges.find((edge) => edge.id === ref.edge)!.path[k]!),
            0,
          ),
        );
      const b = lengths(seam.b);
      return {
        id: seam.id,
        name: seam.name,
        a: seam.a,
        b: seam.b,
        score: 1,
        rank: 1,
        extra: lengths(seam.a).map((length, k) => length - b[k]!),
        evidence,
      };
    }),
    followers: pattern.followers.map((one) => ({
      ...one,
      onto: pattern.chart.sizes.map(() => ({
        angle: 0,
        dx: at(one.parent).x - at(one.piece).x,
        dy: at(one.parent).y - at(one.piece).y,
      })),
      evidence,
    })),
  };
}

const rolesOf = ({ role, also, half }: NestedPiece['edges'][number]) => ({
  ...(role ? { role } : {}),
  ...(also ? { also } : {}),
  ...(half ? { half } : {}),
});

function asProposed(piece: NestedPiece, at: Point, evidence: Evidence): ProposedPiece {
  const move = (path: Path) => pathMove(path, { angle: 0, dx: at.x, dy: at.y });
  const edges = piece.edges.map((edge, i): ProposedEdge => {
    const next = piece.edges[(i + 1) % piece.edges.length]!;
    const before = piece.edges.at(i - 1)!;
    const m = middleOf(edge.path.length);
    return {
      id: edge.id,
      name: edge.name,
      kind: edge.kind,
      ...rolesOf(edge),
      paths: edge.path.map(move),
      lengths: edge.path.map(pathLength),
      turns: [turn(before.path[m]!, edge.path[m]!), turn(edge.path[m]!, next.path[m]!)],
      notches: edge.notches.map((notch) => ({
        at: notch.at,
        count: notch.count,
        ...(notch.role ? { role: notch.role } : {}),
        evidence,
      })),
      off: 0,
      evidence,
    };
  });
  const grain = piece.lines.find((line) => line.kind === 'grain')?.path[0];
  const side = sideOf(piece);
  return {
    id: piece.id,
    name: piece.name,
    ...(piece.role ? { role: piece.role } : {}),
    ...(piece.half ? { half: piece.half } : {}),
    cloth: piece.cloth,
    cut: { count: piece.worn.length, mirrored: timesTurned(piece) > 0 },
    ...(side ? { side } : {}),
    edges,
    lines: piece.lines.map((line) => ({
      id: line.id,
      kind: line.kind,
      ...(line.level === undefined ? {} : { level: line.level }),
      paths: line.path.map(move),
      evidence,
    })),
    marks: piece.marks.flatMap((mark) =>
      mark.kind === 'bust-point' || mark.kind === 'dart-point' || mark.kind === 'dot'
        ? [
            {
              id: mark.id,
              kind: mark.kind,
              at: mark.at.map((p) => ({ x: p.x + at.x, y: p.y + at.y })),
              evidence,
            },
          ]
        : [],
    ),
    areas: edges[0]!.paths.map((_, k) => pathsArea(edges.map((edge) => edge.paths[k]!))),
    grain: { direction: grain ? upwards(grain) : { x: 0, y: 1 }, evidence },
    darts: piece.darts.map((dart) => ({ legs: dart.legs, evidence })),
    words: [],
    box: boxAround(edges.flatMap((edge) => edge.paths.map(pathBox))),
    evidence,
  };
}

function turn(before: Path, after: Path): number {
  const u = placeTangent(before, { cubic: cubicCount(before) - 1, t: 1 });
  const v = placeTangent(after, { cubic: 0, t: 0 });
  return Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
}

function upwards(path: Path): Point {
  const a = pathStart(path);
  const b = pathEnd(path);
  const up = b.y >= a.y ? 1 : -1;
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return { x: (up * (b.x - a.x)) / long, y: (up * (b.y - a.y)) / long };
}
