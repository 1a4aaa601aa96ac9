// Must hold of the job's text: mutated files always get an answer in under 2 s, never a crash, a hang, or anything fetched or executed.
// PINTRUE_FULL=1 runs the full 5,000 per reader.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { ReadError } from './drawing/budget.ts';
import type { Drawing } from './drawing/drawing.ts';
import { readDxf } from './read/dxf/drawing.ts';
import { DxfError } from './read/dxf/pairs.ts';
import { sample } from '../samples/index.ts';
import { plainDxf } from './plain-dxf.test-case.ts';
import { writeDxf } from './write/dxf.ts';
import { recognise } from './find/recognise.ts';
import { mutated, seeded } from './hostile.test-case.ts';
import { readPdf } from './read/pdf/read.ts';
import { plainPdf } from './plain-pdf.test-case.ts';
import { readSvg } from './read/svg/read.ts';

const COUNT = process.env['PINTRUE_FULL'] ? 5000 : 150;
const LIMIT_MS = 2000;
const LIMIT_MB = 1000;
const fixture = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(fileURLToPath(new URL(`./fixtures/${name}`, import.meta.url))));

const PDFS = (): readonly Uint8Array[] => [
  fixture('sheet-dash.pdf'),
  fixture('tiles-frame.pdf'),
  plainPdf(),
  fixture('sheet-inkscape.pdf'),
];

function dxfs(): readonly Uint8Array[] {
  const skirt = sample('a-line-skirt');
  const halves = { ...skirt, pieces: skirt.pieces.slice(0, 2) };
  return [new TextEncoder().encode(writeDxf(halves, '2026-01-01')), plainDxf()];
}

/** The `which`-th mutation (from 0) that `attack` would meet with that seed. */
function mutation(sources: readonly Uint8Array[], seed: number, which: number): Uint8Array {
  const next = seeded(seed);
  let bytes = sources[0]!;
  for (let i = 0; i <= which; i++) bytes = mutated(sources[i % sources.length]!, next);
  return bytes;
}

interface Outcome {
  readonly read: number;
  readonly refused: Record<string, number>;
  readonly slowest: number;
  /** Which mutation that was. */
  readonly which: number;
  /** Peak memory of the process, MB. */
  readonly memory: number;
}

/** Reads `count` mutations of each source and looks for pieces in what was read; anything but a drawing, a ReadError or a DxfError fails. */
async function attack(
  sources: readonly Uint8Array[],
  count: number,
  seed: number,
  read: (bytes: Uint8Array) => Promise<Drawing> | Drawing,
): Promise<Outcome> {
  const next = seeded(seed);
  let done = 0;
  let slowest = 0;
  let which = -1;
  const refused: Record<string, number> = {};
  for (let i = 0; i < count; i++) {
    const bytes = mutated(sources[i % sources.length]!, next);
    // Processor time: other work on the machine is not the reader's.
    const start = process.cpuUsage();
    try {
      recognise(await read(bytes));
      done++;
    } catch (error) {
      if (!(error instanceof ReadError || error instanceof DxfError))
        throw new Error(`mutation ${i} of seed ${seed}: ${String(error)}`, { cause: error });
      const code = error instanceof ReadError ? error.code : 'dxf';
      refused[code] = (refused[code] ?? 0) + 1;
    }
    const spent = process.cpuUsage(start);
    const ms = (spent.user + spent.system) / 1000;
    if (ms > slowest) [slowest, which] = [ms, i];
  }
  return { read: done, refused, slowest, which, memory: Math.round(process.resourceUsage().maxRSS / 1024) };
}

describe('hostile files', () => {
  const fetched: string[] = [];
  // The PDF library may leave a failed step that nobody waits for. The reader lets it go; with no one else listening, any other would end this run.
  const listening = process.listeners('unhandledRejection');
  beforeAll(async () => {
    process.removeAllListeners('unhandledRejection');
    // The library is loaded before the clock runs.
    await readPdf(fixture('sheet-dash.pdf'));
    vi.stubGlobal('fetch', (address: unknown) => {
      fetched.push(String(address));
      return Promise.reject(new Error('no network'));
    });
  });
  afterEach(() => expect(fetched).toEqual([]));
  afterAll(() => {
    process.removeAllListeners('unhandledRejection');
    for (const one of listening) process.on('unhandledRejection', one);
  });

  it(`${COUNT} mutated PDFs are read or refused in time`, { timeout: 3_600_000 }, async () => {
    const outcome = await attack(PDFS(), COUNT, 1, (bytes) => readPdf(bytes));
    if (process.env['PINTRUE_SAY']) process.stdout.write(`${JSON.stringify(outcome)}\n`);
    expect(outcome.slowest).toBeLessThan(LIMIT_MS);
    expect(outcome.memory).toBeLessThan(LIMIT_MB);
    expect(outcome.read).toBeGreaterThan(COUNT / 20);
  });

  it('the damaged font that once took 11 s and 1.4 GB is passed over (mutation 2979 of seed 1)', async () => {
    const bytes = mutation(PDFS(), 1, 2979);
    const start = process.cpuUsage();
    expect((await readPdf(bytes)).strokes.length).toBeGreaterThan(0);
    const spent = process.cpuUsage(start);
    expect((spent.user + spent.system) / 1000).toBeLessThan(LIMIT_MS);
  });

  it('a failed page that the library fetched ahead and left ends no process (mutation 1277 of seed 1)', async () => {
    const bytes = mutation(PDFS(), 1, 1277);
    const ended: unknown[] = [];
    const note = (error: unknown): void => void ended.push(error);
    process.on('uncaughtExceptionMonitor', note);
    await readPdf(bytes).catch((error: unknown) => expect(error).toBeInstanceOf(ReadError));
    await new Promise((resolve) => setTimeout(resolve, 20));
    process.off('uncaughtExceptionMonitor', note);
    expect(ended).toEqual([]);
    expect(process.listenerCount('unhandledRejection')).toBe(0);
  });

  it(`${COUNT} mutated SVGs are read or refused in time`, { timeout: 3_600_000 }, async () => {
    const outcome = await attack(
      [fixture('sheet-source.svg'), fixture('sheet-inkscape.svg'), fixture('sheet-cairo.svg')],
      COUNT,
      2,
      (bytes) => readSvg(bytes),
    );
    if (process.env['PINTRUE_SAY']) process.stdout.write(`${JSON.stringify(outcome)}\n`);
    expect(outcome.slowest).toBeLessThan(LIMIT_MS);
    expect(outcome.memory).toBeLessThan(LIMIT_MB);
    expect(outcome.read).toBeGreaterThan(COUNT / 20);
  });

  it(
    `${COUNT} mutated DXFs are read or refused in time, by D6673 and plain`,
    { timeout: 3_600_000 },
    async () => {
      const outcome = await attack(dxfs(), COUNT, 3, (bytes) => readDxf(bytes, 'bad.dxf'));
      if (process.env['PINTRUE_SAY']) process.stdout.write(`${JSON.stringify(outcome)}\n`);
      expect(outcome.slowest).toBeLessThan(LIMIT_MS);
      expect(outcome.memory).toBeLessThan(LIMIT_MB);
      expect(outcome.read).toBeGreaterThan(COUNT / 20);
    },
  );

  it('a spline with a point at 10¹⁵ mm is left out and told, in time (mutation 849 of seed 3)', () => {
    const bytes = mutation(dxfs(), 3, 849);
    const start = process.cpuUsage();
    const { findings } = recognise(readDxf(bytes, 'bad.dxf'));
    expect(findings.map((f) => f.code)).toContain('lines-far-away');
    expect(process.cpuUsage(start).user / 1000).toBeLessThan(LIMIT_MS);
  });
});
