/** Longest line that stays on one line, so that a point or a notch does. */
const WIDTH = 120;

/** JSON text with a line per entry, short entries kept on one line: readable, and small differences show as small differences. Ends with a newline. */
export function writeJson(value: unknown): string {
  return `${lines(value, '')}\n`;
}

function lines(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const inner = `${indent} `;
  const entries = Array.isArray(value)
    ? value.map((entry) => lines(entry, inner))
    : Object.entries(value).flatMap(([key, entry]) =>
        entry === undefined ? [] : [`${JSON.stringify(key)}: ${lines(entry, inner)}`],
      );
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  if (entries.length === 0) return open + close;
  const total = entries.reduce((sum, entry) => sum + entry.length + 2, indent.length + 2);
  if (total <= WIDTH && !entries.some((entry) => entry.includes('\n')))
    return `${open}${entries.join(', ')}${close}`;
  return `${open}\n${inner}${entries.join(`,\n${inner}`)}\n${indent}${close}`;
}
