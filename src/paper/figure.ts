import { cuttingOutline } from '../cut/index.ts';
import type { Cutting, SewingOrder } from '../cut/index.ts';
import type { DrawnPiece, Pattern } from '../garment/index.ts';
import { STORED_MM, distance, pathEnd, pathStart, pointsBox, polylinePath } from '../geometry/index.ts';
import type { Path, Point } from '../geometry/index.ts';
import { cutWords, renderPhrase, type Phrase } from '../garment/index.ts';
import { dartLines } from './dart-lines.ts';
import type { Figure, Stroke, Words } from './drawing.ts';
import type { Heading } from './front.ts';
import { labelRing, setLabel } from './label.ts';
import type { LabelLine } from './label.ts';
import { markStrokes } from './mark.ts';
import { nestLines } from './nest-lines.ts';
import { notchStrokes } from './notch.ts';
import { allowanceWords, beside, forPerson } from './printed-words.ts';
import { foldBracket, innerLines } from './piece-lines.ts';
import { movePiece, uprightTurn } from './upright.ts';

/** What is written on every piece, and what is drawn. Clocks and sizes are the caller's: same choices, same drawing. */
export interface FigureChoices extends Heading {
  /** Draw the cutting line outside of the stitching line. Without, the stitching line is all there is. */
  readonly allowances: boolean;
  /** The pattern whose other sizes are drawn faintly; absent: none. */
  readonly nest?: Pattern;
}

/** One piece as it is printed, its grainline upright: lines by layer and words, in its own place. */
export function drawFigure(given: DrawnPiece, order: SewingOrder, choices: FigureChoices): Figure {
  const turn = uprightTurn(given);
  const piece = movePiece(given, turn);
  const cutting = choices.allowances ? cuttingOutline(piece, order) : undefined;
  const stitched: Path[] = piece.edges.map((e) => e.path);
  const ring = cutting?.outline ?? labelRing(stitched);

  const say = (phrase: Phrase): string => renderPhrase(phrase, choices.tell);
  const strokes: Stroke[] = [];
  const words: Words[] = [];
  const put = (made: { strokes: Stroke[]; words?: Words[] }): void => {
    strokes.push(...made.strokes);
    words.push(...(made.words ?? []));
  };
  put(innerLines(piece, say));
  put({ strokes: dartLines(piece) });
  put({ strokes: outlineStrokes(piece, cutting) });
  put(foldBracket(piece, say));
  put({ strokes: notchStrokes(piece, choices.allowances) });
  put({ strokes: markStrokes(piece) });

  const inside = labelRing(stitched);
  const lines = (layers: readonly string[]): Path[] =>
    strokes.filter((s) => layers.includes(s.layer)).map((s) => s.path);
  const label = setLabel(
    inside,
    [
      lines(['grain', 'inner', 'marks', 'adjust', 'levels', 'fold']),
      lines(['grain', 'inner', 'marks', 'fold']),
      [],
    ],
    labelLines(piece, choices, say),
  );
  words.push(...label.map((w) => ({ ...w, piece: piece.id })));
  const box = pointsBox(ring);
  const nest = choices.nest ? nestLines(given, choices.nest, turn, box) : { strokes: [], words: [] };
  return {
    piece: piece.id,
    name: piece.name,
    number: piece.number,
    ring,
    box,
    strokes: [...nest.strokes, ...strokes],
    words: [...nest.words, ...words],
  };
}

/** Cutting line solid and stitching line dashed; without allowances the stitching line is the only one and drawn solid. A fold edge is neither. */
function outlineStrokes(piece: DrawnPiece, cutting: Cutting | undefined): Stroke[] {
  const folds: Stroke[] = piece.edges
    .filter((e) => e.kind === 'fold')
    .map((e) => ({ layer: 'fold', piece: piece.id, edge: e.id, path: e.path }));
  const stitching: Stroke[] = piece.edges
    .filter((e) => e.kind !== 'fold' && (!cutting || e.kind === 'dart' || e.allowance > 0))
    .map((e) => ({
      layer: 'stitching',
      piece: piece.id,
      edge: e.id,
      path: e.path,
      ...(cutting || e.kind === 'dart' ? {} : { ink: { dash: [], width: 0.5 } }),
    }));
  if (!cutting) return [...stitching, ...folds];
  const cuts: Stroke[] =
    cutting.looped > STORED_MM
      ? [{ layer: 'cutting', piece: piece.id, path: offTheFold(cutting) }]
      : cutting.sides
          .filter((s) => s.kind !== 'fold')
          .map((s) => ({
            layer: 'cutting',
            piece: piece.id,
            ...(s.edge === undefined ? {} : { edge: s.edge }),
            path: s.cut,
          }));
  // Along a fold the allowances of its neighbours run on to the fold line.
  const foldEnds: Stroke[] = cutting.sides
    .filter((s) => s.kind === 'fold')
    .map((s) => ({
      layer: 'fold',
      piece: piece.id,
      ...(s.edge === undefined ? {} : { edge: s.edge }),
      path: s.cut,
    }));
  return [...stitching, ...cuts, ...foldEnds];
}

/** The outline whose loops are cut off, from one end of the fold round to the other; the whole of it on a piece without a fold. */
function offTheFold({ outline, sides }: Cutting): Path {
  const fold = sides.find((s) => s.kind === 'fold')?.cut;
  if (!fold) return polylinePath([...outline, outline[0]!]);
  const nearest = (to: Point): number =>
    outline.reduce((best, p, i) => (distance(p, to) < distance(outline[best]!, to) ? i : best), 0);
  const [from, to] = [nearest(pathEnd(fold)), nearest(pathStart(fold))];
  const around = outline.map((_, i) => outline[(from + i) % outline.length]!);
  return polylinePath(around.slice(0, ((to - from + outline.length) % outline.length) + 1));
}

function labelLines(piece: DrawnPiece, choices: FigureChoices, say: (phrase: Phrase) => string): LabelLine[] {
  const { title, size, person, date } = choices;
  return [
    { text: `${piece.number}  ${piece.name}`, scale: 1.6, bold: true },
    { text: say(cutWords(piece)), scale: 1, bold: true },
    { text: title, scale: 1 },
    { text: say(beside([size, person ? forPerson(person) : null])), scale: 1 },
    { text: say(allowanceWords(piece, choices.allowances)), scale: 0.85 },
    { text: date, scale: 0.85 },
  ];
}
