import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const src = resolve(dirname(fileURLToPath(import.meta.url)), '../src');

/** Floor of each room; docs/architecture.md draws the same house. */
const FLOOR: Record<string, number> = {
  geometry: 1,
  garment: 2,
  cut: 3,
  measure: 3,
  fit: 4,
  alter: 4,
  check: 4,
  samples: 4,
  layout: 4,
  exchange: 5,
  paper: 5,
  pipeline: 6,
  desk: 7,
  cli: 8,
  workbench: 8,
  host: 8,
};
/** Floors inside the rooms that have folders of their own; what stands beside `index.ts` is on top of them all. */
const INSIDE: Record<string, Record<string, number>> = {
  garment: { words: 0, measure: 1, read: 3, shape: 3 },
  alter: {
    words: 0,
    blend: 2,
    move: 1,
    role: 2,
    dart: 3,
    follow: 4,
    entry: 5,
    promise: 6,
    ways: 6,
    catalogue: 7,
    step: 8,
    trial: 9,
    drawn: 9,
  },
  layout: { words: 0, search: 1, job: 2, stripes: 3, lay: 4, drawn: 5, shop: 5 },
  exchange: { words: 0, drawing: 1, read: 2, write: 2, tiles: 3, find: 4, make: 5, photo: 5 },
  // Every station stands on one floor, so that none imports another.
  workbench: {
    words: 0,
    look: 1,
    offline: 1,
    call: 1,
    store: 1,
    drawing: 1,
    parts: 2,
    worker: 2,
    table: 2,
    station: 3,
    files: 4,
    begin: 4,
    start: 5,
    people: 5,
    patterns: 5,
    photo: 5,
    fitting: 5,
    pieces: 5,
    trial: 5,
    settle: 5,
    record: 5,
    cloth: 5,
    print: 5,
  },
};
/** Rooms whose ground floor is the files beside the door: the nouns, which everything in the folders speaks of. */
const GROUND: Record<string, number> = { garment: 2 };

/** The one neighbourly door: paper writes its PDF with exchange's writer. */
const NEIGHBOURS = new Set(['paper>exchange']);

function files(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return files(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

/** What a file imports by a path, from `src`. */
const targetsOf = (path: string): string[] =>
  [...readFileSync(path, 'utf8').matchAll(/(?:from|import)\s*\(?\s*['"](\.[^'"]+)['"]/g)].map((m) =>
    relative(src, resolve(dirname(path), m[1]!.replace(/\?.*$/, ''))),
  );

function imports(
  path: string,
): { from: string; room: string; target: string; door: boolean; path: string }[] {
  const from = relative(src, path).split(sep)[0]!;
  const found: ReturnType<typeof imports> = [];
  for (const target of targetsOf(path)) {
    const room = target.split(sep)[0]!;
    if (target.startsWith('..') || room === from) continue;
    found.push({
      from,
      room,
      target,
      door: /^[a-z]+[\\/]index\.ts$/.test(target),
      path: relative(src, path),
    });
  }
  return found;
}

const all = files(src);

describe('the house', () => {
  it('has a floor for every room', () => {
    for (const room of readdirSync(src)) {
      if (statSync(join(src, room)).isDirectory()) expect(FLOOR, room).toHaveProperty(room);
    }
  });

  it('imports only from floors below', () => {
    const climbing = all
      .flatMap(imports)
      .filter((i) => FLOOR[i.room]! >= FLOOR[i.from]! && !NEIGHBOURS.has(`${i.from}>${i.room}`))
      .map((i) => `${i.path} imports ${i.target}`);
    expect(climbing).toEqual([]);
  });

  it('goes through the doors only', () => {
    const round = all
      .flatMap(imports)
      .filter((i) => !i.door)
      .map((i) => `${i.path} imports ${i.target}`);
    expect(round).toEqual([]);
  });

  it.each(Object.keys(INSIDE))('imports only downwards inside %s', (room) => {
    const floors = INSIDE[room]!;
    const floorOf = (path: string): number => {
      const [, folder, ...rest] = path.split(sep);
      if (rest.length === 0) return folder === 'index.ts' ? 99 : (GROUND[room] ?? 98);
      expect(floors, `${room}/${folder}`).toHaveProperty(folder!);
      return floors[folder!]!;
    };
    const climbing = all
      .filter((path) => relative(src, path).startsWith(room + sep) && !/\.test(-case)?\.tsx?$/.test(path))
      .flatMap((path) => {
        const from = relative(src, path);
        return targetsOf(path)
          .filter((t) => t.startsWith(room + sep))
          .filter((t) => t.split(sep)[1] !== from.split(sep)[1] && floorOf(t) >= floorOf(from))
          .filter((t) => floorOf(t) !== floorOf(from) || t.split(sep).length > 2)
          .map((t) => `${from} imports ${t}`);
      });
    expect(climbing).toEqual([]);
  });

  it('has no files that import one another in a circle', () => {
    const imported = new Map(
      all.map((path) => {
        const here = relative(src, path);
        return [here, targetsOf(path).filter((t) => /\.tsx?$/.test(t))] as const;
      }),
    );
    // Set aside, over and over, what imports none of the rest and what none of the rest imports: a circle is never set aside.
    let open = [...imported.keys()];
    for (let before = -1; before !== open.length;) {
      before = open.length;
      const rest = new Set(open);
      const wanted = new Set(open.flatMap((path) => imported.get(path)!));
      open = open.filter((path) => wanted.has(path) && imported.get(path)!.some((t) => rest.has(t)));
    }
    expect(open).toEqual([]);
  });

  it('keeps files short enough to read in one sitting', () => {
    // Tables of facts are exempt: they are looked up, not read. They are named *-table.ts.
    const long = all
      .filter((path) => !path.endsWith('-table.ts'))
      .map((path) => ({ path: relative(src, path), lines: readFileSync(path, 'utf8').split('\n').length }))
      .filter(({ lines }) => lines > 400)
      .map(({ path, lines }) => `${path}: ${lines}`);
    expect(long).toEqual([]);
  });
});
