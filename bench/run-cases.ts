import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Case } from './case.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const words = process.argv.slice(2);
const json = words.includes('--json');
const roundsAt = words.indexOf('--rounds');
const rounds = roundsAt >= 0 ? Number(words[roundsAt + 1]) : 31;
const names = words.filter((w, i) => !w.startsWith('--') && (roundsAt < 0 || i !== roundsAt + 1));

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

/** A case is run until it has its rounds or five seconds are gone (three rounds at least); quick ones are batched to 2 ms. */
async function time(bench: string, one: Case): Promise<Row> {
  const state = (await one.setup?.()) as never;
  await one.run(state);
  const first = performance.now();
  await one.run(state);
  const batch = Math.max(1, Math.ceil(2 / Math.max(performance.now() - first, 1e-4)));
  const took: number[] = [];
  const until = performance.now() + 5000;
  while (took.length < rounds && (took.length < 3 || performance.now() < until)) {
    const start = performance.now();
    for (let i = 0; i < batch; i++) await one.run(state);
    took.push((performance.now() - start) / batch);
  }
  took.sort((a, b) => a - b);
  const medianMs = quantile(took, 0.5);
  const note = one.note?.(medianMs, state);
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

const rows: Row[] = [];
for (const file of readdirSync(folder).sort()) {
  const bench = /^(.+)\.bench\.ts$/.exec(file)?.[1];
  if (!bench || (names.length > 0 && !names.includes(bench))) continue;
  const cases = ((await import(pathToFileURL(join(folder, file)).href)) as { default: readonly Case[] })
    .default;
  for (const one of cases) {
    const row = await time(bench, one);
    rows.push(row);
    if (!json) {
      const spread = `${row.p10Ms.toFixed(3)} … ${row.p90Ms.toFixed(3)}`;
      console.log(
        `${bench.padEnd(12)} ${one.name.padEnd(56)} ${row.medianMs.toFixed(3).padStart(10)} ms  (${spread}, ${row.rounds} rounds)${row.note ? `  ${row.note}` : ''}`,
      );
    }
  }
}
if (json) console.log(JSON.stringify({ rows }, null, 2));
if (rows.length === 0) {
  console.error(
    `no bench of that name; there are: ${readdirSync(folder)
      .filter((f) => /\.(bench|run)\.ts$/.test(f))
      .join(', ')}`,
  );
  process.exit(2);
}
