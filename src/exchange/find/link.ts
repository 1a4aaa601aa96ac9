/** One of a chain's lines, and whether it is walked from its end. */
export interface Linked {
  readonly line: number;
  readonly backwards: boolean;
}

/**
 * Lines linked end to end, as chains. Ends are numbered: `2 i` the start of line i, `2 i + 1` its end; every end has one link at most.
 */
export function linkedChains(
  count: number,
  links: readonly (readonly [number, number])[],
): { steps: readonly Linked[]; closed: boolean }[] {
  const other = new Map<number, number>(links.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));
  const seen = new Set<number>();
  const chains: { steps: Linked[]; closed: boolean }[] = [];
  const walk = (start: number): void => {
    const steps: Linked[] = [];
    let at = start;
    for (;;) {
      const line = at >> 1;
      seen.add(line);
      steps.push({ line, backwards: (at & 1) === 1 });
      const next = other.get(at ^ 1);
      if (next === undefined || seen.has(next >> 1)) {
        chains.push({ steps, closed: next === start });
        return;
      }
      at = next;
    }
  };
  // Chains with a free end first, so that what is left are rings.
  for (let i = 0; i < count; i++) {
    if (seen.has(i)) continue;
    if (!other.has(2 * i)) walk(2 * i);
    else if (!other.has(2 * i + 1)) walk(2 * i + 1);
  }
  for (let i = 0; i < count; i++) if (!seen.has(i)) walk(2 * i);
  return chains;
}
