import type { Point } from '../../geometry/index.ts';

/**
 * What is new in a value against the one sent before. A made fitting is some two hundred kilobytes; a pull at one thread moves a few
 * edges of it, and taking a message apart costs the page more than drawing it.
 */
export type News =
  | { readonly kind: 'same' }
  | { readonly kind: 'whole'; readonly value: unknown }
  /** A run of points as bare numbers: x, y, x, y … */
  | { readonly kind: 'points'; readonly xy: Float64Array }
  | { readonly kind: 'parts'; readonly parts: readonly (readonly [string | number, News])[] };

const SAME: News = { kind: 'same' };
/** From so many points on, bare numbers travel more cheaply than points. */
const LEAST_RUN = 4;

const isPoint = (v: unknown): v is Point =>
  typeof v === 'object' &&
  v !== null &&
  typeof (v as Point).x === 'number' &&
  typeof (v as Point).y === 'number' &&
  Object.keys(v).length === 2;

function whole(value: unknown): News {
  if (!Array.isArray(value) || value.length < LEAST_RUN || !value.every(isPoint))
    return { kind: 'whole', value };
  const xy = new Float64Array(value.length * 2);
  value.forEach((p: Point, i) => {
    xy[2 * i] = p.x;
    xy[2 * i + 1] = p.y;
  });
  return { kind: 'points', xy };
}

/** What `next` has that `old` had not; plain data only. */
export function newsOf(old: unknown, next: unknown): News {
  if (Object.is(old, next)) return SAME;
  if (typeof old !== 'object' || typeof next !== 'object' || old === null || next === null)
    return { kind: 'whole', value: next };
  const keys = Array.isArray(next) ? next.map((_, i) => i) : Object.keys(next);
  const [had, has] = [old as Record<string, unknown>, next as Record<string, unknown>];
  const alike = Array.isArray(old) === Array.isArray(next) && Object.keys(old).length === keys.length;
  if (!alike || keys.some((k) => !Object.hasOwn(had, k))) return whole(next);
  const parts: [string | number, News][] = [];
  for (const key of keys) {
    const news = newsOf(had[key], has[key]);
    if (news.kind !== 'same') parts.push([key, news]);
  }
  if (parts.length === 0) return SAME;
  const allWhole = parts.every(([, n]) => n.kind === 'whole');
  return allWhole && parts.length * 2 >= keys.length ? whole(next) : { kind: 'parts', parts };
}

/** The value the news tell of, from the one before it. Every part that is not news is the old object itself, so that memos hold. */
export function heard<T>(old: unknown, news: News): T {
  switch (news.kind) {
    case 'same':
      return old as T;
    case 'whole':
      return news.value as T;
    case 'points':
      return Array.from({ length: news.xy.length / 2 }, (_, i) => ({
        x: news.xy[2 * i]!,
        y: news.xy[2 * i + 1]!,
      })) as T;
    case 'parts': {
      const next = (Array.isArray(old) ? [...old] : { ...(old as object) }) as Record<string, unknown>;
      const had = old as Record<string, unknown>;
      for (const [key, part] of news.parts) next[key] = heard(had[key], part);
      return next as T;
    }
  }
}
