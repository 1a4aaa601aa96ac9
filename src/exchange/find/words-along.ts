import { middleOf } from '../../garment/index.ts';
import type { EdgeRole } from '../../garment/index.ts';
import { nearestPlace, placeTangent } from '../../geometry/index.ts';
import type { DrawnText } from '../drawing/drawing.ts';
import { middleOf as textMiddle } from './label.ts';
import type { ProposedEdge } from './proposal.ts';
import { says } from './words/label-words.ts';
import type { LabelMeaning } from './words/label-words.ts';

/** Words that name an edge stand no farther from it, mm, and run along it within this (sine). */
const BESIDE_MM = 15;
const ALONG = 0.35;

/** What words along an edge say it is; a centre that opens is one still, and the side of a leg its outseam. */
const MEANS: readonly (readonly [LabelMeaning, readonly EdgeRole[]])[] = [
  ['inseam', ['inseam']],
  ['sideSeam', ['side', 'outseam']],
  ['shoulderSeam', ['shoulder']],
  ['centreLine', ['centre', 'opening']],
  ['onFold', ['centre']],
];

/** Edges with the words that are written along them and name one; a piece's name names none. The words belong to the nearest edge. */
export function withWordsAlong(
  edges: readonly ProposedEdge[],
  texts: readonly DrawnText[],
  name: string,
): ProposedEdge[] {
  const along = new Map<string, NonNullable<ProposedEdge['along']>>();
  for (const text of texts) {
    const roles = MEANS.find(([meaning]) => says(meaning, text.text))?.[1];
    if (!roles || name.includes(text.text) || says('cut', text.text)) continue;
    const at = textMiddle(text);
    const nearest = edges
      .map((edge) => {
        const path = edge.paths[middleOf(edge.paths.length)]!;
        return { edge, path, near: nearestPlace(path, at) };
      })
      .toSorted((a, b) => a.near.distance - b.near.distance)[0];
    if (!nearest || nearest.near.distance > BESIDE_MM) continue;
    const way = placeTangent(nearest.path, nearest.near.place);
    if (Math.abs(Math.sin(Math.atan2(way.y, way.x) - text.angle)) <= ALONG)
      along.set(nearest.edge.id, { words: text.text, roles });
  }
  return edges.map((edge) => {
    const own = along.get(edge.id);
    return own ? { ...edge, along: own } : edge;
  });
}
