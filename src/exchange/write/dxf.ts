import { cuttingOutline, sewingOrder } from '../../cut/index.ts';
import { middleOf, pieceAtSize } from '../../garment/index.ts';
import type { Pattern } from '../../garment/index.ts';
import { writeDxfText } from './dxf-text.ts';

/** A pattern as pattern DXF (open standard D6673): one block per piece and size. `on` is the ISO date written into it. What is lost: DXF_LOSSES. */
export function writeDxf(pattern: Pattern, on: string): string {
  const sizes = pattern.chart.sizes;
  const order = sewingOrder(pattern.seams);
  return writeDxfText({
    style: pattern.name,
    sampleSize: sizes[middleOf(sizes.length)]!.label,
    units: 'mm',
    on,
    blocks: pattern.pieces.flatMap((nested) =>
      sizes.map((size, k) => {
        const piece = pieceAtSize(nested, k);
        return { piece, size: size.label, cutting: cuttingOutline(piece, order).outline };
      }),
    ),
  });
}
