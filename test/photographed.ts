import { notchTeeth } from '../src/cut/index.ts';
import { drawingSvg, findSheet, patternSheet, readFile } from '../src/exchange/index.ts';
import type { Plane, Proposal } from '../src/exchange/index.ts';
import { noise, photograph, pinHole } from '../src/exchange/photo/synthetic.test-case.ts';
import type { Frame } from '../src/exchange/photo/synthetic.test-case.ts';
import { timesCut } from '../src/garment/index.ts';
import type { NestedPiece, Pattern } from '../src/garment/index.ts';
import {
  add,
  boxAround,
  distance,
  pathAt,
  pathBox,
  pathEnd,
  pathIsStraight,
  pathLength,
  pathStart,
  scale,
} from '../src/geometry/index.ts';
import type { Point } from '../src/geometry/index.ts';
import { layFlat, linesBetween, nextCorners } from '../src/workbench/photo/flat.ts';
import { tracedDrawing } from '../src/workbench/photo/traced-piece.ts';
import { BEGUN, finished, traceOn } from '../src/workbench/photo/tracing.ts';
import type { Tracing, TracingAct } from '../src/workbench/photo/tracing.ts';

/** A hand on a picture that fills the screen sets a corner about so near to where it is, mm (assumed). */
const HAND_MM = 0.3;
/** Free room round the pieces on the white sheet, mm. */
const MARGIN_MM = 30;
const PIXEL_MM = 0.55;

/** The same pattern in some of its sizes. */
export function inSizes(pattern: Pattern, sizes: readonly number[]): Pattern {
  const of = <T>(all: readonly T[]): T[] => sizes.map((k) => all[k]!);
  const table = <T>(rows: Readonly<Record<string, readonly T[]>>): Record<string, T[]> =>
    Object.fromEntries(Object.entries(rows).map(([key, all]) => [key, of(all)]));
  const { chart } = pattern;
  return {
    ...pattern,
    chart: {
      ...chart,
      sizes: of(chart.sizes),
      body: table(chart.body as Record<string, readonly number[]>),
      finished: table(chart.finished),
      finishedLengths: table(chart.finishedLengths),
    },
    pieces: pattern.pieces.map((piece): NestedPiece => ({
      ...piece,
      edges: piece.edges.map((edge) => ({
        ...edge,
        path: of(edge.path),
        crossings: edge.crossings.map((one) => ({ ...one, at: of(one.at) })),
        notches: edge.notches.map((one) => ({ ...one, at: of(one.at) })),
      })),
      lines: piece.lines.map((line) => ({ ...line, path: of(line.path) })),
      marks: piece.marks.map((mark) => ({ ...mark, at: of(mark.at) })),
    })),
  };
}

/** The flat picture of the printed sheet as a tilted camera with a bent lens and a grainy sensor gives it, and where every piece lies on it. */
function photographed(pattern: Pattern): {
  readonly flat: Plane;
  readonly at: Readonly<Record<string, Point>>;
} {
  const { drawing, placement } = patternSheet(pattern, { semantics: true, width: 1000 });
  const ink = drawing.strokes.filter(({ belongs }) => belongs !== undefined);
  const box = boxAround(ink.map(({ path }) => pathBox(path)));
  const [dx, dy] = [MARGIN_MM - box.minX, MARGIN_MM - box.minY];
  const [wide, high] = [box.maxX - box.minX + 2 * MARGIN_MM, box.maxY - box.minY + 2 * MARGIN_MM];
  const above = 1.6 * wide;
  const frame: Frame = {
    width: Math.ceil((1.12 * wide) / PIXEL_MM),
    height: Math.ceil((1.12 * high) / PIXEL_MM),
    wide,
    high,
    focal: above / PIXEL_MM,
    above,
  };
  const move = (p: Point): Point => ({ x: p.x + dx, y: p.y + dy });
  const photo = photograph(
    pinHole(-0.08, 0.03, 0.1, frame),
    ink.map(({ path }) => ({ path: path.map(move), width: 0.6 })),
    4,
    frame,
  );
  const found = findSheet(photo);
  const { plane } = layFlat(photo, { corners: found.corners, wide, high, more: [] }, found);
  return {
    flat: plane,
    at: Object.fromEntries(Object.entries(placement).map(([id, p]) => [id, move(p)])),
  };
}

interface Place {
  readonly edge: NestedPiece['edges'][number];
  readonly share: number;
  /** The run that begins here is a straight one. */
  readonly straight: boolean;
}

/** On a curve a hand sets a click about so often to lead the line, mm. */
const LEAD_MM = 70;

/** Where a hand clicks round a piece: its corners, and on its way along every curve. */
const clicksRound = (piece: NestedPiece): Place[] =>
  piece.edges.flatMap((edge) => {
    const path = edge.path[0]!;
    const straight = pathIsStraight(path);
    const many = straight ? 1 : Math.max(1, Math.round(pathLength(path) / LEAD_MM));
    return Array.from({ length: many }, (_, i) => ({ edge, share: i / many, straight }));
  });

/** The lines inside a piece that a hand sets, with their ends in every size: what girths are measured along, the grain, where it is lengthened, the notches. */
function linesIn(piece: NestedPiece): { means: string; ends: (size: number) => readonly [Point, Point] }[] {
  const lines = piece.lines.flatMap(({ kind, level, path }) => {
    const means = kind === 'level' ? level! : kind === 'grain' || kind === 'adjust' ? kind : null;
    if (means === null) return [];
    return [{ means, ends: (k: number) => [pathStart(path[k]!), pathEnd(path[k]!)] as const }];
  });
  const teeth = piece.edges.flatMap((edge) =>
    edge.notches.flatMap((notch) =>
      Array.from({ length: notch.count }, (_, i) => ({
        means: 'notch',
        ends: (k: number) => {
          const { foot, inward } = notchTeeth(edge.path[k]!, notch.at[k]!, notch.count)[i]!;
          return [foot, add(foot, scale(inward, 8))] as const;
        },
      })),
    ),
  );
  return [...lines, ...teeth];
}

/** The sheet traced by hand, size by size from the smallest outwards, and read as the page reads what was traced. */
export async function traced(pattern: Pattern): Promise<Proposal> {
  const { flat, at } = photographed(pattern);
  const random = noise(21);
  const hand = ({ x, y }: Point): Point => ({ x: x + HAND_MM * random(), y: y + HAND_MM * random() });
  let t: Tracing = BEGUN;
  const act = (...acts: readonly TracingAct[]): void => {
    t = acts.reduce(traceOn, t);
  };
  const follow = (): void => {
    const { outline, size } = t;
    const { clicks, closed } = size;
    act({ act: 'traced', outline, clicks, closed, runs: linesBetween(flat, clicks, closed) });
  };
  for (const [i, piece] of pattern.pieces.entries()) {
    const origin = at[piece.id]!;
    const places = clicksRound(piece);
    const onSheet = ({ x, y }: Point): Point => ({ x: x + origin.x, y: y + origin.y });
    const placeAt = ({ edge, share }: Place, k: number): Point => onSheet(pathAt(edge.path[k]!, share));
    if (i > 0) act({ act: 'next-piece' });
    places.forEach((place, e) => {
      act(
        { act: 'straight', straight: places.at(e - 1)!.straight },
        { act: 'click', at: hand(placeAt(place, 0)) },
      );
    });
    act({ act: 'straight', straight: places.at(-1)!.straight }, { act: 'close' });
    follow();
    const fold = places.findIndex(({ edge }) => edge.kind === 'fold');
    act({ act: 'fold', run: fold < 0 ? null : fold });
    act({ act: 'call-piece', name: piece.name });
    if (fold < 0) act({ act: 'count', count: timesCut(piece) });
    const inside = linesIn(piece);
    for (const { means, ends } of inside) {
      act({ act: 'line', means });
      for (const end of ends(0)) act({ act: 'click', at: hand(onSheet(end)) });
    }
    for (const [k] of pattern.chart.sizes.entries()) {
      if (i === 0) act({ act: 'call-size', name: pattern.chart.sizes[k]!.label });
      if (k + 1 === pattern.chart.sizes.length) break;
      const { outline, size } = t;
      const next = nextCorners(flat, {
        runs: size.runs.map((run) => run.path),
        clicks: size.clicks,
        inwards: false,
      });
      act({ act: 'next-size', outline, inwards: false, ...next });
      // What is off is dragged to where it belongs.
      places.forEach((place, e) => {
        const want = placeAt(place, k + 1);
        if (distance(t.size.clicks[e]!.at, want) > 2 * HAND_MM)
          act({ act: 'move', corner: e, to: hand(want) });
      });
      follow();
      inside.forEach(({ ends }, line) =>
        ends(k + 1).forEach((p, end) => {
          const want = onSheet(p);
          if (distance(t.size.lines[line]!.ends[end as 0 | 1], want) > 2 * HAND_MM)
            act({ act: 'move-line', line, end: end as 0 | 1, to: hand(want) });
        }),
      );
    }
  }
  const made = finished(t)!;
  const drawing = tracedDrawing('traced', made.pieces, made.sizes);
  return readFile(new TextEncoder().encode(drawingSvg(drawing)), 'traced.svg');
}
