/** White space, and a number or word, where a reader stands (sticky). */
const SPACE = /[ \t\r\n]*/y;
const SCALAR = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.])/y;
// oxlint-disable-next-line no-control-regex -- JSON forbids control characters in a string
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;

/** The end of what a pattern matches at `at`, or -1. */
function eat(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

/** Where reading stopped: `end` after a whole value, or the offset of the first character that can't stand there. */
type Stop = { readonly end: number } | { readonly fault: number };

function list(text: string, start: number, close: string, item: (at: number) => Stop): Stop {
  let at = eat(SPACE, text, start);
  if (text[at] === close) return { end: at + 1 };
  for (;;) {
    const stop = item(at);
    if ('fault' in stop) return stop;
    at = eat(SPACE, text, stop.end);
    if (text[at] === close) return { end: at + 1 };
    if (text[at] !== ',') return { fault: at };
    at = eat(SPACE, text, at + 1);
  }
}

function pair(text: string, start: number): Stop {
  const key = eat(STRING, text, start);
  if (key === -1) return { fault: start };
  const colon = eat(SPACE, text, key);
  return text[colon] === ':' ? value(text, colon + 1) : { fault: colon };
}

function value(text: string, start: number): Stop {
  const at = eat(SPACE, text, start);
  if (text[at] === '{') return list(text, at + 1, '}', (i) => pair(text, i));
  if (text[at] === '[') return list(text, at + 1, ']', (i) => value(text, i));
  const end = Math.max(eat(STRING, text, at), eat(SCALAR, text, at));
  return end === -1 ? { fault: at } : { end };
}

/**
 * Offset of the first character at which a text stops being JSON; its length when it only ends too soon.
 * The engine's own message does not always say where. Call it on text known to be broken and bounded in depth.
 */
export function jsonFault(text: string): number {
  const stop = value(text, 0);
  return Math.min(text.length, 'fault' in stop ? stop.fault : eat(SPACE, text, stop.end));
}
