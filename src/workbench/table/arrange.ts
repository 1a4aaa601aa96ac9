import { boxAround, pathBox, type Box } from '../../geometry/index.ts';
import type { Cloth, NestedPiece, PieceId } from '../../garment/index.ts';

/** Where a piece lies on the table: add to its own coordinates (y still up). */
export interface Slot {
  readonly piece: PieceId;
  readonly dx: number;
  readonly dy: number;
  /** Its place on the table, room around it included; y up, the table's top at 0. */
  readonly box: Box;
}
export interface Table {
  readonly slots: readonly Slot[];
  readonly box: Box;
}

/** Room kept round each piece for what an alteration lets out, and for its name. mm. */
const ROOM_MM = 60;
const ORDER: readonly Cloth[] = ['shell', 'contrast', 'lining', 'interfacing'];

/** The box of all sizes of a piece: it does not move when one person's line does. */
function nestBox(piece: NestedPiece): Box {
  return boxAround(piece.edges.flatMap((e) => e.path.map(pathBox)));
}

/**
 * Lays the pieces out in rows to look at, shell first, each cloth from a row of its own, in the order of their numbers; the rows are as
 * wide as makes the table about as broad as `aspect` times its height.
 */
export function arrange(pieces: readonly NestedPiece[], aspect: number): Table {
  const sized = pieces.map((piece) => ({ piece, box: nestBox(piece) }));
  const area = sized.reduce(
    (sum, { box }) => sum + (box.maxX - box.minX + 2 * ROOM_MM) * (box.maxY - box.minY + 2 * ROOM_MM),
    0,
  );
  const widest = Math.max(0, ...sized.map(({ box }) => box.maxX - box.minX + 2 * ROOM_MM));
  const width = Math.max(widest, Math.sqrt(area * aspect) * 1.08);
  const slots: Slot[] = [];
  let y = 0;
  for (const cloth of ORDER) {
    const row = sized
      .filter(({ piece }) => piece.cloth === cloth)
      .sort((a, b) => a.piece.number - b.piece.number || a.piece.id.localeCompare(b.piece.id));
    let x = 0;
    let deep = 0;
    for (const { piece, box } of row) {
      const w = box.maxX - box.minX + 2 * ROOM_MM;
      const h = box.maxY - box.minY + 2 * ROOM_MM;
      if (x > 0 && x + w > width) {
        x = 0;
        y -= deep;
        deep = 0;
      }
      slots.push({
        piece: piece.id,
        dx: x + ROOM_MM - box.minX,
        dy: y - ROOM_MM - box.maxY,
        box: { minX: x, maxX: x + w, minY: y - h, maxY: y },
      });
      x += w;
      deep = Math.max(deep, h);
    }
    y -= deep;
  }
  return {
    slots,
    box: slots.length ? boxAround(slots.map((s) => s.box)) : { minX: 0, minY: -100, maxX: 100, maxY: 0 },
  };
}
