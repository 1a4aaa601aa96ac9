import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const src = resolve(dirname(fileURLToPath(import.meta.url)), '../src');

/** Floor of each room; docs/architecture.md draws the same house. */
const FLOOR: Record<string, number> = {
  geometry: 1,
  garment: 2,
  fit: 3,
  alter: 3,
  check: 3,
  layout: 3,
  samples: 3,
  exchange: 4,
  paper: 4,
  pipeline: 5,
  cli: 6,
  workbench: 6,
  host: 6,
};
/** The one neighbourly door: paper writes its PDF with exchange's writer. */
const NEIGHBOURS = new Set(['paper>exchange']);

function files(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return files(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

function imports(
  path: string,
): { from: string; room: string; target: string; door: boolean; path: string }[] {
  const from = relative(src, path).split(sep)[0]!;
  const text = readFileSync(path, 'utf8');
  const found: ReturnType<typeof imports> = [];
  for (const m of text.matchAll(/(?:from|import)\s*\(?\s*['"](\.[^'"]+)['"]/g)) {
    const target = relative(src, resolve(dirname(path), m[1]!.replace(/\?.*$/, '')));
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
