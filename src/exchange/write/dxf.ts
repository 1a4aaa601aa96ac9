import { offsetOutline } from '../../geometry/index.ts';
import type { Ring } from '../../geometry/index.ts';
import { pieceAtSize, middleOf } from '../../garment/index.ts';
import type { DrawnPiece, Pattern } from '../../garment/index.ts';
import { writeDxfText } from './dxf-text.ts';

/** The cut line round a piece: each edge's allowance outside of it, mitred. Dart legs are stitching inside the cloth and get none. */
function cuttingRing(piece: DrawnPiece): Ring {
  const corner = { kind: 'mitre' } as const;
  return offsetOutline(
    piece.edges.map((edge) => ({
      path: edge.path,
      width: edge.kind === 'dart' ? 0 : edge.allowance,
      start: corner,
      end: corner,
    })),
  ).outline;
}

/** A pattern as pattern DXF (open standard D6673): one block per piece and size. `on` is the ISO date written into it. What is lost: DXF_LOSSES. */
export function writeDxf(pattern: Pattern, on: string): string {
  const sizes = pattern.chart.sizes;
  return writeDxfText({
    style: pattern.name,
    sampleSize: sizes[middleOf(sizes.length)]!.label,
    units: 'mm',
    on,
    blocks: pattern.pieces.flatMap((nested) =>
      sizes.map((size, k) => {
        const piece = pieceAtSize(nested, k);
        return { piece, size: size.label, cutting: cuttingRing(piece) };
      }),
    ),
  });
}
