import { distance, nearestPlace, pathEnd, pathIsStraight, pathStart } from '../../geometry/index.ts';
import type { EdgeKind } from '../../garment/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import { middleOf } from './label.ts';
import type { ProposedEdge } from './proposal.ts';
import { says } from './words/label-words.ts';

/** Words that say where the fold is stand no farther from it, mm, and run along it within this, radians. */
const BESIDE_MM = 25;
const ALONG = 0.1;

/** The straight edge that words like `fold` are written along; those that say how to cut say nothing of where. Null where there are none. */
export function foldBeside(
  edges: readonly ProposedEdge[],
  kinds: ReadonlyMap<string, EdgeKind>,
  texts: readonly DrawnText[],
): ProposedEdge | null {
  let best: { edge: ProposedEdge; far: number } | null = null;
  for (const text of texts) {
    if (!says('onFold', text.text) || says('cut', text.text)) continue;
    for (const edge of edges) {
      const path = edge.paths[Math.floor(edge.paths.length / 2)]!;
      if (kinds.has(edge.id) || !edge.paths.every((own) => pathIsStraight(own))) continue;
      const [a, b] = [pathStart(path), pathEnd(path)];
      const turn = Math.atan2(b.y - a.y, b.x - a.x) - text.angle;
      const far = nearestPlace(path, middleOf(text)).distance;
      if (Math.abs(Math.sin(turn)) > ALONG || far > BESIDE_MM || distance(a, b) < text.size) continue;
      if (!best || far < best.far) best = { edge, far };
    }
  }
  return best?.edge ?? null;
}
