/** So many patterns are held by the worker: more than anybody goes between, and no more however long a pattern is edited. */
const HELD = 8;

/**
 * Takes out what came first where more came than are held. The page does it with the marks it sent and the worker with what it got:
 * messages come in the order they were sent, so that both always mean the same patterns.
 */
export function dropOldest(held: Set<string> | Map<string, unknown>): void {
  if (held.size > HELD) held.delete(held.keys().next().value!);
}
