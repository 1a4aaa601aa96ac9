import { exchangeFinding } from '../../words/words-table.ts';
import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import { boxAround, pointsBox, polylinePath, type Path, type Point } from '../../../geometry/index.ts';
import { type DrawnText, type Drawing, type Stroke } from '../../drawing/drawing.ts';
import { readEntities } from './entities.ts';
import { dxfText, readPairs } from './pairs.ts';
import { plainDrawing } from './plain.ts';
import { holdsPieces, styleOf, type DxfPiece, type DxfStyle } from './style.ts';

/** A cross this long marks a place (notch, drill) where a drawing has only lines. */
const TICK_MM = 2;

function stroke(
  piece: DxfPiece,
  layer: string,
  part: string,
  points: readonly Point[],
  closed: boolean,
): Stroke {
  return {
    page: 0,
    path: polylinePath(closed ? [...points, points[0]!] : points),
    closed,
    colour: '#000000',
    width: 0,
    dash: [],
    layer,
    paint: 'line',
    belongs: { piece: piece.name, size: piece.size, part },
  };
}

function tick(at: Point): Path {
  return polylinePath([
    { x: at.x - TICK_MM / 2, y: at.y },
    { x: at.x + TICK_MM / 2, y: at.y },
  ]);
}

function strokesOf(piece: DxfPiece): Stroke[] {
  const out: Stroke[] = [];
  if (piece.boundary.length > 2) out.push(stroke(piece, 'boundary', 'cut:boundary', piece.boundary, true));
  piece.sew.forEach((line, i) => {
    const closed = line.length > 3 && line[0]!.x === line.at(-1)!.x && line[0]!.y === line.at(-1)!.y;
    out.push(stroke(piece, 'sew', `sew:${i}`, closed ? line.slice(0, -1) : line, closed));
  });
  if (piece.grain) out.push(stroke(piece, 'grain', 'line:grain', piece.grain, false));
  if (piece.mirror) out.push(stroke(piece, 'mirror', 'line:fold', piece.mirror, false));
  piece.internals.forEach((line, i) =>
    out.push(stroke(piece, 'internal', `line:internal-${i}`, line, false)),
  );
  piece.cutouts.forEach((line, i) => out.push(stroke(piece, 'cutout', `line:cutout-${i}`, line, false)));
  const place = (layer: string, part: string) => (at: Point, i: number) =>
    out.push({ ...stroke(piece, layer, `${part}:${i}`, [at, at], false), path: tick(at) });
  piece.notches.forEach(place('notches', 'notch'));
  piece.drills.forEach(place('drill', 'drill'));
  piece.turnPoints.forEach(place('turn points', 'corner'));
  return out;
}

/** Quantity, mirror line and material in the words a printed piece would carry. */
function toldOf({ quantity, mirror, material }: DxfPiece): string {
  const [left, right] = quantity ?? [1, 1];
  const pair = right > 0 ? `, ${right} mirrored` : left > 1 ? ' alike' : '';
  return `cut ${left + right}${mirror ? ' on fold' : pair}${material ? ` of ${material}` : ''}`;
}

function middleOf({ boundary }: DxfPiece): Point {
  const box = pointsBox(boundary);
  return boundary.length === 0
    ? { x: 0, y: 0 }
    : { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

/** A read style as a neutral drawing in mm; every stroke says its piece and size. */
function dxfDrawing(style: DxfStyle, name: string): Drawing {
  const strokes = style.pieces.flatMap(strokesOf);
  const box = boxAround(strokes.map((s) => pointsBox(s.path)));
  const texts: DrawnText[] = style.pieces.flatMap((piece) =>
    [...piece.labels, { text: toldOf(piece), at: middleOf(piece) }].map((label) => ({
      page: 0,
      text: label.text,
      at: label.at,
      size: 3,
      angle: 0,
      width: 0,
      layer: 'annotation',
      belongs: { piece: piece.name, size: piece.size },
    })),
  );
  return {
    format: 'dxf',
    name,
    pages: [{ number: 1, width: box.maxX - box.minX, height: box.maxY - box.minY }],
    strokes,
    texts,
    layers: [...new Set(strokes.map((s) => s.layer))].map((layer) => ({ name: layer, visible: true })),
    unitsFrom: SAY['units-of-dxf']({ from: style.unitsFrom }),
    findings: style.findings,
  };
}

/** DXF bytes to a drawing: by D6673 where the file names its pieces so, else by its lines as any other drawing. Throws DxfError with the line of what cannot be read. */
export function readDxf(bytes: Uint8Array, name: string): Drawing {
  const pairs = readPairs(dxfText(bytes));
  const file = readEntities(pairs);
  const drawing = holdsPieces(file) ? dxfDrawing(styleOf(file), name) : plainDrawing(file, name);
  const end = pairs.at(-1);
  if (end?.code === 0 && end.value.toUpperCase() === 'EOF') return drawing;
  // Cut off on its way here: what stood after the cut is lacking.
  const damaged = exchangeFinding('file-damaged', 'warning', {}, { file: name, at: 'end' });
  return { ...drawing, findings: [...drawing.findings, damaged] };
}
