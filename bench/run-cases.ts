import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Case } from './case.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const words = process.argv.slice(2);
const json = words.includes('--json');
const valueOf = (flag: string): string | undefined =>
  words.includes(flag) ? words[words.indexOf(flag) + 1] : undefined;
const rounds = Number(valueOf('--rounds') ?? 31);
const names = words.filter((w, i) => !w.startsWith('--') && !words[i - 1]?.startsWith('--rounds'));

interface Row {
  readonly bench: string;
  readonly name: string;
  readonly medianMs: number;
  readonly p10Ms: number;
  readonly p90Ms: number;
  readonly rounds: number;
  readonly note?: string;
}

function quantile(sorted: readonly number[], q: number): number {
  const at = (sorted.length - 1) * q;
  const low = Math.floor(at);
  return sorted[low]! + (sorted[Math.min(low + 1, sorted.length - 1)]! - sorted[low]!) * (at - low);
}

/** Node's own door to the collector, with --expose-gc; the type that comes with Node's types knows no kinds. */
const sweep = globalThis.gc as ((options: { type: 'minor' | 'major' }) => void) | undefined;

/** Rounds before the clock counts, so that a warm process is measured: a second of them and as many as the compiler needs to settle, but no longer than the most. */
const WARM_MS = 1000;
const WARM_ROUNDS = 700;
const WARM_MOST_MS = 25_000;

/**
 * A case is warmed up, then run until it has its rounds or five seconds are gone (three rounds at least). Quick ones are batched to 2 ms.
 * A case that asks for an unseen state each round gets it outside of the clock, what making it left behind swept away.
 */
async function time(bench: string, one: Case, firstMs: number): Promise<Row> {
  const shared = (await one.setup?.()) as never;
  const { before } = one;
  const fresh = async (): Promise<never> => {
    if (!before) return shared;
    const state = (await before(shared)) as never;
    sweep?.({ type: 'minor' });
    return state;
  };
  let quickest = Infinity;
  const began = performance.now();
  const gone = (): number => performance.now() - began;
  for (let i = 0; i < 2 || ((i < WARM_ROUNDS || gone() < WARM_MS) && gone() < WARM_MOST_MS); i++) {
    const state = await fresh();
    const start = performance.now();
    await one.run(state);
    quickest = Math.min(quickest, performance.now() - start);
  }
  const batch = before ? 1 : Math.max(1, Math.ceil(2 / Math.max(quickest, 1e-4)));
  const took: number[] = [];
  const until = performance.now() + 5000;
  while (took.length < rounds && (took.length < 3 || performance.now() < until)) {
    const state = await fresh();
    const start = performance.now();
    for (let i = 0; i < batch; i++) await one.run(state);
    took.push((performance.now() - start) / batch);
  }
  took.sort((a, b) => a - b);
  const medianMs = quantile(took, 0.5);
  const note = one.note?.(medianMs, shared, firstMs);
  return {
    bench,
    name: one.name,
    medianMs,
    p10Ms: quantile(took, 0.1),
    p90Ms: quantile(took, 0.9),
    rounds: took.length,
    ...(note ? { note } : {}),
  };
}

const casesOf = async (bench: string): Promise<readonly Case[]> =>
  ((await import(pathToFileURL(join(folder, `${bench}.bench.js`)).href)) as { default: readonly Case[] })
    .default;

/** The case run by a process of its own. */
function apart(bench: string, index: number, firstMs: number): Row {
  const child = spawnSync(
    process.execPath,
    [
      ...process.execArgv,
      process.argv[1]!,
      '--one',
      JSON.stringify([bench, index, firstMs]),
      '--rounds',
      String(rounds),
    ],
    { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] },
  );
  if (child.status !== 0) throw new Error(`${bench}, case ${index + 1}: ended with ${child.status}`);
  return JSON.parse(child.stdout) as Row;
}

function print(row: Row): void {
  const spread = `${row.p10Ms.toFixed(3)} … ${row.p90Ms.toFixed(3)}`;
  console.log(
    `${row.bench.padEnd(12)} ${row.name.padEnd(56)} ${row.medianMs.toFixed(3).padStart(10)} ms  (${spread}, ${row.rounds} rounds)${row.note ? `  ${row.note}` : ''}`,
  );
}

async function all(): Promise<void> {
  const known = readdirSync(folder)
    .sort()
    .flatMap((f) => /^(.+)\.bench\.js$/.exec(f)?.[1] ?? []);
  const wanted = known.filter((bench) => names.length === 0 || names.includes(bench));
  if (wanted.length === 0) {
    console.error(`no bench of that name; there are: ${known.join(', ')}`);
    process.exit(2);
  }
  if (!json)
    console.log(
      `Built as shipped. Each case in a process of its own is warmed up (at least ${WARM_ROUNDS} rounds and ${WARM_MS / 1000} s, where that takes no more than ${WARM_MOST_MS / 1000} s), then timed: median (10 % … 90 %). Node ${process.version}, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)}.`,
    );
  const rows: Row[] = [];
  for (const bench of wanted) {
    const cases = await casesOf(bench);
    let firstMs = NaN;
    for (const index of cases.keys()) {
      const row = apart(bench, index, firstMs);
      if (index === 0) firstMs = row.medianMs;
      rows.push(row);
      if (!json) print(row);
    }
  }
  if (json) console.log(JSON.stringify({ rows }, null, 2));
}

const one = valueOf('--one');
if (one === undefined) await all();
else {
  const [bench, index, firstMs] = JSON.parse(one) as [string, number, number | null];
  const cases = await casesOf(bench);
  console.log(JSON.stringify(await time(bench, cases[index]!, firstMs ?? NaN)));
}
