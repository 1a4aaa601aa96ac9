import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { assemble, findAssembly, readPdf } from '../src/exchange/index.ts';
import { tiledPdf } from '../src/exchange/tiled.test-case.ts';
import { sample } from '../src/samples/index.ts';

/** The stated bound, MB. */
const LIMIT_MB = 500;

interface Measured {
  readonly pages: number;
  readonly strokes: number;
  readonly seconds: number;
  readonly cpuSeconds: number;
  readonly startMb: number;
  readonly peakMb: number;
}

/** Reads one file and puts it together in this process, which does nothing else. */
async function readOnly(file: string): Promise<Measured> {
  const bytes = new Uint8Array(readFileSync(file));
  const startMb = Math.round(process.memoryUsage().rss / 1e6);
  const start = performance.now();
  const cpu = process.cpuUsage();
  const drawing = await readPdf(bytes, { name: 'tiled.pdf' });
  const put = assemble(drawing, findAssembly(drawing));
  const used = process.cpuUsage(cpu);
  return {
    pages: drawing.pages.length,
    strokes: put.strokes.length,
    seconds: Math.round(performance.now() - start) / 1000,
    cpuSeconds: Math.round((used.user + used.system) / 1000) / 1000,
    startMb,
    // Linux and macOS differ in the unit; Node gives kilobytes everywhere.
    peakMb: Math.round((process.resourceUsage().maxRSS * 1024) / 1e6),
  };
}

/**
 * Peak memory of reading and putting together 60-odd tiled A4 pages of ten nested sizes, in a fresh process that only reads.
 * `--json` for programs.
 */
export default async function run(args: readonly string[]): Promise<void> {
  const at = args.indexOf('--file');
  if (at >= 0) {
    console.log(JSON.stringify(await readOnly(args[at + 1]!)));
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), 'pintrue-memory-'));
  try {
    const file = join(folder, 'tiled.pdf');
    writeFileSync(file, (await tiledPdf(sample('stage-bodice'), 0, 1400)).bytes);
    const runner = fileURLToPath(new URL('./run-one.ts', import.meta.url));
    const done = spawnSync(
      process.execPath,
      [...process.execArgv, runner, 'exchange-memory', '--file', file],
      { encoding: 'utf8' },
    );
    if (done.status !== 0) throw new Error(done.stderr);
    if (args.includes('--json')) {
      console.log(done.stdout.trim());
      return;
    }
    const m = JSON.parse(done.stdout) as Measured;
    console.log(
      `${m.pages} pages, ${m.strokes} lines: ${m.seconds} s (${m.cpuSeconds} s of processor), peak ${m.peakMb} of ${LIMIT_MB} MB (${m.startMb} MB before reading)`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
