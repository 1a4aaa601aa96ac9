import type { Pattern } from '../../garment/index.ts';
import type { DocKey } from './kinds.ts';
import type { Head, KeptEntry, KeptVersion, Photo, Shelf } from './shelf.ts';

/** A shelf that lasts as long as the object: for tests. Whoever is given it shares it, as tabs share a browser's. */
export function memoryShelf(): Shelf {
  const heads = new Map<DocKey, Head>();
  const states = new Map<DocKey, Map<number, KeptEntry>>();
  const patterns = new Map<string, Pattern>();
  const versions = new Map<string, KeptVersion>();
  const photos = new Map<string, Photo>();
  const copy = <T>(value: T): Promise<T> => Promise.resolve(structuredClone(value));

  function forgetUnusedPatterns(): void {
    const kept = [...[...states.values()].flatMap((s) => [...s.values()]), ...versions.values()];
    const used = new Set(kept.map((k) => k.pattern));
    for (const mark of patterns.keys()) if (!used.has(mark)) patterns.delete(mark);
  }

  return {
    heads: () => copy([...heads.values()]),
    head: (key) => copy(heads.get(key)),
    entry: (key, n) => copy(states.get(key)?.get(n)),
    sentences: (key) =>
      Promise.resolve(
        [...(states.get(key) ?? [])].sort(([a], [b]) => a - b).map(([n, { say, on }]) => ({ n, say, on })),
      ),
    pattern: (mark) => copy(patterns.get(mark)),
    putIf: async (put) => {
      const { head, entry, gone, pattern } = structuredClone(put);
      if ((heads.get(head.key)?.turn ?? -1) !== head.turn - 1) return false;
      const own = states.get(head.key) ?? new Map<number, KeptEntry>();
      states.set(head.key, own.set(head.at, entry));
      for (const n of gone) own.delete(n);
      heads.set(head.key, head);
      if (pattern && entry.pattern && !patterns.has(entry.pattern)) patterns.set(entry.pattern, pattern);
      return true;
    },
    move: async (key, to, on) => {
      const head = heads.get(key);
      if (!head || to < 0 || to > head.last) return undefined;
      const next: Head = { ...head, at: to, turn: head.turn + 1, changed: on };
      heads.set(key, next);
      return next;
    },
    erase: async (keys) => {
      for (const key of keys) {
        heads.delete(key);
        states.delete(key);
        for (const shelf of [versions, photos])
          for (const [id, kept] of shelf) if (kept.key === key) shelf.delete(id);
      }
      forgetUnusedPatterns();
    },
    putVersion: async (version, pattern) => {
      versions.set(version.id, structuredClone(version));
      if (pattern && version.pattern) patterns.set(version.pattern, structuredClone(pattern));
    },
    versions: (key) => copy([...versions.values()].filter((v) => v.key === key)),
    // A Blob is a copy of its own: its bytes never change.
    putPhoto: async (photo) => void photos.set(photo.id, photo),
    photo: async (id) => photos.get(id),
    photos: async (key) =>
      [...photos.values()].filter((p) => p.key === key).sort((a, b) => a.id.localeCompare(b.id)),
    dropPhoto: async (id) => void photos.delete(id),
  };
}
