/** How many results of one kind are kept: the last few that somebody goes back and forth between. */
const KEPT = 8;

interface Entry<K extends readonly unknown[], V> {
  readonly keys: K;
  readonly value: V;
}

/**
 * The function with its last few results kept by identity of all its arguments. Documents are never changed in place, so the same
 * objects mean the same result; what did not change is not computed again.
 */
export function remember<K extends readonly unknown[], V>(
  make: (...keys: K) => V,
  kept = KEPT,
): (...keys: K) => V {
  const entries: Entry<K, V>[] = [];
  return (...keys) => {
    const at = entries.findIndex((e) => e.keys.every((k, i) => Object.is(k, keys[i])));
    const entry = at < 0 ? { keys, value: make(...keys) } : entries.splice(at, 1)[0]!;
    entries.unshift(entry);
    if (entries.length > kept) entries.pop();
    return entry.value;
  };
}
