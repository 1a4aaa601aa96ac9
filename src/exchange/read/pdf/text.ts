import { affineAfter, affinePoint, affineScale } from '../../drawing/affine.ts';
import type { Affine } from '../../drawing/affine.ts';
import type { Budget } from '../../drawing/budget.ts';
import type { DrawnText } from '../../drawing/drawing.ts';
import { matrixOf } from './pen.ts';

/** Words of one page with place, height and layer. `start` maps the page's own space to mm. */
export function pageTexts(
  items: readonly unknown[],
  page: number,
  start: Affine,
  layerName: (properties: unknown) => string | null,
  budget: Budget,
): DrawnText[] {
  const texts: DrawnText[] = [];
  const layers: (string | null)[] = [];
  for (const item of items) {
    budget.spend('operations', 1);
    const it = item as { type?: string; id?: string; str?: string; transform?: unknown; width?: number };
    if (it.type === 'beginMarkedContentProps') layers.push(layerName({ id: layerId(it.id) }));
    else if (it.type === 'beginMarkedContent') layers.push(null);
    else if (it.type === 'endMarkedContent') layers.pop();
    const matrix = matrixOf(it.transform);
    if (!it.str?.trim() || !matrix) continue;
    const placed = affineAfter(start, matrix);
    texts.push({
      page,
      text: it.str.trim(),
      at: affinePoint(start, { x: matrix[4], y: matrix[5] }),
      size: Math.hypot(placed[2], placed[3]),
      angle: Math.atan2(placed[1], placed[0]),
      width: (it.width ?? 0) * affineScale(start),
      layer: layers.findLast((name) => name !== null) ?? '',
    });
  }
  return texts;
}

/** The text half of the library hands the id out in another dress than the drawing half: `p4R_mc0` or `4R`. */
function layerId(id: string | undefined): string | undefined {
  return id?.match(/\d+R/)?.[0];
}
