/** A page as the file has it: its box in points and by how much it is turned for showing, degrees. */
export interface PageTurn {
  readonly view: readonly number[];
  readonly rotate: number;
}

/**
 * By how much each page is turned, and the indices of those that are taken otherwise than the file shows them. Some tools turn single pages of
 * a tiled pattern to save paper or to fit a preview; drawn they are all alike. Pages of one shape that stand on end among others that lie are
 * taken the way most of them are. `null`: a page that could not be read.
 */
export function pageTurns(pages: readonly (PageTurn | null)[]): {
  readonly turns: readonly number[];
  readonly against: readonly number[];
} {
  const own = pages.map((page) => (((page?.rotate ?? 0) % 360) + 360) % 360);
  const shapes = pages.map((page) => {
    const [x0, y0, x1, y1] = (page?.view ?? [0, 0, 0, 0]) as [number, number, number, number];
    return `${Math.round(x1 - x0)} ${Math.round(y1 - y0)}`;
  });
  const turns = own.map((turn, i) => {
    const alike = own.filter((_, k) => shapes[k] === shapes[i]);
    const often = (value: number) => alike.filter((other) => other === value).length;
    const most = alike.reduce((best, value) => (often(value) > often(best) ? value : best), alike[0]!);
    const onEnd = (turn - most + 360) % 180 !== 0;
    return onEnd && often(most) > alike.length / 2 ? most : turn;
  });
  return { turns, against: turns.flatMap((turn, i) => (turn === own[i] ? [] : [i])) };
}
