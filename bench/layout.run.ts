// Density reached on the academic strip-packing instances, beside the best published.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Clipper, FillRule } from 'clipper2-ts';
import type { Path64 } from 'clipper2-ts';
import { readyStrip, stripSearch } from '../src/layout/index.ts';
import type { Kept, Strip } from '../src/layout/index.ts';

/** Record density and mean of 50 runs of 1,200 s on a 16-core machine, %: arXiv 2509.13329 and its repository's logs, seen. */
const PUBLISHED: Readonly<Record<string, readonly [number, number]>> = {
  shirts: [90.92, 89.72],
  trousers: [92.61, 91.79],
  swim: [79.83, 78.3],
  marques: [92.01, 90.91],
  albano: [89.82, 89.46],
};

interface Instance {
  readonly strip_height: number;
  readonly items: readonly {
    readonly demand: number;
    readonly allowed_orientations: readonly number[];
    readonly shape: { readonly data: readonly (readonly [number, number])[] };
  }[];
}

/** `--instances DIR --seconds 60 --seed 1 --json`. One core; seconds are of processor time, so that a busy machine does not count. */
export function run(args: readonly string[]): void {
  const value = (name: string): string | undefined => {
    const at = args.indexOf(name);
    return at < 0 ? undefined : args[at + 1];
  };
  const folder = value('--instances');
  if (!folder || !existsSync(folder)) {
    console.log(
      'This bench needs the strip-packing instances (JSON with strip_height and items): name their folder with --instances DIR.',
    );
    return;
  }
  const seconds = Number(value('--seconds') ?? 60);
  const seed = Number(value('--seed') ?? 1);
  const rows = Object.entries(PUBLISHED).flatMap(([name, [record, mean]]) => {
    const file = join(folder, `${name}.json`);
    if (!existsSync(file)) {
      console.error(`${name}.json is not in the folder.`);
      return [];
    }
    const density = reached(JSON.parse(readFileSync(file, 'utf8')) as Instance, seconds, seed);
    return [{ name, seconds, seed, density: Math.round(density * 100) / 100, record, mean }];
  });
  if (args.includes('--json')) console.log(JSON.stringify(rows, null, 2));
  else
    for (const r of rows)
      console.log(
        `${r.name.padEnd(9)} ${r.density.toFixed(2)} %   published record ${r.record}, mean ${r.mean}`,
      );
}
export default run;

function reached(instance: Instance, seconds: number, seed: number): number {
  const spent = (): number => {
    const used = process.cpuUsage();
    return (used.user + used.system) / 1e6;
  };
  const began = spent();
  const strip = readyStrip({
    width: instance.strip_height,
    shapes: instance.items.map((item) => ({
      outline: Float64Array.from(item.shape.data.slice(0, -1).flat()),
      count: item.demand,
      turns: item.allowed_orientations.map((angle) => ({ angle })),
    })),
  });
  const search = stripSearch(strip, seed);
  for (let share = 0; share < 1; share = (spent() - began) / seconds) search.step(share);
  const best = search.best();
  if (!best) return 0;
  const share = overlapShare(strip, best);
  if (share > 1e-6)
    throw new Error(`The layout overlaps by ${share.toExponential(1)} of its area: the search is wrong.`);
  return (100 * strip.total) / (strip.width * best.length);
}

/** Overlap of all pairs by an independent polygon library, as a share of the pieces' area. */
function overlapShare(strip: Strip, best: Kept): number {
  const unit = Math.max(best.length, strip.width) / 2 ** 24;
  const ring = (i: number): Path64[] => {
    const { outline } = strip.forms[best.places.form[i]!]!;
    const path: Path64 = [];
    for (let k = 0; k < outline.length; k += 2) {
      path.push({
        x: Math.round((outline[k]! + best.places.x[i]!) / unit),
        y: Math.round((outline[k + 1]! + best.places.y[i]!) / unit),
      });
    }
    return [path];
  };
  const rings = strip.itemShape.map((_, i) => ring(i));
  let sum = 0;
  for (let i = 0; i < rings.length; i++) {
    for (let j = 0; j < i; j++)
      sum += Math.abs(Clipper.areaPaths(Clipper.intersect(rings[i]!, rings[j]!, FillRule.NonZero)));
  }
  return (sum * unit * unit) / strip.total;
}
