import { LayImpossible } from '../words/words-table.ts';
import { describe, expect, it } from 'vitest';
import type { LayJob } from '../job/lay-job.ts';
import { lay, layBest, startLay } from './lay.ts';
import { proveLay } from './prove-lay.ts';
import { randomJob } from '../job/random-job.test-case.ts';

const FULL = process.env['PINTRUE_FULL'] === '1';
const JOBS = FULL ? 2000 : 60;

const square = (size: number, count: number, extra: Partial<LayJob> = {}): LayJob => ({
  cloth: 'shell',
  width: 1000,
  selvage: 10,
  fold: 'none',
  nap: 'one-way',
  gap: 4,
  pieces: [
    {
      piece: 'a',
      name: 'Square',
      number: 1,
      cloth: 'shell',
      outline: [
        { x: 0, y: 0 },
        { x: size, y: 0 },
        { x: size, y: size },
        { x: 0, y: size },
      ],
      count,
      mirrored: false,
      grain: [
        { x: 0, y: 0 },
        { x: 0, y: size },
      ],
    },
  ],
  flaws: [],
  pins: [],
  ...extra,
});

describe('every lay', () => {
  // Checked by clipper2, which the search does not use for its own measure of overlap.
  it(
    `is proven on ${JOBS} random jobs, or told to be impossible`,
    () => {
      let told = 0;
      for (let seed = 1; seed <= JOBS; seed++) {
        const job = randomJob(seed);
        try {
          const found = layBest(job, { seed, budget: { sweeps: 60 } });
          expect(found, `job ${seed}`).not.toBeNull();
          expect(proveLay(job, found!), `job ${seed}`).toEqual([]);
        } catch (error) {
          if (!(error instanceof LayImpossible)) throw error;
          told++;
          expect(error.needs, `job ${seed}`).toBeGreaterThan(job.width);
        }
      }
      expect(told).toBeLessThan(JOBS / 20);
    },
    FULL ? 1_800_000 : 240_000,
  );
});

describe('the proof', () => {
  const job = square(200, 2);
  const found = layBest(job, { seed: 1, budget: { sweeps: 20 } })!;
  const [a, b] = found.placements;
  it('passes a good lay', () => expect(proveLay(job, found)).toEqual([]));
  it('sees an overlap', () => {
    const bad = { ...found, placements: [a!, { ...b!, x: a!.x + 1, y: a!.y }] };
    expect(proveLay(job, bad).map((f) => f.code)).toContain('overlap');
  });
  it('sees a piece off the cloth, off grain, or missing', () => {
    const codes = (placements: typeof found.placements) =>
      proveLay(job, { ...found, placements }).map((f) => f.code);
    expect(codes([a!, { ...b!, y: b!.y + 900 }])).toContain('off-cloth');
    expect(codes([a!, { ...b!, rotation: b!.rotation + 0.5 }])).toContain('off-grain');
    expect(codes([a!])).toContain('wrong-count');
  });
});

describe('an impossible job', () => {
  it('is told at once with the width that would do', () => {
    try {
      startLay(square(1200, 1), 1);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(LayImpossible);
      const { needs } = error as LayImpossible;
      // 1200 and both selvages of 10; the search thins outlines by a fraction of a mm.
      expect(needs).toBeGreaterThan(1219.9);
      expect(needs).toBeLessThan(1221);
      expect(() => startLay(square(1200, 1, { width: needs }), 1)).not.toThrow();
    }
  });
});

describe('a search', () => {
  const job = randomJob(4);
  it('gives the same lay for the same seed and sweeps', () => {
    const run = () => layBest(job, { seed: 9, budget: { sweeps: 80 } });
    expect(run()).toEqual(run());
  });
  it('has a proven lay before its first step', () => {
    const many = square(150, 9);
    expect(proveLay(many, startLay(many, 1).best()!)).toEqual([]);
  });
  it('stopped and continued never loses its best', () => {
    const run = startLay(job, 3);
    for (let k = 0; k < 60; k++) run.step(k / 200);
    const before = run.best()!;
    const saved = JSON.parse(JSON.stringify(run.save())) as ReturnType<typeof run.save>;
    const again = lay(job, { seed: 3, budget: { sweeps: 100 }, from: saved });
    const first = again.next();
    expect((first.value as typeof before).length).toBe(before.length);
    let last = before.length;
    for (const better of again) {
      expect(better.length).toBeLessThanOrEqual(last);
      last = better.length;
    }
  });
  it('keeps a pinned piece where the person put it', () => {
    const pin = { piece: 'a', copy: 1, x: 300, y: 400, rotation: 270, mirrored: false };
    const pinned = square(150, 4, { pins: [pin] });
    const found = layBest(pinned, { seed: 1, budget: { sweeps: 60 } })!;
    expect(found.placements.find((p) => p.copy === 1)).toMatchObject(pin);
    expect(proveLay(pinned, found)).toEqual([]);
  });
  // A copy that may be turned as the pinned one is has the same outline: it was once taken for pinned itself, and overlapped its like.
  it('keeps the copies of a pinned piece off each other', () => {
    const pin = { piece: 'a', copy: 0, x: 300, y: 400, rotation: 270, mirrored: false };
    const pinned = square(150, 12, { pins: [pin] });
    const found = layBest(pinned, { seed: 1, budget: { sweeps: 400 } })!;
    expect(proveLay(pinned, found)).toEqual([]);
    expect(found.placements).toHaveLength(12);
  });
});
