/** The halves of an edge whose underlap was cut off: the one that is sewn, and the one that lies under. */
export const sewnHalf = (edge: string): string => `${edge}-sewn`;
export const lapHalf = (edge: string): string => `${edge}-over`;

/** The edge of which this was the sewn half, else itself. */
export const wholeEdge = (edge: string): string => edge.replace(/-sewn$/, '');

/** The edge as it stands now, cut or whole: what was spoken of whole is the half that is sewn, once cut; undefined where there is none such. */
export function edgeNow(edges: readonly { readonly id: string }[], edge: string): string | undefined {
  const has = (id: string): boolean => edges.some((one) => one.id === id);
  return [edge, sewnHalf(edge), wholeEdge(edge)].find(has);
}

/** What was said of edges, cut or whole, by the edges as they stand now; what was said of an edge itself goes before the rest. */
export function saidNow<T>(
  edges: readonly { readonly id: string }[],
  said: Readonly<Record<string, T>>,
): Record<string, T> {
  const now = Object.entries(said).flatMap(([id, own]) => {
    const to = edgeNow(edges, id);
    return to === undefined ? [] : [{ id, to, own }];
  });
  const carried = now.filter(({ id, to }) => id === to || !(to in said));
  return Object.fromEntries(carried.map(({ to, own }) => [to, own]));
}
