import type { DrawnPiece, Garment } from '../garment/index.ts';
import { pathLength } from '../geometry/index.ts';

/** What the garment needs besides cloth, from its own edges and marks. */
export interface Notion {
  readonly what: 'zip' | 'buttons' | 'elastic' | 'binding';
  /** mm, for zips, elastic and binding. */
  readonly length?: number;
  readonly count?: number;
  readonly say: string;
}

/** Zips are sold in steps of 5 cm (2 in); common practice. The next longer one is bought and shortened. */
const ZIP_STEP_MM = 50;

const edgeLength = (piece: DrawnPiece, id: string): number => {
  const edge = piece.edges.find((e) => e.id === id);
  return edge ? pathLength(edge.path) : 0;
};

/**
 * Zips from opening edges without buttons, buttons from button marks, binding from free edges of shell pieces that no seam, fold or hem finishes.
 * @param elasticGirths finished girth (mm) of each casing that is to hold elastic, by its name; elastic is cut to it and lapped 25 mm (common practice).
 */
export function notions(garment: Garment, elasticGirths: Readonly<Record<string, number>> = {}): Notion[] {
  const out: Notion[] = [];
  for (const piece of garment.pieces.filter((p) => p.cloth === 'shell')) {
    const times = piece.cut.count * (piece.edges.some((e) => e.kind === 'fold') ? 2 : 1);
    const buttons = piece.marks.filter((m) => m.kind === 'button').length;
    // Buttons sit on one side only of the pair that closes.
    if (buttons > 0)
      out.push({ what: 'buttons', count: buttons, say: `${buttons} buttons on ${piece.name}` });
    for (const edge of piece.edges) {
      const length = edgeLength(piece, edge.id);
      if (edge.kind === 'opening' && buttons === 0) {
        const sold = Math.ceil(length / ZIP_STEP_MM - 1e-9) * ZIP_STEP_MM;
        out.push({
          what: 'zip',
          length,
          say: `Zip for the ${edge.name} of ${piece.name}: ${Math.round(length)} mm, buy ${sold} mm`,
        });
      }
      if (edge.kind === 'free' && edge.allowance === 0) {
        out.push({
          what: 'binding',
          length: length * times,
          say: `Binding for the ${edge.name} of ${piece.name}: ${Math.round(length * times)} mm`,
        });
      }
    }
  }
  for (const [name, girth] of Object.entries(elasticGirths)) {
    out.push({
      what: 'elastic',
      length: girth + 25,
      say: `Elastic for the ${name}: ${Math.round(girth + 25)} mm, lapped 25 mm`,
    });
  }
  return out;
}
