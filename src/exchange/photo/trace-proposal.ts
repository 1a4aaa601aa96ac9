import {
  boxAround,
  cubicCount,
  distance,
  linePath,
  pathBox,
  pathEnd,
  pathJoin,
  pathLength,
  pathReverse,
  pathStart,
  pathsArea,
  placeTangent,
} from '../../geometry/index.ts';
import type { Path, Point } from '../../geometry/index.ts';
import type { Cloth } from '../../garment/index.ts';
import type { Drawing } from '../drawing/drawing.ts';
import { findAsks } from '../find/ask.ts';
import { findFollowers } from '../find/follower.ts';
import { findDarts, nameEdges } from '../find/piece.ts';
import type { Proposal, ProposedEdge, ProposedPiece, ProposedSize } from '../find/proposal.ts';
import { settleKinds } from '../find/recognise.ts';
import { findSeams } from '../find/seams.ts';
import { sameTopology } from '../find/topology.ts';
import { findAssembly } from '../tiles/assembly.ts';
import { PhotoError } from './camera.ts';

/** One piece as traced: `runs[size][edge]`, mm, each run from corner to corner, starting where the one before ends. */
export interface TracedPiece {
  readonly name: string;
  readonly runs: readonly (readonly Path[])[];
  readonly cloth?: Cloth;
  readonly cut?: { readonly count: number; readonly mirrored: boolean };
  /** Which run lies on the fold of the cloth. */
  readonly fold?: number;
  /** Two places on the grainline, upwards; upright when left out. */
  readonly grain?: readonly [Point, Point];
}

/** The outline must close to this, mm: a larger gap is a forgotten run. */
const CLOSES_MM = 5;

/**
 * What was traced from photographs or scans as a proposal like any file's: edges of one topology over the sizes, darts, seams and followers
 * proposed. `patternFrom` makes the pattern. `sizes` are the labels in the order traced; they are put in order by girth.
 * Throws PhotoError: sizes with unlike numbers of runs, outlines that do not close, nothing traced.
 */
export function proposalFromTrace(
  name: string,
  sizes: readonly string[],
  traced: readonly TracedPiece[],
): Proposal {
  if (traced.length === 0 || sizes.length === 0) throw new PhotoError('Nothing is traced yet.');
  const closed = traced.map((piece) => closedRuns(piece, sizes));
  const area = (k: number) => closed.reduce((sum, runs) => sum + Math.abs(pathsArea(runs[k]!)), 0);
  const order = sizes.map((_, k) => k).toSorted((a, b) => area(a) - area(b));
  const ordered = closed.map((runs) => order.map((k) => runs[k]!));
  const pieces = traced.map((piece, i) => asPiece(piece, ordered[i]!, i + 1));
  const labels = order.map((k, i): ProposedSize => ({
    id: `size-${i + 1}`,
    label: sizes[k]!,
    evidence: 'traced and named by hand',
  }));
  const sheet = asDrawing(name, pieces, labels);
  const followers = findFollowers(pieces);
  const seams = findSeams(pieces, followers);
  return {
    name,
    unitsFrom: sheet.unitsFrom,
    scale: {
      factor: 1,
      evidence: 'the references in the photograph or the resolution of the scan',
      proven: true,
    },
    assembly: findAssembly(sheet),
    sheet,
    sizes: labels,
    pieces: settleKinds(pieces, seams),
    seams,
    followers,
    asks: findAsks({ texts: [], strokes: [] }),
    findings: [],
  };
}

/** Runs by size, closed exactly and counter-clockwise. */
function closedRuns({ name, runs }: TracedPiece, sizes: readonly string[]): Path[][] {
  if (runs.length !== sizes.length)
    throw new PhotoError(`${name} is traced in ${runs.length} of ${sizes.length} sizes.`);
  const edges = runs[0]!.length;
  return runs.map((own, k) => {
    if (own.length !== edges || edges < 2)
      throw new PhotoError(
        `${name} has ${own.length} runs in size ${sizes[k]} and ${edges} in size ${sizes[0]}; every size needs the same corners, two at least.`,
      );
    const sealed = own.map((path, i): Path => {
      const next = pathStart(own[(i + 1) % edges]!);
      const gap = distance(pathEnd(path), next);
      if (gap > CLOSES_MM)
        throw new PhotoError(
          `${name}, size ${sizes[k]}: run ${i + 1} ends ${gap.toFixed(0)} mm from where the next begins.`,
        );
      return [...path.slice(0, -1), next];
    });
    return pathsArea(sealed) < 0 ? sealed.toReversed().map(pathReverse) : sealed;
  });
}

function asPiece(traced: TracedPiece, runs: readonly (readonly Path[])[], number: number): ProposedPiece {
  const count = runs[0]!.length;
  const middle = runs[Math.floor(runs.length / 2)]!;
  const turned = pathsArea(traced.runs[0]!) < 0;
  const fold = traced.fold === undefined ? -1 : turned ? count - 1 - traced.fold : traced.fold;
  const turns = middle.map((path, i) => turnAt(middle[(i + count - 1) % count]!, path));
  const plain = middle.map((_, i): ProposedEdge => {
    const { paths, off } = sameTopology(runs.map((own) => own[i]!));
    return {
      id: `edge-${i + 1}`,
      name: '',
      kind: i === fold ? 'fold' : 'seam',
      paths,
      lengths: paths.map(pathLength),
      turns: [turns[i]!, turns[(i + 1) % count]!],
      notches: [],
      off,
      evidence: 'traced from corner to corner',
    };
  });
  const darts = findDarts(plain);
  const legs = new Set(darts.flatMap((dart) => dart.legs));
  const box = boxAround(runs.flatMap((own) => own.map(pathBox)));
  const [a, b] = traced.grain ?? [
    { x: 0, y: 0 },
    { x: 0, y: 1 },
  ];
  const long = distance(a, b);
  if (!(long > 0)) throw new PhotoError(`${traced.name}: the grainline needs two places.`);
  return {
    id: `piece-${number}`,
    name: traced.name,
    cloth: traced.cloth ?? 'shell',
    cut: traced.cut ?? (fold < 0 ? { count: 2, mirrored: true } : { count: 1, mirrored: false }),
    edges: nameEdges(
      plain.map((edge) => (legs.has(edge.id) ? { ...edge, kind: 'dart' as const } : edge)),
      box,
    ),
    lines: traced.grain
      ? [{ id: 'grain', kind: 'grain', paths: runs.map(() => linePath(a, b)), evidence: 'marked by hand' }]
      : [],
    marks: [],
    areas: runs.map((own) => pathsArea(own)),
    grain: {
      direction: { x: (b.x - a.x) / long, y: (b.y - a.y) / long },
      evidence: traced.grain ? 'marked by hand' : 'taken upright',
    },
    darts,
    words: [],
    box,
    evidence: `traced in ${runs.length} sizes`,
  };
}

function turnAt(before: Path, after: Path): number {
  const u = placeTangent(before, { cubic: cubicCount(before) - 1, t: 1 });
  const v = placeTangent(after, { cubic: 0, t: 0 });
  return Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
}

function asDrawing(name: string, pieces: readonly ProposedPiece[], sizes: readonly ProposedSize[]): Drawing {
  const box = boxAround(pieces.map((piece) => piece.box));
  return {
    format: 'photo',
    name,
    pages: [{ number: 1, width: Math.max(box.maxX, 0), height: Math.max(box.maxY, 0) }],
    strokes: pieces.flatMap((piece) =>
      sizes.map((size, k) => ({
        page: 0,
        path: pathJoin(piece.edges.map((edge) => edge.paths[k]!)),
        closed: true,
        colour: '#000000',
        width: 0,
        dash: [],
        layer: size.label,
        paint: 'line' as const,
      })),
    ),
    texts: [],
    layers: sizes.map((size) => ({ name: size.label, visible: true })),
    unitsFrom: 'the references in the photograph or the resolution of the scan',
    findings: [],
  };
}
