import { chainLength, edgeAt, hasRole, isSleeve, leaders } from '../garment/index.ts';
import type { BodySide, EdgeRef, Garment } from '../garment/index.ts';
import { pathBox, pathEnd, pathStart } from '../geometry/index.ts';
import { wornOn } from './length.ts';

/** Cap seam minus the armhole it is set into, on one side of the body, mm; undefined without a set-in sleeve. */
export function capEase(garment: Garment, side: BodySide): number | undefined {
  const led = new Set(leaders(garment).map((p) => p.id));
  const on = (ref: EdgeRef, role: 'cap' | 'armhole'): boolean => {
    const found = edgeAt(garment, ref);
    return (
      found !== undefined && led.has(ref.piece) && hasRole(found.edge, role) && wornOn(found.piece, side)
    );
  };
  for (const { a, b } of garment.seams) {
    for (const [cap, armhole] of [
      [a, b],
      [b, a],
    ] as const) {
      if (cap.every((r) => on(r, 'cap')) && armhole.every((r) => on(r, 'armhole')))
        return chainLength(garment, cap) - chainLength(garment, armhole);
    }
  }
  return undefined;
}

/** How much higher the top of a sleeve's cap (the corner where its halves meet, if it has one) lies than its underarm corners (their mean), on one side of the body, mm. */
export function capHeight(garment: Garment, side: BodySide): number | undefined {
  const sleeve = leaders(garment).find((p) => isSleeve(p) && wornOn(p, side));
  const caps = sleeve?.edges.filter((e) => hasRole(e, 'cap')) ?? [];
  if (!sleeve || caps.length === 0) return undefined;
  const n = sleeve.edges.length;
  const at = (i: number) => sleeve.edges[(i + n) % n]!;
  const ends = caps.flatMap((edge) => {
    const i = sleeve.edges.indexOf(edge);
    return [
      ...(hasRole(at(i - 1), 'cap') ? [] : [pathStart(edge.path).y]),
      ...(hasRole(at(i + 1), 'cap') ? [] : [pathEnd(edge.path).y]),
    ];
  });
  const crowns = caps.flatMap((e) =>
    hasRole(at(sleeve.edges.indexOf(e) - 1), 'cap') ? [pathStart(e.path).y] : [],
  );
  const top = crowns.length > 0 ? Math.max(...crowns) : Math.max(...caps.map((e) => pathBox(e.path).maxY));
  return top - ends.reduce((sum, y) => sum + y, 0) / ends.length;
}
