// Density reached on the academic strip-packing instances, beside the best published.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readyStrip, stripSearch } from '../src/layout/index.ts';

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
  return best ? (100 * strip.total) / (strip.width * best.length) : 0;
}
