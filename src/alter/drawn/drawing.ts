import { distance } from '../../geometry/index.ts';
import type { Path } from '../../geometry/index.ts';
import { drawnSide, sideOf, pieceAt } from '../../garment/index.ts';
import type { Garment } from '../../garment/index.ts';
import type { Alteration } from '../entry/alteration.ts';
import { applyStep } from '../step/apply-step.ts';
import { BODICE, PANELS, PLAIN, SKIRT, TROUSERS } from './schematic.ts';

/** The plain garments on which alterations are drawn and worked by hand. */
export const SCHEMATIC: Readonly<Record<Alteration['shows']['on'], Garment>> = {
  bodice: BODICE,
  plain: PLAIN,
  panels: PANELS,
  skirt: SKIRT,
  trousers: TROUSERS,
};

/** One piece of an alteration's small drawing: closed outlines in mm, y up. */
export interface PieceDrawing {
  readonly piece: string;
  readonly before: readonly Path[];
  readonly after: readonly Path[];
}

/** Less than this can't be seen in a small drawing, mm. */
const SEEN_MM = 0.5;

function differs(before: readonly Path[], after: readonly Path[]): boolean {
  return (
    before.length !== after.length ||
    after.some((path, i) => path.some((p, k) => distance(p, before[i]![k] ?? p) > SEEN_MM))
  );
}

const known = new Map<string, readonly PieceDrawing[]>();

/**
 * The small drawing of a catalogue entry: the leading pieces it changes on a plain garment, before and after. Made by doing the alteration there, with exaggerated amounts,
 * so that it shows what the tool does. Pieces whose outline stays are left out; a piece that was parted into left and right is shown once for each.
 */
export function drawingOf(alteration: Alteration): readonly PieceDrawing[] {
  const found = known.get(alteration.id);
  if (found) return found;
  const garment = SCHEMATIC[alteration.shows.on];
  const { garment: after } = applyStep(garment, {
    id: 'drawing',
    kind: 'alter',
    entry: alteration.id,
    params: alteration.shows.params,
  });
  const follows = new Set(after.followers.map((f) => f.piece));
  const outline = (edges: Garment['pieces'][number]['edges']): Path[] => edges.map((e) => e.path);
  const drawn = after.pieces.flatMap((piece): PieceDrawing[] => {
    const old = pieceAt(garment, piece.id);
    if (old === piece || follows.has(piece.id)) return [];
    // Parted: the side that was turned over is shown without an old outline, which was never drawn.
    const half = old ?? garment.pieces.find((p) => p.id === piece.of && drawnSide(p) === sideOf(piece));
    const drawing = { piece: piece.id, before: half ? outline(half.edges) : [], after: outline(piece.edges) };
    // A band of which only a notch moved shows nothing.
    return old && !differs(drawing.before, drawing.after) ? [] : [drawing];
  });
  known.set(alteration.id, drawn);
  return drawn;
}
