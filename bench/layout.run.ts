// Density reached on the academic strip-packing instances, beside the best published.
import { existsSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Clipper, FillRule } from 'clipper2-ts';
import type { Path64 } from 'clipper2-ts';
import { nodeHands } from '../src/cli/index.ts';
import { crew, stripForms } from '../src/layout/index.ts';
import type { Kept, StripForms, StripJob } from '../src/layout/index.ts';

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

/** Where the instances are when no folder is given. */
const KEPT = fileURLToPath(new URL('../checks/data/packing', import.meta.url));

const USAGE =
  '[--instances DIR] [--only shirts,swim] [--seconds 10,60,180] [--seeds 1,2,3] [--threads 2] [--json]';

interface Row {
  readonly name: string;
  readonly seconds: number;
  /** Median over the seeds, %. */
  readonly density: number;
  readonly seeds: readonly number[];
  readonly each: readonly number[];
  readonly threads: number;
  readonly record: number;
  readonly mean: number;
}

/** Seconds are by the clock, with the threads given (all cores when nothing is said): a busy machine reaches less. */
export default async function run(args: readonly string[]): Promise<void> {
  const value = (name: string): string | undefined => {
    const at = args.indexOf(name);
    return at < 0 ? undefined : args[at + 1];
  };
  const numbers = (name: string, none: string): number[] => (value(name) ?? none).split(',').map(Number);
  const folder = value('--instances') ?? KEPT;
  if (!existsSync(folder)) {
    console.log(`There is no folder ${folder} of strip-packing instances: ${USAGE}`);
    return;
  }
  const seeds = numbers('--seeds', '1,2,3');
  const [threads] = numbers('--threads', String(availableParallelism()));
  const only = value('--only')?.split(',');
  const rows: Row[] = [];
  for (const [name, [record, mean]] of Object.entries(PUBLISHED)) {
    if (only && !only.includes(name)) continue;
    const file = join(folder, `${name}.json`);
    if (!existsSync(file)) {
      console.error(`${name}.json is not in the folder.`);
      continue;
    }
    const job = stripJob(JSON.parse(readFileSync(file, 'utf8')) as Instance);
    for (const seconds of numbers('--seconds', '60')) {
      const each: number[] = [];
      for (const seed of seeds) each.push(await reached(job, seconds, seed, threads!));
      const row = { name, seconds, density: median(each), seeds, each, threads: threads!, record, mean };
      rows.push(row);
      if (!args.includes('--json')) console.log(line(row));
    }
  }
  if (args.includes('--json')) console.log(JSON.stringify(rows, null, 2));
}

const line = (r: Row): string =>
  `${r.name.padEnd(9)} ${String(r.seconds).padStart(4)} s  median ${r.density.toFixed(2)} %  (${r.each.map((d) => d.toFixed(2)).join(' ')})  ` +
  `published: record ${r.record}, mean ${r.mean}`;

function median(of: readonly number[]): number {
  const sorted = [...of].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

const stripJob = (instance: Instance): StripJob => ({
  width: instance.strip_height,
  shapes: instance.items.map((item) => ({
    outline: Float64Array.from(item.shape.data.slice(0, -1).flat()),
    count: item.demand,
    turns: item.allowed_orientations.map((angle) => ({ angle })),
  })),
});

/** Density of the best layout of one run, %, proven by an independent polygon library. */
async function reached(job: StripJob, seconds: number, seed: number, threads: number): Promise<number> {
  let best: Kept | null = null;
  const hands = nodeHands(new URL('./layout-hand.mjs', import.meta.url), threads);
  for await (const kept of crew(job, { seed, seconds, known: null }, hands)) best = kept;
  if (!best) return 0;
  const forms = stripForms(job);
  const fault = faultOf(forms, best);
  if (fault) throw new Error(`The layout ${fault}: the search is wrong.`);
  return Math.round((1e4 * forms.total) / (forms.width * best.length)) / 100;
}

/** What an independent look finds wrong, or null. */
function faultOf(forms: StripForms, best: Kept): string | null {
  const share = overlapShare(forms, best);
  if (share > 1e-6) return `overlaps by ${share.toExponential(1)} of its area`;
  const slack = 1e-6 * forms.width;
  for (let i = 0; i < forms.itemShape.length; i++) {
    const form = forms.forms[best.places.form[i]!]!;
    if (form.shape !== forms.itemShape[i]) return 'has a wrong piece';
    for (let k = 0; k < form.outline.length; k += 2) {
      const x = form.outline[k]! + best.places.x[i]!;
      const y = form.outline[k + 1]! + best.places.y[i]!;
      if (x < -slack || x > best.length + slack || y < -slack || y > forms.width + slack)
        return 'leaves the strip';
    }
  }
  return null;
}

/** Overlap of all pairs by an independent polygon library, as a share of the pieces' area. */
function overlapShare(strip: StripForms, best: Kept): number {
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
