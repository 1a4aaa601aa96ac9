/**
 * The newer value, with every part that says the same as in `old` replaced by the old object: what did not change keeps its
 * identity across a message, so that memos (by object identity) in the worker and on the page hold.
 */
export function reuse<T>(old: unknown, next: T): T {
  if (Object.is(old, next)) return next;
  if (typeof old !== 'object' || typeof next !== 'object' || old === null || next === null) return next;
  if (Array.isArray(next)) {
    if (!Array.isArray(old)) return next;
    let same = old.length === next.length;
    const parts = next.map((value, i) => {
      const part = reuse(old[i], value);
      if (part !== old[i]) same = false;
      return part;
    });
    return (same ? old : parts) as T;
  }
  if (Array.isArray(old)) return next;
  const [before, after] = [old as Record<string, unknown>, next as Record<string, unknown>];
  const keys = Object.keys(after);
  let same = Object.keys(before).length === keys.length;
  const parts: Record<string, unknown> = {};
  for (const key of keys) {
    const part = reuse(before[key], after[key]);
    if (part !== before[key] || !(key in before)) same = false;
    parts[key] = part;
  }
  return (same ? before : parts) as T;
}
