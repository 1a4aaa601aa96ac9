import { middleOf } from '../../garment/index.ts';
import { EVIDENCE_WORDS as SAY, reasons } from '../words/evidence-table.ts';
import { exchangeFinding } from '../words/words-table.ts';
import {
  boxAround,
  boxesTouch,
  distance,
  nearestPlace,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  pathsArea,
  pointsBox,
} from '../../geometry/index.ts';
import type { Box, Path, Point } from '../../geometry/index.ts';
import type { EdgeKind, Finding } from '../../garment/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import { alignCorners, cutAtPlaces } from './align.ts';
import type { AlignedCorner } from './align.ts';
import { findCrosses } from './cross.ts';
import { openDarts } from './inner-dart.ts';
import { readLabel } from './label.ts';
import { withWordsAlong } from './words-along.ts';
import { findGrain, findLines, findNotches, toCorners } from './mark.ts';
import type { NotchSigns } from './mark.ts';
import type { LooseRun, Outline } from './outline.ts';
import type { Evidence, ProposedEdge, ProposedLine, ProposedPiece, ProposedSize, Place } from './proposal.ts';
import { foldBeside } from './fold-beside.ts';
import { cornersAsSaid } from './said-corner.ts';
import { sameTopology } from './topology.ts';

/** Everything on the sheet that a piece may own. */
export interface Surroundings {
  readonly sizes: readonly ProposedSize[];
  readonly sizeOf: (run: LooseRun | Outline) => number;
  readonly loose: readonly LooseRun[];
  readonly small: readonly Outline[];
  readonly texts: readonly DrawnText[];
}

/** A nest with one outline per size becomes a piece: edges of one topology, marks, words. `number` counts the pieces from 1. */
export function findPiece(
  outlines: readonly (Outline | null)[],
  number: number,
  around: Surroundings,
): { piece: ProposedPiece; findings: Finding[] } {
  const findings: Finding[] = [];
  const full = filled(outlines);
  const middle = full[Math.floor(full.length / 2)]!;
  const rings = [...new Set(full)].map((outline) => outline.ring);
  const box = boxAround(full.map((outline) => outline.box));
  const named = middle.style.belongs?.piece;
  const mine = (path: Path, owner: string | undefined): boolean =>
    owner !== undefined || named !== undefined ? owner === named : boxesTouch(pointsBox(path), box, 2);
  const loose = around.loose.filter((run) => mine(run.path, run.style.belongs?.piece));
  const small = around.small.filter((shape) => mine(shape.path, shape.style.belongs?.piece));
  const texts = around.texts.filter((text) => (named !== undefined ? text.belongs?.piece === named : true));
  const bySize = around.sizes.map((_, k) => loose.filter((run) => around.sizeOf(run) === k));
  const shared = loose.filter((run) => around.sizeOf(run) < 0);

  const label = readLabel(named === undefined ? rings : [boxRing(box)], texts);
  const name = named || label.name || `Piece ${label.number ?? number}`;
  const where = { piece: `piece-${number}` };
  const lacking = around.sizes.filter((_, k) => !outlines[k]).map((size) => size.label);
  if (lacking.length > 0) {
    findings.push(exchangeFinding('size-missing', 'warning', where, { piece: name, sizes: lacking }));
  }
  const said = cornersAsSaid(full);
  const aligned = said ? { corners: said, dropped: 0 } : alignCorners(full.map((outline) => outline.path));
  sayCorners(aligned.corners, aligned.dropped, name, where, around.sizes, findings);
  const grain = findGrain(rings, loose, small, texts);
  const inward = aligned.corners
    .filter((corner) => corner.turn < -2.2)
    .map((corner) => nearestPoint(corner, middle));
  const crosses = findCrosses(bySize, shared, texts, inward);
  const signsOf = (runs: readonly LooseRun[], k: number): NotchSigns => ({
    ticks: runs.filter((run) => !crosses.used.has(run)),
    shapes: small.filter((shape) => around.sizeOf(shape) === k),
  });
  const signs = bySize.map(signsOf);
  const sharedSigns = signsOf(shared, -1);
  // Where every size has words of its own, those of the size whose lines are looked at.
  const size = middle.style.belongs?.size;
  const ownTexts = texts.filter((text) => !text.belongs?.size || !size || text.belongs.size === size);
  const allLines = withGrain(
    findLines(rings, bySize, shared, ownTexts, grain.path),
    grain,
    around.sizes.length,
  );
  const start = firstCorner(aligned.corners, middle);
  const corners = [...aligned.corners.slice(start), ...aligned.corners.slice(0, start)];
  const drawnRuns = full.map((outline, k) =>
    cutAtPlaces(
      outline.path,
      corners.length > 0 ? corners.map((corner) => corner.places[k]!) : [{ cubic: 0, t: 0 }],
    ),
  );
  const { runs, turns, used } = openDarts(
    drawnRuns,
    drawnRuns[0]!.map((_, i) => corners[i]?.turn ?? 0),
    allLines,
  );
  const lines = allLines.filter((line) => !used.has(line.id));
  const fold = lines.find((line) => line.kind === 'fold')?.paths ?? null;
  const edges = runs[0]!.map((_, i): ProposedEdge => {
    const drawn = runs.map((own) => own[i]!);
    const { paths, off } = sameTopology(drawn);
    return {
      id: `edge-${i + 1}`,
      name: '',
      kind: 'seam',
      paths,
      lengths: paths.map(pathLength),
      turns: [turns[i]!, turns[(i + 1) % turns.length]!],
      notches: findNotches(drawn, signs, sharedSigns),
      off,
      evidence: SAY['between-corners'](),
    };
  });
  const darts = findDarts(edges);
  const kinds = new Map<string, EdgeKind>(
    darts.flatMap((dart) => dart.legs.map((leg) => [leg, 'dart'] as const)),
  );
  const folded =
    label.onFold || fold
      ? ((fold ? null : foldBeside(edges, kinds, texts)) ?? foldEdge(edges, kinds, grain.direction, fold))
      : null;
  if (folded) kinds.set(folded.id, 'fold');
  return {
    piece: {
      id: `piece-${number}`,
      name,
      cloth: label.cloth,
      cut: label.cut,
      ...(label.side ? { side: label.side } : {}),
      edges: nameEdges(
        withWordsAlong(
          edges.map((edge) => ({ ...edge, kind: kinds.get(edge.id) ?? edge.kind })),
          texts,
          label.name,
        ),
        box,
      ),
      lines: toCorners(
        lines,
        full.map((_, k) => edges.map((edge) => pathStart(edge.paths[k]!))),
      ),
      marks: crosses.marks,
      areas: full.map((outline, k) => (used.size > 0 ? pathsArea(runs[k]!) : pathsArea([outline.path]))),
      grain: { direction: grain.direction, evidence: grain.evidence },
      darts,
      words: label.words,
      box,
      evidence: pieceEvidence(full, lacking.length, label.evidence),
    },
    findings,
  };
}

function filled(outlines: readonly (Outline | null)[]): Outline[] {
  const known = outlines.flatMap((outline, k) => (outline ? [k] : []));
  return outlines.map(
    (outline, k) => outline ?? outlines[known.reduce((a, b) => (Math.abs(b - k) < Math.abs(a - k) ? b : a))]!,
  );
}

const boxRing = (box: Box): Point[] => [
  { x: box.minX, y: box.minY },
  { x: box.maxX, y: box.minY },
  { x: box.maxX, y: box.maxY },
  { x: box.minX, y: box.maxY },
];

function pieceEvidence(outlines: readonly Outline[], lacking: number, words: Evidence): Evidence {
  const nest = SAY['nest-of']({
    outlines: new Set(outlines).size,
    lines: Math.max(...outlines.map((outline) => outline.strokes)),
    dashes: outlines.some((outline) => outline.bridged > 0),
    shared: outlines.some((outline) => outline.shared),
    lacking,
  });
  return reasons([nest, words]);
}

function sayCorners(
  corners: readonly AlignedCorner[],
  dropped: number,
  name: string,
  where: Finding['where'],
  sizes: readonly ProposedSize[],
  findings: Finding[],
): void {
  const guessed = new Set(corners.flatMap((corner) => corner.guessed));
  if (guessed.size > 0) {
    const which = [...guessed].map((k) => sizes[k]?.label ?? '');
    findings.push(exchangeFinding('corner-guessed', 'warning', where, { piece: name, sizes: which }));
  }
  if (dropped > 0) {
    findings.push(
      exchangeFinding(
        'corner-dropped',
        'warning',
        where,
        { piece: name, count: dropped },
        { amount: dropped },
      ),
    );
  }
}

function withGrain(
  lines: readonly ProposedLine[],
  grain: { path: Path | null; evidence: Evidence },
  sizes: number,
): ProposedLine[] {
  const { path } = grain;
  if (!path) return [...lines];
  return [
    {
      id: 'grain',
      kind: 'grain',
      paths: Array.from({ length: sizes }, () => path),
      evidence: grain.evidence,
    },
    ...lines,
  ];
}

/** Outlines begin at the corner lowest and most to the left. */
function firstCorner(corners: readonly AlignedCorner[], middle: Outline): number {
  let best = 0;
  let least = Infinity;
  corners.forEach((corner, i) => {
    const place = nearestPoint(corner, middle);
    const far = place.x + place.y;
    if (far < least - 1e-6) {
      least = far;
      best = i;
    }
  });
  return best;
}

function nearestPoint(corner: AlignedCorner, middle: Outline): Point {
  const place = corner.places[Math.floor(corner.places.length / 2)]!;
  return middle.path[3 * place.cubic] ?? middle.path[0]!;
}

/** Two neighbouring runs that go in to a sharp inner corner and out again, of nearly one length: a dart. */
function findDarts(edges: readonly ProposedEdge[]): ProposedPiece['darts'] {
  const found: { legs: readonly [string, string]; evidence: Evidence }[] = [];
  edges.forEach((first, i) => {
    const second = edges[(i + 1) % edges.length]!;
    if (first === second) return;
    const m = middleOf(first.lengths.length);
    const [a, b] = [first.lengths[m]!, second.lengths[m]!];
    const mouth = distance(pathStart(first.paths[m]!), pathEnd(second.paths[m]!));
    // The outline turns right by nearly half a turn at the dart's point.
    if (
      first.turns[1] > -2.2 ||
      Math.abs(a - b) > Math.max(4, 0.06 * a) ||
      a < 25 ||
      a > 320 ||
      mouth > 0.7 * a ||
      mouth > 110
    )
      return;
    found.push({
      legs: [first.id, second.id],
      evidence: SAY['dart-legs']({ legs: [a, b], mouth }),
    });
  });
  return found;
}

/** The straight edge along the grain that lies on the drawn fold line, else the longest such edge that does not move from size to size. */
function foldEdge(
  edges: readonly ProposedEdge[],
  kinds: ReadonlyMap<string, EdgeKind>,
  grain: Point,
  fold: readonly Path[] | null,
): ProposedEdge | null {
  let best: { edge: ProposedEdge; score: number } | null = null;
  for (const edge of edges) {
    const m = middleOf(edge.paths.length);
    const path = edge.paths[m]!;
    if (kinds.has(edge.id) || !edge.paths.every((own) => pathIsStraight(own))) continue;
    const a = pathStart(path);
    const b = pathEnd(path);
    const long = distance(a, b);
    const along = Math.abs((b.x - a.x) * grain.x + (b.y - a.y) * grain.y) / long;
    const onLine = fold
      ? Math.max(nearestPlace(fold[m]!, a).distance, nearestPlace(fold[m]!, b).distance) < 3
      : false;
    if (!onLine && (along < 0.995 || fold)) continue;
    const score = long + (onLine ? 1e4 : 0);
    if (!best || score > best.score) best = { edge, score };
  }
  return best?.edge ?? null;
}

/** Neutral names by number and place: `edge 3 (right)`. What an edge is to the garment they do not say. */
export function nameEdges(edges: readonly ProposedEdge[], box: Box): ProposedEdge[] {
  const legs = edges.filter((edge) => edge.kind === 'dart');
  return edges.map((edge, i) => {
    if (edge.kind === 'fold') return { ...edge, name: 'fold' };
    if (edge.kind === 'dart') {
      const nth = edges.slice(0, i).filter((one) => one.kind === 'dart').length + 1;
      return { ...edge, name: legs.length > 1 ? `dart leg ${nth}` : 'dart leg' };
    }
    const place = placeOf(edge.paths[middleOf(edge.paths.length)]!, box);
    return { ...edge, place, name: `edge ${i + 1} (${place})` };
  });
}

function placeOf(path: Path, box: Box): Place {
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const a = pathStart(path);
  const b = pathEnd(path);
  // Counter-clockwise: the outside lies to the right of the way.
  const out = { x: b.y - a.y, y: -(b.x - a.x) };
  const x = out.x + ((a.x + b.x) / 2 - middle.x) * 0.3;
  const y = out.y + ((a.y + b.y) / 2 - middle.y) * 0.3;
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left';
  return y > 0 ? 'above' : 'below';
}
